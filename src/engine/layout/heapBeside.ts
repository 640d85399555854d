import type { Job, Piece, SizedPiece } from "../cloth/index.ts";
import { areaOf, toCut } from "../length/index.ts";
import { crumbsUsedFor } from "../units/index.ts";
import { type Ground, stayingIn } from "./ground.ts";
import type { LayoutNode, PieceNode, SlabNode } from "./types.ts";

/** A strip that some cells are cut from already: so much of its length is gone. */
export type Begun = { readonly piece: SizedPiece; readonly copy: number; readonly taken: number };

/** Her heap without what has its place already: blocks of the composition, and what stays. */
export type HeapBeside = { readonly heap: Job; readonly begun: readonly Begun[] };

export function heapBeside(ground: Ground, job: Job): HeapBeside {
  const staying = stayingIn(ground);
  const begun = begunIn(staying, job);
  const placed = blocksIn(ground, new Map());
  for (const { piece, count, copy } of staying.flatMap(piecesIn))
    if (copy === undefined) placed.set(piece, (placed.get(piece) ?? 0) + count);
  for (const { piece } of begun) placed.set(piece.id, (placed.get(piece.id) ?? 0) + 1);
  const pieces = job.pieces.flatMap((piece): readonly Piece[] => {
    if (piece.kind === "crumbs") return crumbsBeside(piece, staying, job);
    const left = piece.count - (placed.get(piece.id) ?? 0);
    return left > 0 ? [{ ...piece, count: left }] : [];
  });
  return { heap: { ...job, pieces }, begun };
}

function blocksIn(ground: Ground, counts: Map<string, number>): Map<string, number> {
  if (ground.kind === "join") for (const part of ground.parts) blocksIn(part, counts);
  for (const piece of blocksOf(ground)) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  return counts;
}

function blocksOf(ground: Ground): readonly string[] {
  if (ground.kind === "on-point") return ground.blocks;
  return ground.kind === "block" ? [ground.piece] : [];
}

type TakenHere = { readonly piece: string; readonly count: number; readonly copy?: number };

/** The leftovers in a part of a layout; cells off one strip each by themselves. */
export function piecesIn(node: LayoutNode): readonly TakenHere[] {
  switch (node.kind) {
    case "join":
      return node.parts.flatMap(piecesIn);
    case "piece":
      return [{ piece: node.piece, count: 1, ...(node.copy === undefined ? {} : { copy: node.copy }) }];
    case "unit":
      return node.pieces;
    case "slab":
      return node.pieces ?? [];
    case "cloth":
      return [];
  }
}

function begunIn(staying: readonly LayoutNode[], job: Job): readonly Begun[] {
  const begun = new Map<string, Begun>();
  for (const node of staying.flatMap(cellsOff)) {
    const piece = job.pieces.find(({ id }) => id === node.piece);
    if (piece === undefined || piece.kind === "crumbs" || node.copy === undefined) continue;
    const key = `${node.copy} of ${piece.id}`;
    const before = begun.get(key)?.taken ?? 0;
    begun.set(key, { piece, copy: node.copy, taken: before + lengthOff(node, piece, job) });
  }
  return [...begun.values()];
}

function cellsOff(node: LayoutNode): readonly PieceNode[] {
  if (node.kind === "join") return node.parts.flatMap(cellsOff);
  return node.kind === "piece" && node.copy !== undefined ? [node] : [];
}

/** What a cell takes of its strip's length. */
function lengthOff({ width, height, turned }: PieceNode, piece: SizedPiece, { seam }: Job): number {
  const isUpright = piece.height >= piece.width;
  return toCut(isUpright !== turned ? height : width, seam);
}

function crumbsBeside(
  bag: Piece & { readonly kind: "crumbs" },
  staying: readonly LayoutNode[],
  { seam }: Job,
): readonly Piece[] {
  const slabs = staying.flatMap(slabsIn).filter(({ crumbs }) => crumbs === bag.id);
  if (slabs.length === 0) return [bag];
  const used = slabs.reduce((sum, { width }) => sum + crumbsUsedFor(toCut(width, seam)), 0);
  const left = bag.area * bag.count - used;
  return left > 0 ? [{ ...bag, area: areaOf(left), count: 1 }] : [];
}

function slabsIn(node: LayoutNode): readonly SlabNode[] {
  if (node.kind === "join") return node.parts.flatMap(slabsIn);
  return node.kind === "slab" ? [node] : [];
}
