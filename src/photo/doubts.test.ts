import { describe, expect, test } from "vitest";
import { besideDoubts, doubtsOf, type Seen } from "./doubts.ts";
import type { Polygon } from "./polygon.ts";

const square = (left: number): Polygon => [
  [left, 0],
  [left + 3, 0],
  [left + 3, 3],
  [left, 3],
];

/** A square of a cloth far from the floor's color, every side of it seen. */
const sure: Seen = {
  outline: { polygon: square(0), filled: 1, solid: 1, split: false, parts: 1, cutOff: false },
  sides: 4,
  clear: 1,
  mean: { l: 30, a: 0, b: 0 },
  floor: { l: 70, a: 0, b: 0 },
  isLined: false,
};
const outline = (less: Partial<Seen["outline"]>): Partial<Seen> => ({
  outline: { ...sure.outline, ...less },
});
// ΔE00 to the floor of L 70: about 3.7 and 5.2.
const nearest = { l: 65.3, a: 0, b: 0 };
const near = { l: 63.3, a: 0, b: 0 };

describe("a piece is to be looked at", () => {
  test.each<[string, Partial<Seen>, readonly string[]]>([
    ["not where all of it is seen", {}, []],
    ["where it hardly differs from the floor, however clear", { mean: nearest }, ["near-floor"]],
    ["not where it differs a little and every side is clear", { mean: near }, []],
    ["where it differs a little and a side is not", { mean: near, clear: 0.95 }, ["near-floor"]],
    ["not for a print's gaps where every side is seen along", outline({ solid: 0.9 }), []],
    [
      "where gaps and a broken side may be two pieces",
      { ...outline({ solid: 0.9 }), clear: 0.8 },
      ["may-be-two"],
    ],
    [
      "not where lines of the floor break that side",
      { ...outline({ solid: 0.9 }), clear: 0.8, isLined: true },
      [],
    ],
    ["where hardly half of a side is seen", { clear: 0.58 }, ["faint-side"]],
    ["where the photo cuts it off", { ...outline({ cutOff: true }), clear: 0 }, ["cut-off"]],
    ["where it was cut from what touches it", outline({ split: true }), ["may-be-one"]],
  ])("%s", (_, seen, doubts) => {
    expect(doubtsOf({ ...sure, ...seen })).toEqual(doubts);
  });

  test.each([
    [0.5, []],
    [0.2, ["may-be-one"]],
    [0, ["may-be-one"]],
  ])("where another lies %s in beside it: %j", (gap, doubts) => {
    const own = square(0);
    expect(besideDoubts(own, [own, square(3 + gap)])).toEqual(doubts);
  });
});
