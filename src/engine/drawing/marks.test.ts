import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCloth, sampleLayout } from "../../../test/generators/layouts.ts";
import { cut, inches, type Size } from "../length/index.ts";
import { drawPlainBack } from "./back.ts";
import { drawPlan } from "./draw.ts";
import { hatchPath, marksOf, type PatchMark, scaleFitting } from "./marks.ts";

describe("the hatching of the cut-off edge", () => {
  const whole = { x: 0, y: 0, width: 680, height: 880 };
  const hole = { x: 40, y: 40, width: 600, height: 800 };

  it("stays inside the back and outside the top", () => {
    const ends = [...hatchPath(whole, hole).matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    expect(ends.length).toBeGreaterThan(100);
    for (const [x = -1, y = -1] of ends) {
      expect(x >= 0 && x <= 680 && y >= 0 && y <= 880).toBe(true);
      expect(x > 40 && x < 640 && y > 40 && y < 840).toBe(false);
    }
  });

  it("is thin enough to leave the cloth its colour: under an eighth of the edge", () => {
    const lines = [...hatchPath(whole, hole).matchAll(/M([\d.]+) [\d.]+L([\d.]+)/g)];
    const lengths = lines.reduce((sum, [, from, to]) => sum + (Number(to) - Number(from)) * Math.SQRT2, 0);
    // A light and a dark line of 0.6 each.
    const lineWidth = 1.2;
    expect((lengths * lineWidth) / (680 * 880 - 600 * 800)).toBeLessThan(1 / 8);
  });
});

describe("marks on a page", () => {
  const sizes = fc.record({
    seed: fc.nat(),
    width: fc.integer({ min: 4, max: 90 }),
    height: fc.integer({ min: 4, max: 90 }),
    cell: fc.integer({ min: 4, max: 30 }),
  });

  it("cover the page from edge to edge, whatever the scale", () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 40, max: 1200 }), ({ seed, ...sample }, longest) => {
        const { layout, job } = sampleLayout(seed, { ...sample, fabrics: [plainCloth] });
        const drawing = drawPlan({ ...job, layout });
        const marks = marksOf(drawing, scaleFitting(drawing.size, longest));
        const ends = marks.patches.flatMap(endsOf);
        expect(Math.max(marks.width, marks.height)).toBeCloseTo(longest, 1);
        expect(Math.max(...ends.map(({ x }) => x))).toBeCloseTo(marks.width, 1);
        expect(Math.max(...ends.map(({ y }) => y))).toBeCloseTo(marks.height, 1);
        expect(JSON.stringify(marks)).not.toMatch(/NaN|Infinity/);
      }),
      { numRuns: 60 },
    );
  });
});

describe("a back for which nothing is planned yet", () => {
  const size = (width: number, height: number): Size => ({ width: inches(width), height: inches(height) });
  const of = { unit: "in", seam: inches(1, 4), plainSeam: inches(1, 2), fabric: null } as const;

  it("is one cloth with the top in its middle", () => {
    const drawing = drawPlainBack({ ...of, back: size(68, 88), top: size(60, 80) });
    expect(drawing?.shapes.map(({ width, height }) => [width, height])).toEqual([
      [cut(inches(68)), cut(inches(88))],
    ]);
    expect(drawing?.cutOff?.outline).toEqual({ x: inches(4), y: inches(4), ...size(60, 80) });
    expect(drawing?.seams).toEqual([]);
  });

  it("is not drawn while a measure is being typed that no back can have", () => {
    expect(drawPlainBack({ ...of, back: { width: inches(1, 2), height: inches(88) }, top: null })).toBeNull();
    expect(drawPlainBack({ ...of, back: size(68, 0), top: null })).toBeNull();
    expect(drawPlainBack({ ...of, back: size(50, 88), top: size(60, 80) })?.cutOff).toBeNull();
  });
});

function endsOf(patch: PatchMark): { readonly x: number; readonly y: number }[] {
  if (patch.kind === "box") return [{ x: patch.box.x + patch.box.width, y: patch.box.y + patch.box.height }];
  return [...patch.d.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
}
