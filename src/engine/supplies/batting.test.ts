import { describe, expect, test } from "vitest";
import { inches, type Size, toNumber } from "../length/index.ts";
import { afterQuilting, battingFor, beforeWash, packageFor } from "./index.ts";

function size(width: number, height: number): Size {
  return { width: inches(width), height: inches(height) };
}

describe("batting", () => {
  // thecreativefolk.com: by hand 2 in per side, on a frame 4.
  test("is larger than the top on each side", () => {
    expect(battingFor(size(60, 80), inches(2), size(68, 88))).toEqual(size(64, 84));
    expect(battingFor(size(60, 80), inches(4), size(68, 88))).toEqual(size(68, 88));
  });

  test("is never larger than the back", () => {
    expect(battingFor(size(60, 80), inches(4), size(64, 90))).toEqual(size(64, 88));
  });

  // Packaged sizes: project12quilts, 2012; honeybegood.com, 2012; stitchingtimes, 2011; the throw from memory.
  test.each([
    [34, 45, "craft"],
    [45, 34, "craft"],
    [35, 45, "crib"],
    [60, 50, "throw"],
    [64, 84, "twin"],
    [90, 72, "twin"],
    [73, 90, "full"],
    [82, 96, "queen"],
    [120, 120, "king"],
    [121, 100, null],
  ])("%d × %d comes packed as %s", (width, height, name) => {
    expect(packageFor(size(width, height))?.name ?? null).toBe(name);
  });
});

describe("shrinking", () => {
  // Derived; a quilters' forum adds 5 % instead (94 1/2) and then advises 95.
  test("90 in after a wash that takes 5 % is 94.7 before", () => {
    expect(toNumber(beforeWash(inches(90), 0.05), "in")).toBeCloseTo(94.7, 1);
    expect(beforeWash(inches(90), 0)).toBe(inches(90));
  });

  // melgeecrafts.com, a published set: before quilting, after binding.
  test.each([
    [83, 80],
    [105, 102],
    [57, 55.5],
    [68, 66.5],
    [66.75, 64.75],
    [84.625, 82.75],
    [69, 67.25],
  ])("a side of %d in came to %d", (before, after) => {
    const [least, most] = afterQuilting(inches(before * 8, 8));
    const hair = inches(1, 16);
    expect(inches(after * 4, 4)).toBeGreaterThanOrEqual(least - hair);
    expect(inches(after * 4, 4)).toBeLessThanOrEqual(most + hair);
  });
});
