import { describe, expect, test } from "vitest";
import { inches, length } from "../length/index.ts";
import { easingLimit, isLongJoin, joinLimit } from "./index.ts";

describe("time", () => {
  // Common practice.
  test.each([
    ["afternoon", 40],
    ["weekend", 120],
    ["any", Number.POSITIVE_INFINITY],
  ] as const)("%s is about %d seams", (time, seams) => {
    expect(joinLimit(time)).toBe(seams);
  });
});

describe("easing", () => {
  // From memory: 1/8 in per 12 in, never more than 1/2 in on one seam. No published limit was found.
  test.each([
    [12, [1, 8]],
    [24, [1, 4]],
    [36, [3, 8]],
    [48, [1, 2]],
    [90, [1, 2]],
    [0, [0, 1]],
  ] as const)("%d in of seam", (seam, [numerator, denominator]) => {
    expect(easingLimit(inches(seam))).toBe(inches(numerator, denominator));
  });

  test("it is rounded down", () => {
    expect(easingLimit(length(95))).toBe(0);
    expect(easingLimit(length(191))).toBe(1);
  });
});

test.each([
  [18, 6, false],
  [18 + 1 / 8, 0, true],
  [5, 7, true],
])("a join of %s in on which %s seams end is long: %s (common practice)", (long, seams, isLong) => {
  expect(isLongJoin(inches(long * 8, 8), seams)).toBe(isLong);
});
