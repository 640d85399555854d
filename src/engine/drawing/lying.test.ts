import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCloth, sampleLayout } from "../../../test/generators/layouts.ts";
import type { LayoutNode } from "../layout/index.ts";
import { cut, finished, inches, length, type Size } from "../length/index.ts";
import { type DrawnPlan, drawPlan } from "./draw.ts";
import { type LyingCloth, lyingCloth } from "./lying.ts";
import type { Point } from "./types.ts";

const seam = inches(1, 4);
const plum = { ...plainCloth, id: "plum" };

/** Where a place of the drawing is on the leftover that shows there. */
function onLeftover({ turn: [a, b, c, d, e, f] }: LyingCloth, { x, y }: Point) {
  // A turn's inverse is its transpose.
  return { x: a * (x - e) + b * (y - f), y: c * (x - e) + d * (y - f) };
}

const hair = 8;
const isOnRectangle = ({ width, height }: Size, { x, y }: { x: number; y: number }) =>
  x > -hair && x < width + hair && y > -hair && y < height + hair;

describe("the cloth of a leftover in a drawing", () => {
  it("is only turned and moved, and reaches over all that shows of it", () => {
    const sizes = fc.record({
      seed: fc.nat(),
      width: fc.integer({ min: 10, max: 60 }),
      height: fc.integer({ min: 10, max: 60 }),
      cell: fc.integer({ min: 4, max: 20 }),
    });
    let told = 0;
    const law = ({ seed, ...size }: { seed: number; width: number; height: number; cell: number }) => {
      const { layout, job } = sampleLayout(seed, { ...size, fabrics: [plum] });
      const drawing = drawPlan({ ...job, layout });
      const cells = drawing.shapes.filter(({ kind }) => kind === "piece");
      const whole = new Set(cells.flatMap(({ patches }) => patches.map(({ outline }) => outline)));
      for (const cloth of lyingCloth(drawing, job.pieces, seam)) {
        const [a, b, c, d] = cloth.turn;
        expect(a * d - b * c).toBeCloseTo(1, 9);
        expect(a * c + b * d).toBeCloseTo(0, 9);
        if (!whole.has(cloth.outline)) continue;
        told += 1;
        for (const place of cloth.outline)
          expect(isOnRectangle(cloth.size, onLeftover(cloth, place))).toBe(true);
      }
    };
    // In it a strip reaches to the back's raw edges on both ends.
    const examples: [Parameters<typeof law>[0]][] = [[{ seed: 2080341987, width: 14, height: 34, cell: 8 }]];
    fc.assert(fc.property(sizes, law), { numRuns: 60, examples });
    expect(told).toBeGreaterThan(100);
  });

  it("of one strip follows along it, cell by cell", () => {
    const strip = { id: "strip-1", kind: "strip", width: cut(inches(3)), height: cut(inches(20)) } as const;
    const cell = (height: number): LayoutNode => ({
      kind: "piece",
      piece: "strip-1",
      copy: 1,
      turned: true,
      width: finished(inches(height)),
      height: finished(inches(5, 2)),
    });
    const row: LayoutNode = {
      kind: "join",
      direction: "beside",
      seam,
      parts: [cell(8), cell(6)],
      width: finished(inches(14)),
      height: finished(inches(5, 2)),
    };
    const [first, second] = lyingOn(row, [strip]);
    // Its own way down runs across the row, from right to left.
    const reach = (cloth: LyingCloth | undefined) =>
      (cloth?.outline ?? []).map((place) => (cloth ? onLeftover(cloth, place).y : 0));
    expect(Math.min(...reach(first))).toBeGreaterThanOrEqual(0);
    expect(Math.min(...reach(second))).toBeGreaterThanOrEqual(Math.max(...reach(first)));
    expect(Math.max(...reach(second))).toBeLessThanOrEqual(strip.height);
  });

  it.each([
    ["pinwheel", 8, inches(39, 8)],
    ["hourglass", 4, inches(41, 8)],
  ])("of the triangles of a %s covers each of them, right angle on right angle", (pattern, count, side) => {
    const triangle = { id: "triangle-1", kind: "triangle", width: cut(side), height: cut(side) } as const;
    const unit: LayoutNode = {
      kind: "unit",
      pattern,
      pieces: [{ piece: "triangle-1", count }],
      cloth: [],
      // An hourglass of triangles with legs of 5 1/8 in is as large as their long side, less 1 1/4 in.
      width: finished(pattern === "pinwheel" ? inches(8) : inches(6)),
      height: finished(pattern === "pinwheel" ? inches(8) : inches(6)),
    };
    const cloths = lyingOn(framed(unit), [triangle]);
    expect(cloths).toHaveLength(count);
    for (const cloth of cloths) {
      const places = cloth.outline.map((place) => onLeftover(cloth, place));
      for (const { x, y } of places) {
        expect(x).toBeGreaterThan(-hair);
        expect(y).toBeLessThan(side + hair);
        expect(x - y).toBeLessThan(hair);
      }
      // The right angle is the place nearest to the lower left.
      const nearest = places.toSorted((one, other) => one.x - one.y - (other.x - other.y))[0];
      expect((nearest?.x ?? 0) + (nearest?.y ?? 0)).toBeCloseTo(side, -2);
    }
  });

  it("is not told of what has two colors, of crumbs and of bought cloth", () => {
    const two = {
      id: "two",
      kind: "half-square-triangle",
      width: cut(inches(4)),
      height: cut(inches(4)),
    } as const;
    const side = finished(inches(7, 2));
    const leaf: LayoutNode = { kind: "piece", piece: "two", turned: false, width: side, height: side };
    expect(lyingOn(leaf, [two])).toEqual([]);
    expect(lyingOn(plain(4, 4), [two])).toEqual([]);
  });
});

type Lying = Parameters<typeof lyingCloth>[1];

function lyingOn(layout: LayoutNode, pieces: Lying) {
  const plan: DrawnPlan = {
    unit: "in",
    seam,
    plainSeam: inches(1, 2),
    top: null,
    back: { width: length(layout.width + 2 * seam), height: length(layout.height + 2 * seam) },
    fabrics: [plum],
    pieces: pieces.map(({ id, kind }) => ({ id, kind, fabric: "plum", direction: "none" })),
    layout,
  };
  return lyingCloth(drawPlan(plan), pieces, seam);
}

function plain(width: number, height: number): LayoutNode {
  const size = { width: finished(inches(width)), height: finished(inches(height)) };
  return { kind: "cloth", role: "plain", fabric: "plum", source: "buy", ...size };
}

/** With plain cloth on all sides, so that no raw edge shows. */
function framed(node: LayoutNode): LayoutNode {
  const [width, height] = [node.width / 8128, node.height / 8128];
  const row: LayoutNode = {
    kind: "join",
    direction: "beside",
    seam,
    parts: [plain(2, height), node, plain(2, height)],
    width: finished(inches(width + 4)),
    height: node.height,
  };
  const parts = [plain(width + 4, 2), row, plain(width + 4, 2)];
  return { ...row, direction: "below", parts, height: finished(inches(height + 4)) };
}
