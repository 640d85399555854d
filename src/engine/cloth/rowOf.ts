import type { Piece } from "./types.ts";

const known = new WeakMap<readonly Piece[], ReadonlyMap<string, Piece>>();

/** The row of the heap with this id, without a walk over all rows; a job's rows never change. */
export function rowOf(pieces: readonly Piece[], id: string): Piece | undefined {
  const rows = known.get(pieces) ?? new Map(pieces.map((piece) => [piece.id, piece]));
  known.set(pieces, rows);
  return rows.get(id);
}
