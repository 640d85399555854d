import { describe, expect, test } from "vitest";
import { inches, toNumber } from "../length/index.ts";
import { lostToWideSeams, randomStack, sharedStack, stackedError } from "./index.ts";

const repeated = (count: number, each: number) => Array.from({ length: count }, () => each);

describe("a steady error adds up", () => {
  test.each([
    ["11a catbirdquilts.wordpress.com, 2017", repeated(23, 1 / 16), 1 + 7 / 16],
    ["11b Decor Quilting, Tips: one block", repeated(8, 1 / 16), 1 / 2],
    ["11b Decor Quilting, Tips: two blocks", repeated(16, 1 / 16), 1],
    ["11c quilted-connections.com", repeated(4, 1 / 8), 1 / 2],
    ["11d Patchwork Times, 2009: two patches at each of two seams", repeated(4, 1 / 16), 1 / 4],
    ["11d Patchwork Times, 2009: with the cutting", repeated(8, 1 / 16), 1 / 2],
    [
      "11d Patchwork Times, 2009: with the outer edges",
      [...repeated(8, 1 / 16), ...repeated(2, 1 / 16)],
      5 / 8,
    ],
    ["11g ficientdesign.com: worst case", [0.005, 0.003, 0.002], 0.01],
    ["11g ficientdesign.com: worst case of four", [0.005, 0.003, 0.002, 0.005], 0.015],
    ["11h an article on tolerances: worst case", repeated(10, 0.1), 1],
  ])("%s", (_, errors, expected) => {
    expect(sharedStack(errors)).toBeCloseTo(expected, 10);
  });

  test("its sign does not let it cancel", () => {
    expect(sharedStack([1, -1])).toBe(2);
  });

  // Sources count differently: per seam (11a to 11c) or per patch edge (11d).
  test("a wide allowance takes twice its error at each seam", () => {
    expect(lostToWideSeams(2, inches(1, 16))).toBe(inches(1, 4));
  });
});

describe("chance errors add as the root of their squares", () => {
  test.each([
    ["11e JCGM 100:2008 H.1, nm", [25, 9.7, 2.9, 16.6], 31.67, 2],
    ["11f talalspecialbolt.com, mm", [0.00033, 0.00029, 0.00025], 0.00051, 5],
    ["11g ficientdesign.com", [0.005, 0.003, 0.002], 0.00616, 5],
    ["11g ficientdesign.com, one more", [0.005, 0.003, 0.002, 0.005], 0.00794, 5],
    ["11h an article on tolerances", repeated(10, 0.1), 0.316, 3],
  ])("%s", (_, errors, expected, digits) => {
    expect(randomStack(errors)).toBeCloseTo(expected, digits);
  });

  test("11e, 11f: expanded by their coverage factors", () => {
    const gauge = Math.round(randomStack([25, 9.7, 2.9, 16.6]));
    expect(gauge).toBe(32);
    // JCGM 100:2008 H.1 expands the rounded value.
    expect(Math.round(2.92 * gauge)).toBe(93);
    expect(2 * randomStack([0.00033, 0.00029, 0.00025])).toBeCloseTo(0.001, 4);
  });
});

describe("a row of seams", () => {
  // Derived: 12 seams, 1/32 in each.
  test("by chance and in common", () => {
    const none = inches(0);
    const each = inches(1, 32);
    expect(toNumber(stackedError(12, { shared: none, random: each }), "in")).toBeCloseTo(0.108, 3);
    expect(stackedError(12, { shared: each, random: none })).toBe(inches(3, 8));
    expect(toNumber(stackedError(12, { shared: each, random: each }), "in")).toBeCloseTo(0.483, 3);
  });
});
