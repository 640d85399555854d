import { describe, expect, it } from "vitest";
import { rectangle, type Spot, triangle } from "../../test/made/scene.ts";
import { inches } from "../engine/length/index.ts";
import { shapeOf } from "./shape.ts";

/** Slanted by so many degrees: two corners narrower, two wider. */
function slanted(width: number, height: number, degrees: number): Spot[] {
  const shift = height * Math.tan((degrees * Math.PI) / 180);
  return [
    [0, 0],
    [width, 0],
    [width + shift, height],
    [shift, height],
  ];
}

// By hand: a thirty-second of an inch off, then down to the next eighth.
describe("the shape of an outline", () => {
  it.each([
    ["a square", rectangle([3, 4], [5, 5], 20), "square", 4.875, 4.875, []],
    ["a rectangle", rectangle([0, 0], [6.04, 3], 71), "rectangle", 2.875, 6, []],
    ["a strip", rectangle([1, 1], [2.5, 12.25], 5), "strip", 2.375, 12.125, []],
    ["a right triangle, by its legs", triangle([0, 0], [4.5, 6], 33), "triangle", 4.375, 5.875, []],
    ["what misses a right angle by three degrees", slanted(5, 5, 3), "square", 4.875, 4.875, []],
  ] as const)("%s", (_, outline, kind, width, height, doubts) => {
    expect(shapeOf(outline, { pixel: 0.01, step: inches(1, 8) })).toMatchObject({
      kind,
      width,
      height,
      doubts,
    });
  });

  it("is doubted where it misses a right angle by a little, and not where by much", () => {
    expect(shapeOf(slanted(5, 5, 7), { pixel: 0.01, step: inches(1, 8) })).toMatchObject({
      kind: "odd",
      doubts: ["not-square"],
    });
    expect(shapeOf(slanted(5, 5, 20), { pixel: 0.01, step: inches(1, 8) })).toMatchObject({
      kind: "odd",
      doubts: [],
    });
  });

  it("of what has more than four corners is the largest rectangle in it", () => {
    const house: Spot[] = [
      [0, 2],
      [3, 0],
      [6, 2],
      [6, 6],
      [0, 6],
    ];
    const { kind, measured, doubts } = shapeOf(house, { pixel: 0.01, step: inches(1, 8) });
    expect([kind, doubts]).toEqual(["odd", ["not-square"]]);
    expect(measured.width).toBeCloseTo(4, 1);
    expect(measured.height).toBeCloseTo(6, 1);
  });
});
