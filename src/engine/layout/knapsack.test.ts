import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { knapsackFor } from "./knapsack.ts";

type Thing = { readonly length: number; readonly worth: number };

const things = fc.array(
  fc.record({ length: fc.integer({ min: 1, max: 12 }), worth: fc.integer({ min: -3, max: 20 }) }),
  {
    maxLength: 9,
  },
);

/** Best worth of every subset that is exactly `length` long, by looking at all of them. */
function byHand(all: readonly Thing[], length: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let set = 0; set < 2 ** all.length; set++) {
    const chosen = all.filter((_, index) => set & (1 << index));
    if (chosen.reduce((sum, thing) => sum + thing.length, 0) !== length) continue;
    best = Math.max(
      best,
      chosen.reduce((sum, thing) => sum + thing.worth, 0),
    );
  }
  return best;
}

describe("knapsack", () => {
  it("finds the best set for every length, like looking at all sets", () => {
    fc.assert(
      fc.property(things, fc.integer({ min: 0, max: 40 }), (all, capacity) => {
        const knapsack = knapsackFor(40);
        knapsack.solve(
          all.map(({ length }) => length),
          all.map(({ worth }) => worth),
          capacity,
        );
        for (let length = 0; length <= capacity; length++) {
          expect(knapsack.value[length]).toBe(byHand(all, length));
        }
      }),
      { numRuns: 60 },
    );
  });

  it("names a set that is as long and as good as it says", () => {
    fc.assert(
      fc.property(things, (all) => {
        const knapsack = knapsackFor(60);
        knapsack.solve(
          all.map(({ length }) => length),
          all.map(({ worth }) => worth),
          60,
        );
        for (let length = 0; length <= 60; length++) {
          if (knapsack.value[length] === Number.NEGATIVE_INFINITY) continue;
          const chosen = all.filter((_, index) => (knapsack.chosen[length] ?? 0) & (1 << index));
          expect(chosen.reduce((sum, thing) => sum + thing.length, 0)).toBe(length);
          expect(chosen.reduce((sum, thing) => sum + thing.worth, 0)).toBe(knapsack.value[length]);
        }
      }),
    );
  });

  it("forgets the last time it was used", () => {
    const knapsack = knapsackFor(20);
    knapsack.solve([7], [100], 20);
    knapsack.solve([3], [1], 20);
    expect(knapsack.value[7]).toBe(Number.NEGATIVE_INFINITY);
    expect(knapsack.value[3]).toBe(1);
  });
});
