/**
 * 0/1 knapsack over exact lengths: which of up to 30 pieces, laid end to end, make which length at what value.
 * After `solve`, `value[n]` is the best value of a set that is exactly `n` long (−∞ if there is none) and
 * `chosen[n]` its pieces as bits. Tables are reused, since this runs many thousand times a second.
 */
export type Knapsack = {
  solve(lengths: readonly number[], values: readonly number[], capacity: number): void;
  readonly value: Float64Array;
  readonly chosen: Int32Array;
};

export const mostPieces = 30;

export function knapsackFor(longest: number): Knapsack {
  const value = new Float64Array(longest + 1);
  const chosen = new Int32Array(longest + 1);
  const solve: Knapsack["solve"] = (lengths, values, capacity) => {
    value.fill(Number.NEGATIVE_INFINITY, 0, capacity + 1);
    chosen.fill(0, 0, capacity + 1);
    value[0] = 0;
    let reached = 0;
    for (let piece = 0; piece < lengths.length; piece++) {
      const length = lengths[piece] as number;
      reached = Math.min(capacity, reached + length);
      addPiece(value, chosen, { length, worth: values[piece] as number, bit: 1 << piece, reached });
    }
  };
  return { solve, value, chosen };
}

type Addition = { length: number; worth: number; bit: number; reached: number };

function addPiece(value: Float64Array, chosen: Int32Array, { length, worth, bit, reached }: Addition): void {
  for (let at = reached; at >= length; at--) {
    const with_ = (value[at - length] as number) + worth;
    if (with_ > (value[at] as number)) {
      value[at] = with_;
      chosen[at] = (chosen[at - length] as number) | bit;
    }
  }
}
