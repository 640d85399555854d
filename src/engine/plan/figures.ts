import { cutArea, fabricValue, finishedArea, isUndyed, type Job, type SizedPiece } from "../cloth/index.ts";
import { type LayoutNode, leavesOf, type PlacedLeaf } from "../layout/index.ts";
import { type Area, areaOf, inches, type Length, length } from "../length/index.ts";
import { type Step, seamsIn } from "../sewing/index.ts";
import { cutsFor } from "../supplies/index.ts";
import { minutesFor } from "../work/index.ts";
import type { Figures } from "./types.ts";
import { piecesUsed } from "./used.ts";

/** What a plan comes to, by the definitions of the plan format. */
export function figuresFor(layout: LayoutNode, steps: readonly Step[], job: Job): Figures {
  const leaves = leavesOf(layout, job);
  const joins = steps.reduce((sum, step) => sum + seamsIn(step), 0);
  const seamLength = seamLengthOf(steps);
  const { cuts, trims } = cutsFor(layout, job);
  const plain = leaves.filter(({ node }) => node.kind === "cloth");
  const squareUps = steps.filter((step) => step.squareUp !== undefined).length;
  return {
    covered: coveredShare(leaves, job),
    plain: areaOf(plain.reduce((sum, { node }) => sum + node.width * node.height, 0)),
    plainCells: plain.length,
    trimWaste: trimWaste(leaves, job),
    joins,
    cuts: cuts + trims,
    seamLength,
    contrast: contrastOf(leaves, job),
    minutes: minutesFor({ joins, seamLength, cuts, trims, squareUps }),
  };
}

/** Finished area of what shows of her leftovers ÷ min(finished area of all of them, layout); lengths apart. */
function coveredShare(leaves: readonly PlacedLeaf[], job: Job): number {
  const shown = leaves.reduce(
    (sum, { node }) => sum + (node.kind === "cloth" ? 0 : node.width * node.height),
    0,
  );
  const whole = Math.min(heapArea(job), layoutArea(job));
  return whole === 0 ? 0 : shown / whole;
}

function layoutArea(job: Job): number {
  return (job.back.width - 2 * job.seam) * (job.back.height - 2 * job.seam);
}

/** Finished area of all leftovers but lengths, crumbs and what stays out. */
export function heapArea(job: Pick<Job, "pieces" | "seam">): Area {
  return areaOf(
    job.pieces.reduce((sum, piece) => {
      if (piece.kind === "crumbs" || piece.kind === "length") return sum;
      if (piece.use === "keep-back" || piece.use === "give-away") return sum;
      return sum + piece.count * finishedArea(piece, job.seam);
    }, 0),
  );
}

/** Every seam's length: the side that its parts share, as it is sewn; a diagonal inside a unit by its own length. */
function seamLengthOf(steps: readonly Step[]): Length {
  const total = steps.reduce((sum, step) => {
    const { width, height } = step.unfinished;
    if (step.kind === "unit") return sum + Math.round(Math.hypot(width, height)) * seamsIn(step);
    return sum + seamsIn(step) * (step.direction === "beside" ? height : width);
  }, 0);
  return length(total);
}

/**
 * Cut area of the pieces used, less their cells as cut and what goes back to the shelf (an end of a strip of at
 * least 2 × 5 in), ÷ the finished area of the pieces used. What a diagonal seam takes is no trim.
 */
function trimWaste(leaves: readonly PlacedLeaf[], job: Job): number {
  const pieces = new Map(job.pieces.map((piece) => [piece.id, piece]));
  let lost = 0;
  let used = 0;
  for (const { piece: id, cells } of piecesUsed(leaves)) {
    const piece = pieces.get(id);
    if (piece === undefined || piece.kind === "crumbs") continue;
    used += finishedArea(piece, job.seam);
    if (piece.kind === "triangle") continue;
    const cellArea = cells.reduce((sum, cell) => sum + cell.cutWidth * cell.cutHeight, 0);
    lost += cutArea(piece) - cellArea - backToShelf(piece, cells);
  }
  return used === 0 ? 0 : lost / used;
}

/** The end of a strip that is long enough to keep. */
function backToShelf(piece: SizedPiece, cells: readonly PlacedLeaf[]): number {
  if (piece.keep !== "cut" && piece.kind !== "strip") return 0;
  const long = Math.max(piece.width, piece.height);
  const short = Math.min(piece.width, piece.height);
  const upright = piece.height >= piece.width;
  const taken = cells.reduce((sum, { node, cutWidth, cutHeight }) => {
    const turned = node.kind === "piece" && node.turned;
    return sum + (upright !== turned ? cutHeight : cutWidth);
  }, 0);
  const end = long - taken;
  return Math.min(short, end) >= inches(2) && Math.max(short, end) >= inches(5) ? end * short : 0;
}

/** Mean difference in value along shared edges of two fabrics, weighted by length; null where no colour is known. */
function contrastOf(leaves: readonly PlacedLeaf[], job: Job): number | null {
  const known = job.fabrics.filter((fabric) => !isUndyed(fabric));
  const values = new Map(known.map((fabric) => [fabric.id, fabricValue(fabric)]));
  const fabricsOf = new Map(job.pieces.map((piece) => [piece.id, piece.fabric]));
  const valued = leaves.flatMap((leaf) => {
    const value = values.get(fabricOfLeaf(leaf, fabricsOf) ?? "");
    return value === undefined ? [] : [{ leaf, value }];
  });
  return meanContrast(valued);
}

type Valued = { readonly leaf: PlacedLeaf; readonly value: number };

function meanContrast(valued: readonly Valued[]): number | null {
  // From left to right, so that a leaf is only held against those that begin before it ends.
  const sorted = [...valued].sort((one, other) => one.leaf.x - other.leaf.x);
  let total = 0;
  let edges = 0;
  for (const [at, one] of sorted.entries()) {
    const right = one.leaf.x + one.leaf.node.width;
    for (let next = at + 1; next < sorted.length; next++) {
      const other = sorted[next];
      if (other === undefined || other.leaf.x > right) break;
      const shared = sharedEdge(one.leaf, other.leaf);
      total += shared * Math.abs(one.value - other.value);
      edges += shared;
    }
  }
  return edges === 0 ? null : total / edges;
}

function fabricOfLeaf({ node }: PlacedLeaf, fabrics: ReadonlyMap<string, string>): string | undefined {
  switch (node.kind) {
    case "cloth":
      return node.fabric;
    case "piece":
      return fabrics.get(node.piece);
    case "unit":
    case "slab":
      return fabrics.get(node.pieces?.[0]?.piece ?? "");
  }
}

function sharedEdge(one: PlacedLeaf, other: PlacedLeaf): number {
  const across = overlap(one.x, one.node.width, other.x, other.node.width);
  const down = overlap(one.y, one.node.height, other.y, other.node.height);
  if (across === 0) return Math.max(0, down);
  return down === 0 ? Math.max(0, across) : 0;
}

/** How far two spans overlap: 0 where they only touch, less where they are apart. */
function overlap(start: number, long: number, otherStart: number, otherLong: number): number {
  return Math.min(start + long, otherStart + otherLong) - Math.max(start, otherStart);
}
