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

/**
 * How many of each line are left over; every line with something left, in the heap's order. Lengths by their copies,
 * crumbs by the bag.
 */
export function unusedOf(
  pieces: readonly Piece[],
  leaves: readonly PlacedLeaf[],
): { readonly piece: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const { piece, count } of goneIntoSlabs(leaves, pieces))
    counts.set(piece, (counts.get(piece) ?? 0) + count);
  for (const { piece } of piecesUsed(leaves)) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  for (const [piece, copies] of lengthsUsed(leaves)) counts.set(piece, copies.size);
  return pieces
    .map((piece) => ({ piece: piece.id, count: piece.count - (counts.get(piece.id) ?? 0) }))
    .filter(({ count }) => count > 0);
}

type Count = { readonly piece: string; readonly count: number };

/** Bits by their number; crumbs by the bag, as many as their slabs cover. */
function goneIntoSlabs(leaves: readonly PlacedLeaf[], pieces: readonly Piece[]): readonly Count[] {
  const slabs = leaves.flatMap(({ node }) => (node.kind === "slab" ? [node] : []));
  const bags = pieces.flatMap((piece): readonly Count[] => {
    if (piece.kind !== "crumbs") return [];
    const area = slabs.reduce(
      (sum, slab) => sum + (slab.crumbs === piece.id ? slab.width * slab.height : 0),
      0,
    );
    return area === 0 ? [] : [{ piece: piece.id, count: Math.ceil(area / piece.area) }];
  });
  return [...slabs.flatMap((slab) => slab.pieces ?? []), ...bags];
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
