import type { Piece } from "../cloth/index.ts";
import type { PlacedLeaf } from "../layout/index.ts";

/** One physical piece and the cells it gives. */
export type PieceUsed = { readonly piece: string; readonly cells: readonly PlacedLeaf[] };

/** Every leftover that is used, once each: a piece cut into several cells is one, a sewn pair is two. */
export function piecesUsed(leaves: readonly PlacedLeaf[]): PieceUsed[] {
  const shared = new Map<string, PlacedLeaf[]>();
  const used: PieceUsed[] = [];
  for (const leaf of leaves) {
    const { node } = leaf;
    if (node.kind === "unit") {
      for (const { piece, count } of node.pieces)
        for (let at = 0; at < count; at++) used.push({ piece, cells: [] });
    } else if (node.kind === "piece" && node.copy === undefined) {
      used.push({ piece: node.piece, cells: [leaf] });
    } else if (node.kind === "piece") {
      const key = `${node.piece} ${node.copy}`;
      const cells = shared.get(key);
      if (cells !== undefined) cells.push(leaf);
      else shared.set(key, startOf(used, node.piece, leaf));
    }
  }
  return used;
}

function startOf(used: PieceUsed[], piece: string, leaf: PlacedLeaf): PlacedLeaf[] {
  const cells = [leaf];
  used.push({ piece, cells });
  return cells;
}

/** How many of each line are left over; every line with something left, in the heap's order. Lengths by their copies. */
export function unusedOf(
  pieces: readonly Piece[],
  leaves: readonly PlacedLeaf[],
): { readonly piece: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const { piece } of piecesUsed(leaves)) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  for (const [piece, copies] of lengthsUsed(leaves)) counts.set(piece, copies.size);
  return pieces
    .map((piece) => ({ piece: piece.id, count: piece.count - (counts.get(piece.id) ?? 0) }))
    .filter(({ count }) => count > 0);
}

function lengthsUsed(leaves: readonly PlacedLeaf[]): Map<string, Set<number>> {
  const used = new Map<string, Set<number>>();
  for (const { node } of leaves) {
    if (node.kind !== "cloth" || node.source === "buy") continue;
    const copies = used.get(node.source.piece) ?? new Set();
    copies.add(node.source.copy);
    used.set(node.source.piece, copies);
  }
  return used;
}
