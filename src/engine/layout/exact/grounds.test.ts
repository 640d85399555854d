import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gridOf } from "./marks.ts";
import { Relaxed } from "./relaxed.ts";
import { commonSides } from "./search.ts";
import type { Sort } from "./sorts.ts";
import { Tallies } from "./tallies.ts";

function sort(width: number, height: number, copies: number): Sort {
  return { value: width * height, copies, faces: [{ width, height, turned: false }], from: [] };
}

describe("marks", () => {
  it("are the sums of as many sides as there are copies", () => {
    const { across, down } = gridOf([sort(3, 10, 2), sort(5, 4, 1)], 12, 14);
    expect([...across.at]).toEqual([0, 3, 5, 6, 8, 11]);
    expect([...down.at]).toEqual([0, 4, 10, 14]);
    expect([...across.upTo]).toEqual([0, 0, 0, 1, 1, 2, 3, 3, 4, 4, 4, 5, 5]);
  });
});

describe("the relaxed task", () => {
  // By hand, with one 2 × 2 and as many of it as one likes: 5 × 4 holds four.
  const sorts = [sort(2, 2, 4)];
  const relaxed = new Relaxed(sorts, gridOf(sorts, 5, 4));

  it("takes as many as fit, and says how many", () => {
    expect(relaxed.solve([4])).toBe(16);
    expect(relaxed.used()).toEqual([4]);
  });

  it.each([
    [2, 2, 12],
    [2, 4, 8],
    [4, 2, 8],
    // Between two marks no less than at the one before.
    [3, 3, 12],
    [4, 4, 0],
  ])("knows what can still come to a part of %d × %d", (width, height, more) => {
    relaxed.solve([4]);
    relaxed.look();
    expect(relaxed.around(width, height)).toBe(more);
  });
});

describe("the sides that two parts can both be brought to", () => {
  it.each([
    [7, 4, 1, [7, 7]],
    [7, 7, 3, [7, 7]],
    [7, 4, 3, [7, 7]],
    [7, 5, 3, [10, 12]],
    [4, 5, 2, [7, 8]],
  ])("%d and %d, plain cloth from %d", (one, other, smallest, sides) => {
    expect(commonSides(one, other, smallest)).toEqual(sides);
  });
});

describe("tallies", () => {
  it("add up as long as there are so many copies", () => {
    const counts = fc.array(
      fc
        .record({ copies: fc.integer({ min: 1, max: 40 }), one: fc.nat(40), other: fc.nat(40) })
        .map(({ copies, one, other }) => ({
          copies,
          one: Math.min(one, copies),
          other: Math.min(other, copies),
        })),
      { minLength: 1, maxLength: 30 },
    );
    const adds = fc.property(counts, (sorts) => {
      const tallies = new Tallies(sorts.map(({ copies }) => sort(1, 1, copies)));
      const all = new Int32Array(3 * tallies.words);
      all.set(
        tallyOf(
          sorts.map(({ one }) => one),
          tallies,
        ),
        0,
      );
      all.set(
        tallyOf(
          sorts.map(({ other }) => other),
          tallies,
        ),
        tallies.words,
      );
      const sum = new Int32Array(tallies.words);
      const fits = sorts.every(({ copies, one, other }) => one + other <= copies);
      expect(tallies.writeSum(all, 0, 1, sum)).toBe(fits);
      if (fits)
        expect(sum).toEqual(
          tallyOf(
            sorts.map(({ one, other }) => one + other),
            tallies,
          ),
        );
    });
    fc.assert(adds, { seed: 1, numRuns: 300 });
  });
});

/** Of so many of each, one after the other. */
function tallyOf(counts: readonly number[], tallies: Tallies): Int32Array {
  const all = new Int32Array(2 * tallies.words);
  const next = new Int32Array(tallies.words);
  for (const [index, count] of counts.entries())
    for (let copy = 0; copy < count; copy++) {
      tallies.writeOne(index, next);
      all.set(next, tallies.words);
      if (!tallies.writeSum(all, 0, 1, next)) throw new Error("more than there are");
      all.set(next, 0);
    }
  return all.slice(0, tallies.words);
}
