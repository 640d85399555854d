import { describe, expect, test } from "vitest";
import { inches } from "../length/index.ts";
import { sleeveFor, tubeOf, usualSleeveStrip } from "./index.ts";

describe("hanging sleeve", () => {
  test.each([
    ["13a Hill Country Quilt Guild: 8 1/2 in gives 4", 8.5, 4],
    ["13a Hill Country Quilt Guild: 6 1/2 in gives 3", 6.5, 3],
    ["13c sewhappystitchers.com: a strip of 9 in (tube derived)", 9, 4.25],
  ])("%s", (_, strip, tube) => {
    expect(tubeOf(inches(strip * 2, 2))).toBe(inches(tube * 4, 4));
  });

  test("13d Gems of the Prairie guild: 8 1/2 in advised, which is the 4 in that 13e asks for", () => {
    expect(usualSleeveStrip).toBe(inches(17, 2));
    expect(tubeOf(usualSleeveStrip)).toBe(inches(4));
  });

  test("13f Hill Country Quilt Guild: an inch shorter than the quilt, in two above 90 in", () => {
    expect(sleeveFor(inches(60), inches(42))).toMatchObject({ tubes: 1, each: inches(59) });
    expect(sleeveFor(inches(90), inches(42))).toMatchObject({ tubes: 1, each: inches(89) });
    expect(sleeveFor(inches(91), inches(42))).toMatchObject({ tubes: 2, each: inches(45) });
  });

  // Derived: 59 in of sleeve are two widths of 42 in, 89 in three, twice 45 in four.
  test.each([
    [40, 8.5],
    [60, 17],
    [90, 25.5],
    [91, 34],
  ])("for %d in the cloth is %d in", (width, cloth) => {
    expect(sleeveFor(inches(width), inches(42)).cloth).toBe(inches(cloth * 2, 2));
  });
});
