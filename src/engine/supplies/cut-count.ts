import { isKept } from "../back/index.ts";
import type { Job, SizedPiece } from "../cloth/index.ts";
import { type LayoutNode, leavesOf, type PlacedLeaf, takenSizeOf } from "../layout/index.ts";
import { type Length, length } from "../length/index.ts";
import { cuttingPlan } from "./cutting-plan.ts";

/** Cuts to make, apart: through cloth and across strips, and sides of pieces that are only trimmed. */
export type CutCount = { readonly cuts: number; readonly trims: number };

/**
 * How many cuts the layout takes: one for each trimmed side of a piece, one for each crosscut of a piece that gives
 * several cells (or only part of its length), one for each cut through a length or bought cloth or corner to corner
 * through a setting square.
 */
export function cutsFor(layout: LayoutNode, job: Job): CutCount {
  const pieces = cutPieces(layout, job);
  const cloth = cuttingPlan(layout, job).reduce((total, { cuts }) => total + cuts.length, 0);
  const diagonals = leavesOf(layout, job).reduce((total, { node }) => total + diagonalCuts(node), 0);
  return {
    cuts: cloth + diagonals + pieces.reduce((total, piece) => total + crosscuts(piece), 0),
    trims: pieces.reduce((total, piece) => total + trims(piece), 0),
  };
}

/** Of the squares round blocks on point two are cut once, into corners; the others both ways, into side triangles. */
function diagonalCuts(node: PlacedLeaf["node"]): number {
  if (node.kind !== "unit" || node.pattern !== "on-point") return 0;
  const squares = node.cloth.reduce((total, { count }) => total + count, 0);
  return 2 * squares - 2;
}

/** A rest of a leftover that goes back to the shelf. */
export type ShelfRest = {
  readonly piece: string;
  readonly copy: number | null;
  readonly width: Length;
  readonly height: Length;
};

/** What goes back to the shelf of the leftovers that are used: ends of strips, rests of lengths (at least 2 by 5 in). */
export function backToShelf(layout: LayoutNode, job: Job): readonly ShelfRest[] {
  const ends = cutPieces(layout, job).flatMap(endOf);
  const rests = cuttingPlan(layout, job).flatMap(({ source, remains }) =>
    source === "buy"
      ? []
      : remains.map(({ width, height }) => ({ piece: source.piece, copy: source.copy, width, height })),
  );
  return [...ends, ...rests];
}

/** One leftover as it is cut: along its longer side into `cells`, each of some `along` and `across`. */
type CutPiece = {
  readonly piece: SizedPiece;
  readonly copy: number | null;
  readonly along: Length;
  readonly across: Length;
  readonly cells: readonly { readonly along: Length; readonly across: Length }[];
};

function cutPieces(layout: LayoutNode, job: Job): readonly CutPiece[] {
  const sized = new Map(job.pieces.flatMap((piece) => (piece.kind === "crumbs" ? [] : [[piece.id, piece]])));
  const found = new Map<string, CutPiece>();
  for (const leaf of leavesOf(layout, job)) {
    if (leaf.node.kind !== "piece") continue;
    const piece = sized.get(leaf.node.piece);
    if (piece === undefined) continue;
    // Without a copy each leaf is a leftover of its own.
    const name = leaf.node.copy === undefined ? leaf.path.join(".") : `${leaf.node.copy} of ${piece.id}`;
    found.set(name, withCell(found.get(name) ?? uncut(piece, leaf.node.copy ?? null), leaf));
  }
  return [...found.values()];
}

function uncut(piece: SizedPiece, copy: number | null): CutPiece {
  const upright = piece.height >= piece.width;
  const [along, across] = upright ? [piece.height, piece.width] : [piece.width, piece.height];
  return { piece, copy, along, across, cells: [] };
}

function withCell(cutPiece: CutPiece, leaf: PlacedLeaf): CutPiece {
  const turned = leaf.node.kind === "piece" && leaf.node.turned;
  const taken = takenSizeOf(leaf);
  const [width, height] = turned ? [taken.height, taken.width] : [taken.width, taken.height];
  const upright = cutPiece.piece.height >= cutPiece.piece.width;
  const cell = upright ? { along: height, across: width } : { along: width, across: height };
  return { ...cutPiece, cells: [...cutPiece.cells, cell] };
}

function leftAlong({ along, cells }: CutPiece): Length {
  return length(along - cells.reduce((total, cell) => total + cell.along, 0));
}

function isCutUp({ piece, cells }: CutPiece): boolean {
  return piece.keep === "cut" || cells.length > 1;
}

/** Each cell takes a crosscut, save the last one where nothing is left. */
function crosscuts(cutPiece: CutPiece): number {
  if (!isCutUp(cutPiece)) return 0;
  return cutPiece.cells.length - (leftAlong(cutPiece) > 0 ? 0 : 1);
}

function trims(cutPiece: CutPiece): number {
  const narrowed = cutPiece.cells.filter(({ across }) => across < cutPiece.across).length;
  return narrowed + (!isCutUp(cutPiece) && leftAlong(cutPiece) > 0 ? 1 : 0);
}

function endOf(cutPiece: CutPiece): readonly ShelfRest[] {
  const { piece, copy, across } = cutPiece;
  const left = leftAlong(cutPiece);
  if (!isKept(left, across)) return [];
  const upright = piece.height >= piece.width;
  const size = upright ? { width: across, height: left } : { width: left, height: across };
  return [{ piece: piece.id, copy, ...size }];
}
