import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../../test/generators/handMadePlan.ts";
import { inches, length } from "../length/index.ts";
import { type DrawnPlan, drawPlan } from "./draw.ts";
import { drawingInView, mirrored, mirroredRect, views } from "./views.ts";

const made = handMadePlan();
const plan: DrawnPlan = {
  ...made,
  fabrics: made.fabrics.map((fabric, index) => ({
    ...fabric,
    colours: [{ lab: { l: 30 + 7 * index, a: -18, b: 12 }, share: 1 }],
  })),
};
const drawing = drawPlan(plan);
const labsOf = (one: typeof drawing) => one.shapes.flatMap(({ patches }) => patches.map(({ lab }) => lab));

describe("a drawing in any view", () => {
  it("has the same cells, seams and edges, as large as before", () => {
    for (const view of views) {
      const seen = drawingInView(drawing, view);
      expect(seen.size).toEqual(drawing.size);
      expect(seen.seams.length).toBe(drawing.seams.length);
      expect(seen.shapes.map(({ label, width, height, y }) => ({ label, width, height, y }))).toEqual(
        drawing.shapes.map(({ label, width, height, y }) => ({ label, width, height, y })),
      );
    }
  });

  it("in value keeps how light each cloth is, and nothing of its colour", () => {
    const [seen, before] = [labsOf(drawingInView(drawing, "value")), labsOf(drawing)];
    expect(seen).toEqual(before.map((lab) => (lab === null ? null : { l: lab.l, a: 0, b: 0 })));
    expect(before.some((lab) => lab !== null && (lab.a !== 0 || lab.b !== 0))).toBe(true);
  });

  it("in steps to go is pale where nothing is sewn yet, and as it was where it is", () => {
    const seen = drawingInView(drawing, "to-go", (cell) => cell % 2 === 0);
    for (const [cell, shape] of seen.shapes.entries()) {
      const before = drawing.shapes[cell];
      if (cell % 2 === 1) expect(shape).toEqual(before);
      else for (const { lab } of shape.patches) expect(lab?.l).toBeGreaterThan(85);
    }
  });

  it("in seams has one cloth and no print", () => {
    const seen = drawingInView(drawing, "seams");
    expect(new Set(labsOf(seen).map((lab) => lab?.l)).size).toBe(1);
    expect(seen.shapes.every(({ print }) => print === undefined)).toBe(true);
  });

  it("through the top is flipped: what lies at the left edge lies at the right one, patches within cells", () => {
    const seen = drawingInView(drawing, "through-top");
    expect(seen.seenFrom).toBe("front");
    for (const [index, shape] of seen.shapes.entries()) {
      const before = drawing.shapes[index];
      expect(shape.x + shape.width + (before?.x ?? 0)).toBe(drawing.size.width);
      for (const { x } of shape.patches.flatMap(({ outline }) => outline)) {
        expect(x).toBeGreaterThanOrEqual(shape.x);
        expect(x).toBeLessThanOrEqual(shape.x + shape.width);
      }
    }
  });
});

describe("flipping twice", () => {
  it("is as before, for a drawing", () => {
    expect(mirrored(mirrored(drawing))).toEqual(drawing);
  });

  it("is as before, for a place in it", () => {
    const side = fc.integer({ min: 0, max: 100_000 });
    fc.assert(
      fc.property(side, side, (x, width) => {
        const rect = { x: length(x), y: length(0), width: length(width), height: inches(1) };
        const whole = length(x + width + 7);
        expect(mirroredRect(mirroredRect(rect, whole), whole)).toEqual(rect);
      }),
    );
  });
});
