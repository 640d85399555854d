import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inches } from "../length/index.ts";
import { minutesFor, type Work } from "./index.ts";

const hour = 60;

function work(joins: number, inchesOfSeam: number, rest: Partial<Work> = {}): Work {
  return { joins, seamLength: inches(inchesOfSeam), cuts: 0, trims: 0, squareUps: 0, ...rest };
}

describe("minutes", () => {
  // All from common practice (experienced quilters; no published standard).
  test.each([
    [
      "a usual pieced back: 20 pieces in an insert",
      work(22, 420, { cuts: 10, trims: 18, squareUps: 3 }),
      1,
      3,
    ],
    ["an insert of 40 pieces", work(42, 640, { cuts: 12, trims: 40, squareUps: 4 }), 1.5, 4],
    ["300 pieces", work(299, 2300, { cuts: 100, trims: 300, squareUps: 30 }), 10, 20],
    ["an afternoon: 40 seams", work(40, 620, { cuts: 12, trims: 38, squareUps: 4 }), 1.5, 4],
    ["a weekend: 120 seams", work(120, 1300, { cuts: 40, trims: 120, squareUps: 12 }), 4, 10],
  ])("%s", (_, given, low, high) => {
    const [least, most] = minutesFor(given);
    expect(least).toBeGreaterThanOrEqual(low * hour);
    expect(most).toBeLessThanOrEqual(high * hour);
  });

  test("the range for 300 pieces fills its anchor: 10 to 20 h", () => {
    const [least, most] = minutesFor(work(299, 2300, { cuts: 100, trims: 300, squareUps: 30 }));
    expect(least).toBeLessThan(12 * hour);
    expect(most).toBeGreaterThan(18 * hour);
  });

  // Timed account (a blog, 2016): 800 in of chain-pieced seam took 13.5 and 13.2 min with clipping of 2 and 2 min.
  test("800 in of seam alone take what a timed account took", () => {
    const [least] = minutesFor(work(0, 0));
    const [, most] = minutesFor(work(0, 0));
    const [sewnFast, sewnSlow] = minutesFor(work(0, 800));
    expect(sewnFast - least).toBeLessThanOrEqual(13.5 + 2);
    expect(sewnSlow - most).toBeGreaterThanOrEqual(13.5 + 2);
  });

  test("more work never takes less time, and low never passes high", () => {
    const some = fc.record({
      joins: fc.nat(400),
      seamLength: fc.nat(5000).map((count) => inches(count)),
      cuts: fc.nat(600),
      trims: fc.nat(600),
      squareUps: fc.nat(60),
    });
    fc.assert(
      fc.property(some, fc.constantFrom("joins", "cuts", "trims", "squareUps"), (given, kind) => {
        const [low, high] = minutesFor(given);
        const [moreLow, moreHigh] = minutesFor({ ...given, [kind]: given[kind] + 10 });
        expect(low).toBeLessThan(high);
        expect(moreLow).toBeGreaterThan(low);
        expect(moreHigh).toBeGreaterThan(high);
      }),
    );
  });
});
