import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaToNumber, cut, inches, type Length, length } from "../length/index.ts";
import { areaOfWeight, gramsPerOunce } from "./crumbs.ts";
import {
  cutArea,
  finishedArea,
  fitsInTriangle,
  keepOf,
  kindFromSides,
  largestRectangle,
  squaresFrom,
} from "./shape.ts";
import { kinds, type SizedKind } from "./types.ts";

const quarter = inches(1, 4);
const piece = (kind: SizedKind, width: Length, height: Length) => ({
  kind,
  width: cut(width),
  height: cut(height),
});
const squareInches = (area: ReturnType<typeof finishedArea>) => areaToNumber(area, "in");

describe("a kind told from the sides", () => {
  test.each([
    [inches(5, 2), inches(5, 2), "square"],
    // Within 4 % or 1/8 in.
    [inches(5, 2), inches(21, 8), "square"],
    [inches(5, 2), inches(43, 16), "rectangle"],
    [inches(10), inches(83, 8), "square"],
    [inches(10), inches(21, 2), "rectangle"],
    [inches(5, 2), inches(35, 4), "strip"],
    [inches(34, 4), inches(5, 2), "rectangle"],
    [inches(5, 2), inches(42), "strip"],
    [inches(42), inches(60), "length"],
    [inches(18), inches(22), "rectangle"],
    [inches(24), inches(24), "square"],
    [inches(18), inches(80), "length"],
  ])("%d × %d is a %s", (width, height, kind) => {
    expect(kindFromSides(width, height)).toBe(kind);
    expect(kindFromSides(height, width)).toBe(kind);
  });

  test("what may be done to it goes by its kind", () => {
    const by = (keep: string) => kinds.filter((kind) => keepOf(kind) === keep);
    expect(by("whole")).toEqual(["block", "part-block", "half-square-triangle"]);
    expect(by("cut")).toEqual(["strip", "length"]);
  });
});

describe("what shows once it is sewn", () => {
  test.each([
    [piece("square", inches(5, 2), inches(5, 2)), 4],
    [piece("strip", inches(5, 2), inches(42)), 83],
    [piece("half-square-triangle", inches(5), inches(5)), 20.25],
    // Nothing shows of a piece no wider than its two seams.
    [piece("strip", inches(1, 2), inches(42)), 0],
    [piece("strip", inches(1, 4), inches(1, 4)), 0],
  ])("%j", (shape, expected) => expect(squareInches(finishedArea(shape, quarter))).toBe(expected));

  // The trade adds 7/8 in to the finished side of a half-square triangle; exactly it is (2 + √2) × 1/4 = 0.8536 in.
  test("a triangle cut 4 7/8 in for a 4 in finished square shows a hair more than half of it", () => {
    const shows = squareInches(finishedArea(piece("triangle", inches(39, 8), inches(39, 8)), quarter));
    expect(shows).toBeCloseTo((4.875 - (2 + Math.SQRT2) / 4) ** 2 / 2, 6);
    expect(shows).toBeGreaterThan(8);
    expect(shows).toBeLessThan(8.1);
  });

  // 3-4-5: the incircle's radius is 1 in, so a 1/4 in seam leaves three quarters of each side.
  test("a 3 × 4 triangle keeps 9/16 of its 6 sq in", () => {
    expect(squareInches(finishedArea(piece("triangle", inches(3), inches(4)), quarter))).toBeCloseTo(
      3.375,
      7,
    );
  });

  test("a triangle that is all seam shows nothing", () => {
    expect(finishedArea(piece("triangle", inches(3), inches(4)), inches(1))).toBe(0);
    expect(finishedArea(piece("triangle", inches(3, 4), inches(3, 4)), quarter)).toBe(0);
  });

  test("never below nothing, never more than was cut, whole units", () => {
    const side = fc.integer({ min: 1, max: 400_000 }).map(length);
    const kind = fc.constantFrom<SizedKind>("square", "strip", "triangle");
    fc.assert(
      fc.property(
        kind,
        side,
        side,
        fc.integer({ min: 0, max: 8128 }).map(length),
        (of, width, height, seam) => {
          const shape = piece(of, width, height);
          const shows = finishedArea(shape, seam);
          expect(Number.isSafeInteger(shows)).toBe(true);
          expect(shows).toBeGreaterThanOrEqual(0);
          expect(shows).toBeLessThanOrEqual(cutArea(shape));
        },
      ),
    );
  });
});

describe("a rectangle in a right triangle", () => {
  const legs = { width: inches(6), height: inches(4) };

  test("the largest is half by half", () => {
    expect(largestRectangle(legs)).toEqual({ width: inches(3), height: inches(2) });
  });

  test("fits up to the long side and not a hair beyond", () => {
    expect(fitsInTriangle({ width: inches(3), height: inches(2) }, legs)).toBe(true);
    expect(fitsInTriangle({ width: length(inches(3) + 1), height: inches(2) }, legs)).toBe(false);
    expect(fitsInTriangle({ width: inches(9, 2), height: inches(1) }, legs)).toBe(true);
    // Legs so long that the products pass 2^53.
    const long = { width: inches(10_000), height: inches(10_000) };
    expect(fitsInTriangle({ width: inches(9_999), height: inches(1) }, long)).toBe(true);
    expect(fitsInTriangle({ width: inches(9_999), height: length(8129) }, long)).toBe(false);
  });

  test("none that fits is larger", () => {
    const leg = fc.integer({ min: 2, max: 100_000 }).map(length);
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(leg, leg, share, share, (width, height, wide, high) => {
        const other = { width: length(Math.floor(width * wide)), height: length(Math.floor(height * high)) };
        const largest = largestRectangle({ width, height });
        expect(fitsInTriangle(largest, { width, height })).toBe(true);
        if (!fitsInTriangle(other, { width, height })) return;
        // Half a leg is rounded down, so up to one unit of each side is missing.
        expect(other.width * other.height).toBeLessThanOrEqual((largest.width + 1) * (largest.height + 1));
      }),
    );
  });
});

describe("squares from a cloth, edges as they are", () => {
  const fatQuarter = { width: inches(18), height: inches(22) };
  const yard = { width: inches(44), height: inches(36) };

  // A yield chart of 13 August 2011 on a quilting blog, the same as floor × floor.
  test.each([
    [2, 99],
    [2.5, 56],
    [3, 42],
    [3.5, 30],
    [4, 20],
    [4.5, 16],
    [5, 12],
    [5.5, 12],
    [6, 9],
    [6.5, 6],
  ])("18 × 22 in gives squares of %d in: %d", (side, count) => {
    expect(squaresFrom(fatQuarter, inches(side * 2, 2))).toBe(count);
  });

  // Derived, floor × floor; a published chart agrees in all of these. Its 7 in row prints 35: the count is 30.
  test.each([
    [1.5, 696],
    [2, 396],
    [2.5, 238],
    [3, 168],
    [3.5, 120],
    [4, 99],
    [4.5, 72],
    [5, 56],
    [5.5, 48],
    [6, 42],
    [6.5, 30],
    [7, 30],
    [8, 20],
    [9, 16],
    [10, 12],
    [12, 9],
  ])("a yard 44 in wide gives squares of %d in: %d", (side, count) => {
    expect(squaresFrom(yard, inches(side * 2, 2))).toBe(count);
  });
});

describe("crumbs by weight", () => {
  // Common practice: 300 sq in of quilting cotton an ounce, ± 10 %; 1 m² weighs about 145 g.
  test("an ounce is about 300 sq in, between 270 and 330", () => {
    const { likely, least, most } = areaOfWeight(gramsPerOunce);
    expect([likely, least, most].map((area) => Math.round(squareInches(area)))).toEqual([300, 270, 330]);
  });

  test("a square metre's 145 g come out at a square metre within the tenth", () => {
    const { least, most } = areaOfWeight(145);
    expect(areaToNumber(least, "cm")).toBeLessThan(10_000);
    expect(areaToNumber(most, "cm")).toBeGreaterThan(10_000);
  });
});
