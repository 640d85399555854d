import { type Cut, type Finished, type Length, subtract, sum, times, toFinished } from "../length/index.ts";

/** Strips sewn side by side, each of its own cut width: the sum less two allowances a seam. Exact. */
export function stripSetDeep(strips: readonly Cut[], seam: Length): Cut {
  return subtract(sum(strips), times(seam, 2 * (strips.length - 1)));
}

/** A row of so many equal squares, or of the units cut across a strip set: what it finishes at along itself. */
export function rowOfSquares(square: Cut, count: number, seam: Length): Finished {
  return times(toFinished(square, seam), count);
}
