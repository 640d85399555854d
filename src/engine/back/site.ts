import { finishedArea, type Job, type SizedPiece } from "../cloth/index.ts";
import { inches } from "../length/index.ts";
import { joinsFor } from "../work/index.ts";

/** A block of hers as a style sees it: finished, in steps. */
export type SiteBlock = {
  readonly piece: string;
  readonly width: number;
  readonly height: number;
  readonly count: number;
  /** Its own width and height have changed places here. */
  readonly turned: boolean;
  /** A one-way print stays upright. */
  readonly upright: boolean;
};

/** Like leftovers to be pieced, finished, in steps; slabs of crumbs are among them. */
export type SitePiece = {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  /** A print with an up, which stays upright. */
  readonly upright: boolean;
  /** May be cut across into several. */
  readonly cut: boolean;
  /** How much of a side may be trimmed away. */
  readonly trim: (side: number) => number;
};

/** One of her lengths: cut sides, in steps, rounded down. */
export type SiteLength = { readonly fabric: string; readonly width: number; readonly height: number };

/** What a style composes for. Everything is in whole steps of the ruler, finished unless it says cut. */
export type Site = {
  readonly width: number;
  readonly height: number;
  /** From the layout's edge to where pieced cloth may begin; 0 without a top or by hand. */
  readonly ringX: number;
  readonly ringY: number;
  /** From the layout's edge to the top's outline; null without a top. Not always whole. */
  readonly outlineX: number | null;
  readonly outlineY: number | null;
  /** So far inside the outline a block stays. */
  readonly inside: number;
  /** Area that leftovers should cover, in steps². */
  readonly target: number;
  /** Joins she has time for. */
  readonly joins: number;
  /** The widest cell that one width of bought cloth gives. */
  readonly widest: number;
  /** Smallest side of a cell outside the ring. */
  readonly smallest: number;
  /** How deep a row must be so that nine tenths of the heap, by area, can lie in it. */
  readonly tall: number;
  readonly blocks: readonly SiteBlock[];
  readonly pieces: readonly SitePiece[];
  readonly lengths: readonly SiteLength[];
  /** Steps in an inch; not whole on a metric ruler. */
  readonly inch: number;
};

/** The ruler's nearest whole number of steps to so many inches. */
export function steps(site: Pick<Site, "inch">, inch: number): number {
  return Math.round(inch * site.inch);
}

// Asked for by each style, and again and again while a choice is being made.
const sites = new WeakMap<Job, Site>();

/** The layout inside the outer allowances: the back less one seam allowance on each side. */
export function siteOf(job: Job): Site {
  const site = sites.get(job) ?? measure(job);
  sites.set(job, site);
  return site;
}

function measure(job: Job): Site {
  const inch = inches(1) / job.step;
  const size = (side: number) => Math.floor((side - 2 * job.seam) / job.step);
  const width = size(job.back.width);
  const height = size(job.back.height);
  const smallest = Math.ceil(Math.max(inches(1), job.floor - inches(1, 2)) / job.step);
  const ring = (whole: number, top: number | undefined) => ringOf(job, inch, whole, top);
  return {
    width,
    height,
    ringX: ring(width, job.top?.width),
    ringY: ring(height, job.top?.height),
    outlineX: job.top === null ? null : (width - job.top.width / job.step) / 2,
    outlineY: job.top === null ? null : (height - job.top.height / job.step) / 2,
    inside: Math.ceil((job.top?.method === "frame" ? 2 : 1) * inch),
    target: targetOf(job),
    joins: joinsFor(job),
    widest: Math.floor((job.clothWidth - job.seam - job.plainSeam) / job.step),
    smallest,
    tall: tallOf(job),
    blocks: blocksOf(job),
    pieces: piecesFor(job),
    lengths: lengthsOf(job),
    inch,
  };
}

// Pieced cloth reaches 2 in (frame) or 1½ in (home) past the top's outline: enough that quilting's draw-in
// and a top that wanders don't bring the plain ring in. By hand the outermost pieces run to the edge (trade-facts §15).
function ringOf(job: Job, inch: number, whole: number, top: number | undefined): number {
  if (top === undefined || job.top === null || job.top.method === "hand") return 0;
  const past = job.top.method === "frame" ? 2 : 1.5;
  const ring = Math.floor((whole - top / job.step) / 2 - past * inch);
  return ring >= inch ? ring : 0;
}

function placeable(job: Job): SizedPiece[] {
  const sized = job.pieces.filter((piece): piece is SizedPiece => piece.kind !== "crumbs");
  return sized.filter(
    (piece) =>
      piece.kind !== "length" &&
      piece.use !== "keep-back" &&
      piece.use !== "give-away" &&
      (piece.kind !== "triangle" || (piece.width === piece.height && piece.count > 1)) &&
      Math.min(piece.width, piece.height) >= job.floor,
  );
}

/** The largest pieces first, as many as she has joins for: what can be covered in her time. */
function targetOf(job: Job): number {
  const limit = joinsFor(job) * 0.8;
  const each = placeable(job)
    .map((piece) => ({ area: finishedArea(piece, job.seam) / job.step ** 2, count: piece.count }))
    .sort((one, other) => other.area - one.area);
  let left = limit;
  let total = 0;
  for (const { area, count } of each) {
    const some = Math.min(count, left);
    total += some * area;
    left -= some;
  }
  const slabs = slabsOf(job).reduce((sum, slab) => sum + slab.count * slab.width * slab.height, 0);
  // A slab counts a join for each 6 sq in.
  return total + Math.min(slabs, (left * 6 * inches(1) ** 2) / job.step ** 2);
}

function tallOf(job: Job): number {
  const sized = placeable(job)
    .map((piece) => ({
      deep: Math.ceil((Math.min(piece.width, piece.height) - 2 * job.seam) / job.step),
      area: piece.count * finishedArea(piece, job.seam),
    }))
    .sort((one, other) => one.deep - other.deep);
  const whole = sized.reduce((sum, one) => sum + one.area, 0);
  let reached = 0;
  for (const { deep, area } of sized) {
    reached += area;
    if (reached >= whole * 0.9) return deep;
  }
  return 0;
}

type Measured = Pick<Job, "seam" | "step" | "floor"> & { readonly pieces: readonly SitePiece[] };

// With less to sew it is the same heap.
const measured = new WeakMap<Job["pieces"], Measured>();

function piecesFor(job: Job): readonly SitePiece[] {
  const { seam, step, floor } = job;
  const known = measured.get(job.pieces);
  if (known?.seam === seam && known.step === step && known.floor === floor) return known.pieces;
  const pieces = [...placeable(job).map((piece) => sitePiece(piece, job)), ...slabsOf(job)];
  measured.set(job.pieces, { seam, step, floor, pieces });
  return pieces;
}

const turnedOver = new WeakMap<Site["pieces"], Site["pieces"]>();

function turnedPieces(pieces: Site["pieces"]): Site["pieces"] {
  const known = turnedOver.get(pieces);
  const turned = known ?? pieces.map((piece) => ({ ...piece, width: piece.height, height: piece.width }));
  turnedOver.set(pieces, turned);
  return turned;
}

function sitePiece(piece: SizedPiece, { seam, step }: Job): SitePiece {
  // Two triangles make a half-square triangle, which takes s (2 + √2).
  const seams = piece.kind === "triangle" ? 2 + Math.SQRT2 : 2;
  const side = (cut: number) => Math.floor((cut - seams * seam) / step);
  const isWhole = piece.keep === "whole" || piece.kind.endsWith("triangle");
  return {
    width: side(piece.width),
    height: side(piece.height),
    count: piece.kind === "triangle" ? Math.floor(piece.count / 2) : piece.count,
    upright: piece.direction === "one-way",
    cut: piece.keep === "cut",
    trim: (finished) => (isWhole ? 0 : Math.min(inches(1, 2), finished * step * 0.1) / step),
  };
}

// Two fifths of crumbs show, in slabs that are trimmed to one size (trade-facts §15); as many of one size as make a row.
function slabsOf(job: Job): SitePiece[] {
  return job.pieces.flatMap((piece) => {
    if (piece.kind !== "crumbs" || piece.use === "keep-back" || piece.use === "give-away") return [];
    const shown = piece.area * piece.count * 0.4;
    const counts = slabSides.map((side) => ({ side, count: Math.floor(shown / (side + 2 * job.seam) ** 2) }));
    const { side, count } = counts.findLast((one) => one.count >= fewestSlabs) ?? counts[0] ?? none;
    const steps = Math.floor(side / job.step);
    const slab = { width: steps, height: steps, upright: false, cut: false, trim: () => 0 };
    return count === 0 ? [] : [{ ...slab, count }];
  });
}

const slabSides = [inches(6), inches(8), inches(12)];
const fewestSlabs = 6;
const none = { side: 0, count: 0 };

function blocksOf(job: Job): SiteBlock[] {
  return placeable(job)
    .filter((piece) => piece.kind === "block" || piece.kind === "part-block")
    .map((piece) => ({
      piece: piece.id,
      width: (piece.width - 2 * job.seam) / job.step,
      height: (piece.height - 2 * job.seam) / job.step,
      count: piece.count,
      turned: false,
      upright: piece.direction === "one-way",
    }))
    .filter((block) => Number.isInteger(block.width) && Number.isInteger(block.height));
}

function lengthsOf(job: Job): SiteLength[] {
  return job.pieces.flatMap((piece) => {
    if (piece.kind !== "length" || piece.use === "keep-back" || piece.use === "give-away") return [];
    const width = Math.floor(piece.width / job.step);
    const height = Math.floor(piece.height / job.step);
    return Array.from({ length: piece.count }, () => ({ fabric: piece.fabric, width, height }));
  });
}

/** The same site lying on its side, so that a style for rows is one for columns too. */
export function turned(site: Site): Site {
  return {
    ...site,
    width: site.height,
    height: site.width,
    ringX: site.ringY,
    ringY: site.ringX,
    outlineX: site.outlineY,
    outlineY: site.outlineX,
    pieces: turnedPieces(site.pieces),
    blocks: site.blocks.map((block) => ({
      ...block,
      width: block.height,
      height: block.width,
      turned: !block.turned,
    })),
    lengths: site.lengths.map((one) => ({ ...one, width: one.height, height: one.width })),
  };
}
