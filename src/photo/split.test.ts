import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { joined } from "./join.ts";
import type { Outline } from "./outline.ts";
import { hullOf, type Polygon, signedArea, withFewerSides } from "./polygon.ts";
import { solidity, splitAtCorners } from "./split.ts";
import type { Place } from "./types.ts";

const splitting = { deep: 4, leastArea: 300 };

/** Every pixel of an outline drawn in straight steps, as the vision library gives it. */
function drawn(corners: readonly Place[]): Polygon {
  return corners.flatMap(([x, y], at): Place[] => {
    const [u, v] = corners[(at + 1) % corners.length] ?? [x, y];
    const steps = Math.max(Math.abs(u - x), Math.abs(v - y));
    return Array.from({ length: steps }, (_, n) => [
      Math.round(x + (n / steps) * (u - x)),
      Math.round(y + (n / steps) * (v - y)),
    ]);
  });
}

const step: readonly Place[] = [
  [0, 0],
  [100, 0],
  [100, 60],
  [70, 60],
  [70, 110],
  [20, 110],
  [20, 60],
  [0, 60],
];

describe("an outline of two pieces that touch", () => {
  it("is cut where it turns inwards: a square under a rectangle", () => {
    const parts = splitAtCorners(drawn(step), splitting);
    const areas = parts.map((part) => Math.abs(signedArea(part))).toSorted((one, other) => one - other);
    expect(areas).toHaveLength(2);
    expect(Math.abs((areas[0] ?? 0) - 2500)).toBeLessThan(60);
    expect(Math.abs((areas[1] ?? 0) - 6000)).toBeLessThan(60);
  });

  it("stays whole where it is convex", () => {
    const square = drawn([
      [0, 0],
      [80, 10],
      [70, 90],
      [-10, 80],
    ]);
    expect(splitAtCorners(square, splitting)).toEqual([square]);
    expect(solidity(square)).toBeGreaterThan(0.97);
  });

  it("loses no area, however it is cut", () => {
    const corner = fc.tuple(fc.integer({ min: 20, max: 80 }), fc.integer({ min: 20, max: 80 }));
    fc.assert(
      fc.property(corner, ([x, y]) => {
        const outline = drawn([
          [0, 0],
          [100, 0],
          [100, y],
          [x, y],
          [x, 100],
          [0, 100],
        ]);
        const parts = splitAtCorners(outline, splitting);
        const sum = parts.reduce((total, part) => total + Math.abs(signedArea(part)), 0);
        expect(Math.abs(sum - Math.abs(signedArea(outline)))).toBeLessThan(1e-6);
      }),
    );
  });
});

describe("fewer sides", () => {
  it("hold all that the outline held", () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 500 }));
    fc.assert(
      fc.property(fc.array(place, { minLength: 6, maxLength: 30 }), (places) => {
        const hull = hullOf(places);
        const four = hull.length > 4 ? withFewerSides(hull, 4) : null;
        if (four === null) return;
        expect(four).toHaveLength(4);
        expect(signedArea(four)).toBeGreaterThanOrEqual(signedArea(hull) - 1e-6);
      }),
    );
  });
});

describe("parts of one block", () => {
  const box = (x: number, y: number, side: number): Outline => ({
    polygon: [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
    filled: 1,
    solid: 1,
    split: false,
    parts: 1,
    cutOff: false,
  });

  it("are one again: two squares that meet in a corner are half of a block of four", () => {
    const [block, ...others] = joined([box(0, 0, 2), box(2.05, 2.05, 2)]);
    expect(others).toEqual([]);
    expect(block?.parts).toBe(2);
    expect(signedArea(block?.polygon ?? [])).toBeCloseTo(2 * (2.05 * Math.SQRT2) ** 2, 1);
  });

  it("are one where hardly a gap lies between them, and not at half an inch", () => {
    expect(joined([box(0, 0, 2), box(2.2, 0, 2)])).toHaveLength(1);
    expect(joined([box(0, 0, 2), box(2.5, 0, 2)])).toHaveLength(2);
  });

  it("are not made of what was cut apart, or makes no rectangle", () => {
    expect(joined([{ ...box(0, 0, 2), split: true }, box(2.1, 0, 2)])).toHaveLength(2);
    expect(joined([box(0, 0, 2), box(2.1, 0, 3)])).toHaveLength(2);
  });
});
