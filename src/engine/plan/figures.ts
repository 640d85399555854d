import {
  cutArea,
  fabricValue,
  finishedArea,
  isUndyed,
  type Job,
  rowOf,
  type SizedPiece,
} from "../cloth/index.ts";
import { type LayoutNode, leavesOf, type PlacedLeaf, takenSizeOf, type UnitNode } from "../layout/index.ts";
import { type Area, areaOf, inches, type Length, length } from "../length/index.ts";
import { type Step, seamsIn } from "../sewing/index.ts";
import { cutsFor } from "../supplies/index.ts";
import { seamLengthInside } from "../units/index.ts";
import { minutesFor, slabJoins } from "../work/index.ts";
import type { Figures } from "./types.ts";
import { piecesUsed } from "./used.ts";

/** What a plan comes to, by the definitions of the plan format. */
export function figuresFor(layout: LayoutNode, steps: readonly Step[], job: Job): Figures {
  const leaves = leavesOf(layout, job);
  const joins = steps.reduce((sum, step) => sum + seamsIn(step), 0);
  const seamLength = seamLengthOf(steps, leaves, job);
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
    minutes: minutesFor({ joins: joins + joinsInSlabs(leaves), seamLength, cuts, trims, squareUps }),
  };
}

/** Nobody counts the seams of a slab; they take their time all the same. */
function joinsInSlabs(leaves: readonly PlacedLeaf[]): number {
  return leaves.reduce((sum, { node }) => (node.kind === "slab" ? sum + slabJoins(node) : sum), 0);
}

/** Finished area of what shows of her leftovers ÷ min(finished area of all of them, layout); lengths apart. */
function coveredShare(leaves: readonly PlacedLeaf[], job: Job): number {
  const shown = leaves.reduce((sum, { node }) => sum + shownIn(node, job), 0);
  const whole = Math.min(heapArea(job), layoutArea(job));
  return whole === 0 ? 0 : shown / whole;
}

function shownIn(node: PlacedLeaf["node"], job: Job): number {
  if (node.kind === "cloth") return 0;
  return node.width * node.height * (node.kind === "unit" ? shareOfPieces(node, job) : 1);
}

/** By cut area: what goes into a unit of hers, of all that does. */
function shareOfPieces({ pieces, cloth }: UnitNode, job: Job): number {
  if (cloth.length === 0) return 1;
  const areaOfRow = (id: string) => {
    const row = rowOf(job.pieces, id);
    return row === undefined || row.kind === "crumbs" ? 0 : cutArea(row);
  };
  const hers = pieces.reduce((sum, { piece, count }) => sum + count * areaOfRow(piece), 0);
  const plain = cloth.reduce((sum, { width, height, count }) => sum + count * width * height, 0);
  return hers / (hers + plain);
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

/** Every seam's length as it is sewn: the side that its parts share, and inside a unit what its pattern takes. */
function seamLengthOf(steps: readonly Step[], leaves: readonly PlacedLeaf[], job: Job): Length {
  const between = steps.reduce((sum, step) => {
    const { width, height } = step.unfinished;
    return step.kind === "join" ? sum + seamsIn(step) * (step.direction === "beside" ? height : width) : sum;
  }, 0);
  const inUnits = leaves.map(({ node }) => (node.kind === "unit" ? lengthInside(node, job) : 0));
  return length(inUnits.reduce((sum, one) => sum + one, between));
}

function lengthInside(unit: UnitNode, { pieces, seam }: Job): Length {
  const parts = unit.pieces.flatMap(({ piece: id, count }) => {
    const piece = rowOf(pieces, id);
    return piece === undefined || piece.kind === "crumbs" ? [] : [{ ...piece, count }];
  });
  return seamLengthInside(unit, parts, seam);
}

/**
 * Cut area of the pieces used, less their cells as cut and what goes back to the shelf (an end of a strip of at
 * least 2 × 5 in), ÷ the finished area of the pieces used. What the seams of a unit take is no trim; slabs are apart.
 */
function trimWaste(leaves: readonly PlacedLeaf[], job: Job): number {
  const pieces = new Map(job.pieces.map((piece) => [piece.id, piece]));
  let lost = 0;
  let used = 0;
  for (const { piece: id, cells } of piecesUsed(leaves)) {
    const piece = pieces.get(id);
    if (piece === undefined || piece.kind === "crumbs") continue;
    used += finishedArea(piece, job.seam);
    if (cells.length === 0) continue;
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
  const taken = cells.reduce((sum, cell) => {
    const turned = cell.node.kind === "piece" && cell.node.turned;
    const { width, height } = takenSizeOf(cell);
    return sum + (upright !== turned ? height : width);
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
      return fabrics.get(node.pieces[0]?.piece ?? "");
    case "slab":
      return fabrics.get(node.crumbs ?? node.pieces?.[0]?.piece ?? "");
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
