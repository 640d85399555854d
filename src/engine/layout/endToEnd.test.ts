import fc from "fast-check";
import { expect, test } from "vitest";
import { endToEnd, mostPieces } from "./endToEnd.ts";

const lengthsOf = fc.array(fc.integer({ min: 1, max: 120 }), { minLength: 1, maxLength: 12 });

/** Every sum of every subset, the slow way. */
function sumsOf(lengths: readonly number[]): Set<number> {
  const sums = new Set([0]);
  for (const length of lengths) for (const sum of [...sums]) sums.add(sum + length);
  return sums;
}

const unreachable = 1;

test("what pieces make end to end is just what their subsets add up to", () => {
  fc.assert(
    fc.property(lengthsOf, fc.integer({ min: 40, max: 600 }), (lengths, most) => {
      const ends = endToEnd(600);
      // Nothing stops it early where the length that is wanted can't be made.
      const longer = lengths.map((length) => length + unreachable);
      ends.lay(Int32Array.from(longer), longer.length, { wanted: unreachable, most });
      const sums = sumsOf(longer);
      for (let length = 0; length <= most; length++) expect(ends.reaches(length)).toBe(sums.has(length));
    }),
  );
});

test("the pieces chosen add up to the length", () => {
  fc.assert(
    fc.property(lengthsOf, (lengths) => {
      const ends = endToEnd(600);
      ends.lay(Int32Array.from(lengths), lengths.length, { wanted: 601, most: 600 });
      for (let length = 1; length <= 600; length++) {
        if (!ends.reaches(length)) continue;
        const chosen = lengths.filter((_, at) => ends.chosen(length) & (1 << at));
        expect(chosen.reduce((sum, one) => sum + one, 0)).toBe(length);
      }
    }),
    { numRuns: 40 },
  );
});

test("it stops at the first pieces that make the wanted length, and takes early ones where it can", () => {
  const ends = endToEnd(100);
  ends.lay(Int32Array.from([10, 20, 30, 5, 25]), 5, { wanted: 30, most: 100 });
  expect(ends.chosen(30)).toBe(0b11);
  expect(ends.reaches(5)).toBe(false);
});

test("thirty pieces, the last of them too", () => {
  const ends = endToEnd(mostPieces * 8);
  ends.lay(new Int32Array(mostPieces).fill(8), mostPieces, { wanted: mostPieces * 8, most: mostPieces * 8 });
  expect(ends.chosen(mostPieces * 8)).toBe(2 ** mostPieces - 1);
});
