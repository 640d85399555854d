import type { Job, SizedPiece } from "../../cloth/index.ts";
import { inches } from "../../length/index.ts";
import type { LayoutNode, LeafNode, PieceNode } from "../types.ts";
import { mapLeaves } from "../walk.ts";
import { isCutAlong } from "./resize.ts";

/**
 * A big piece isn't cut while a smaller one of its fabric, which lies unused, serves: the smaller one takes its place.
 * Several cells of one strip stay together.
 */
export function smallestTaken(layout: LayoutNode, job: Job): LayoutNode {
  const pieces = new Map(sizedIn(job).map((piece) => [piece.id, piece]));
  const rest = { left: leftOf(layout, job), pieces, job };
  // What one cell gives back may serve another; the cloth that is cut into becomes less with each.
  let [taken, changed] = withSmaller(layout, rest);
  while (changed) [taken, changed] = withSmaller(taken, rest);
  return taken;
}

function withSmaller(layout: LayoutNode, rest: Rest): readonly [layout: LayoutNode, changed: boolean] {
  let changed = false;
  const taken = mapLeaves(layout, (leaf) => {
    const piece = leaf.kind === "piece" ? rest.pieces.get(leaf.piece) : undefined;
    if (leaf.kind !== "piece" || piece === undefined || leaf.copy !== undefined) return leaf;
    const other = exchanged({ leaf, piece }, rest);
    changed ||= other !== leaf;
    return other;
  });
  return [taken, changed];
}

function sizedIn({ pieces }: Job): SizedPiece[] {
  return pieces.filter((piece): piece is SizedPiece => piece.kind !== "crumbs");
}

/** How many of each row nothing is cut from. */
function leftOf(layout: LayoutNode, job: Job): Map<string, number> {
  const left = new Map(job.pieces.map(({ id, count }) => [id, count]));
  const begun = new Set<string>();
  const take = (id: string, count: number) => left.set(id, (left.get(id) ?? 0) - count);
  mapLeaves(layout, (leaf) => {
    for (const { id, count, copy } of takenIn(leaf)) {
      const key = `${copy} of ${id}`;
      if (copy === undefined || !begun.has(key)) take(id, count);
      if (copy !== undefined) begun.add(key);
    }
    return leaf;
  });
  return left;
}

type Taken = { readonly id: string; readonly count: number; readonly copy?: number | undefined };

function takenIn(leaf: LeafNode): readonly Taken[] {
  switch (leaf.kind) {
    case "piece":
      return [{ id: leaf.piece, count: 1, copy: leaf.copy }];
    case "unit":
      return leaf.pieces.map(({ piece, count }) => ({ id: piece, count }));
    case "slab":
      return (leaf.pieces ?? []).map(({ piece, count }) => ({ id: piece, count }));
    case "cloth":
      return [];
  }
}

type Cell = { readonly leaf: PieceNode; readonly piece: SizedPiece };
type Rest = {
  readonly left: Map<string, number>;
  readonly pieces: ReadonlyMap<string, SizedPiece>;
  readonly job: Job;
};

function exchanged({ leaf, piece }: Cell, { left, pieces, job }: Rest): PieceNode {
  const cut = { width: leaf.width + 2 * job.seam, height: leaf.height + 2 * job.seam };
  if (areaOf(piece) - cut.width * cut.height <= muchMore(piece)) return leaf;
  const serving = [...pieces.values()]
    .filter((other) => other.fabric === piece.fabric && other.direction === piece.direction)
    .filter((other) => areaOf(other) < areaOf(piece) && (left.get(other.id) ?? 0) > 0 && isWelcome(other))
    .sort((one, other) => areaOf(one) - areaOf(other));
  for (const other of serving) {
    const turned = turnsThatServe(other, cut);
    if (turned === null) continue;
    left.set(other.id, (left.get(other.id) ?? 0) - 1);
    left.set(piece.id, (left.get(piece.id) ?? 0) + 1);
    return { ...leaf, piece: other.id, turned };
  }
  return leaf;
}

/** More than a trim. */
function muchMore({ width, height }: SizedPiece): number {
  return inches(1, 2) * Math.max(width, height) + inches(1) ** 2;
}

function isWelcome({ use, kind, grain }: SizedPiece): boolean {
  if (grain !== "straight" || !["rectangle", "square", "strip"].includes(kind)) return false;
  return use === "must" || use === "first" || use === "yes";
}

type CutSize = { readonly width: number; readonly height: number };

/** Standing or turned, so that no more than a trim comes off, or it is a strip cut to length; null: it doesn't serve. */
function turnsThatServe(piece: SizedPiece, cut: CutSize): boolean | null {
  const ways = piece.direction === "none" ? [false, true] : [false];
  const way = ways.find((turned) => {
    const has = turned ? { width: piece.height, height: piece.width } : piece;
    return (
      fits(has.width, cut.width, mayCut(piece, turned, true)) &&
      fits(has.height, cut.height, mayCut(piece, turned, false))
    );
  });
  return way === undefined ? null : way && cut.width !== cut.height;
}

function mayCut(piece: SizedPiece, turned: boolean, wide: boolean): number {
  if (isCutAlong(piece, turned, wide)) return Number.POSITIVE_INFINITY;
  const side = wide !== turned ? piece.width : piece.height;
  return piece.keep === "whole" ? 0 : Math.min(inches(1, 2), Math.floor(side / 10));
}

function fits(has: number, needs: number, most: number): boolean {
  return has >= needs && has - needs <= most;
}

function areaOf({ width, height }: SizedPiece): number {
  return width * height;
}
