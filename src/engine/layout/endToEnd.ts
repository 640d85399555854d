/**
 * Which lengths pieces laid end to end can make, and from which pieces. Lengths are whole steps; reachable lengths are
 * kept as bits, thirty-two to a word, so that a piece more is a shift and an or.
 */
export type EndToEnd = {
  /** Lays the first pieces of a list, in its order, until `wanted` can be made or the list ends; up to `most`. */
  lay(lengths: Int32Array, count: number, goal: { readonly wanted: number; readonly most: number }): void;
  reaches(length: number): boolean;
  /** The pieces that make it, as bits: those early in the list where there is a choice. */
  chosen(length: number): number;
};

export const mostPieces = 30;

export function endToEnd(longest: number): EndToEnd {
  const row = (longest >>> 5) + 2;
  const bits = new Int32Array(row * (mostPieces + 1));
  let laid: Int32Array = new Int32Array(0);
  let last = 0;
  const has = (pieces: number, length: number) =>
    ((bits[pieces * row + (length >>> 5)] as number) & (1 << (length & 31))) !== 0;
  return {
    lay: (lengths, count, { wanted, most }) => {
      const words = (most >>> 5) + 1;
      laid = lengths;
      bits.fill(0, 0, words);
      bits[0] = 1;
      for (last = 0; last < count && !has(last, wanted); last++) {
        shiftAndOr(bits, last * row, { by: lengths[last] as number, words, row });
      }
    },
    reaches: (length) => has(last, length),
    chosen: (length) => {
      let mask = 0;
      let left = length;
      for (let piece = last; piece > 0 && left > 0; piece--) {
        if (has(piece - 1, left)) continue;
        mask |= 1 << (piece - 1);
        left -= laid[piece - 1] as number;
      }
      return mask;
    },
  };
}

type Shift = { readonly by: number; readonly words: number; readonly row: number };

/** The next row of bits: what could be made before, and all of that with one piece more. */
function shiftAndOr(bits: Int32Array, from: number, { by, words, row }: Shift): void {
  const whole = by >>> 5;
  const part = by & 31;
  const to = from + row;
  const early = Math.min(whole, words);
  for (let word = 0; word < early; word++) bits[to + word] = bits[from + word] as number;
  if (part === 0) {
    for (let word = whole; word < words; word++) {
      bits[to + word] = (bits[from + word] as number) | (bits[from + word - whole] as number);
    }
    return;
  }
  let carry = 0;
  for (let word = whole; word < words; word++) {
    const low = bits[from + word - whole] as number;
    bits[to + word] = (bits[from + word] as number) | (low << part) | carry;
    carry = low >>> (32 - part);
  }
}
