import type { SizedPiece } from "../cloth/index.ts";
import { singles } from "./heap.ts";

/**
 * Every single piece of these rows, so that like fabrics lie next to each other only where nothing else is left: the
 * fabric with most pieces left goes first, save where it was the last. Ties in the heap's order.
 */
export function byTurns(rows: readonly SizedPiece[]): readonly SizedPiece[] {
  return spread(singles(rows));
}

/** The same pieces, like fabrics apart as far as they can be. */
export function spread(pieces: readonly SizedPiece[]): readonly SizedPiece[] {
  const left = [...pieces];
  const order: SizedPiece[] = [];
  while (left.length > 0) {
    const last = order.at(-1)?.fabric;
    const others = left.filter(({ fabric }) => fabric !== last);
    const next = mostFrequent(others.length > 0 ? others : left);
    if (next === undefined) break;
    left.splice(left.indexOf(next), 1);
    order.push(next);
  }
  return order;
}

function mostFrequent(pieces: readonly SizedPiece[]): SizedPiece | undefined {
  const countOf = (fabric: string) => pieces.filter((piece) => piece.fabric === fabric).length;
  return pieces.reduce<SizedPiece | undefined>(
    (best, next) => (best === undefined || countOf(next.fabric) > countOf(best.fabric) ? next : best),
    undefined,
  );
}
