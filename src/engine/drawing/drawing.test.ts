import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCloth, type Sample, sampleLayout } from "../../../test/generators/layouts.ts";
import type { Fabric } from "../cloth/index.ts";
import type { LayoutNode, PieceNode, UnitNode } from "../layout/index.ts";
import { add, cut, finished, inches, type Length, length } from "../length/index.ts";
import { stepsFor } from "../sewing/index.ts";
import { type DrawnPlan, drawPlan } from "./draw.ts";
import { drawStep, placeOfStep } from "./step.ts";
import type { Drawing, Patch, Point, Shape } from "./types.ts";

const teal: Fabric = {
  id: "teal",
  name: "Teal dots",
  colour: "#2f6f73",
  colours: [
    { lab: { l: 43, a: -18, b: -8 }, share: 0.8 },
    { lab: { l: 90, a: 0, b: 5 }, share: 0.2 },
  ],
};

const sizes = fc.record({
  seed: fc.nat(),
  width: fc.integer({ min: 4, max: 90 }),
  height: fc.integer({ min: 4, max: 90 }),
  cell: fc.integer({ min: 4, max: 30 }),
});

describe("the drawing of any plan", () => {
  it("covers the back from raw edge to raw edge, without overlap", () => {
    forEachSample(({ layout, job }) => {
      const { shapes, size } = drawPlan(planOf({ layout, job }));
      expect(total(shapes.map(({ width, height }) => width * height))).toBe(size.width * size.height);
      expect(Math.max(...shapes.map(({ x, width }) => x + width))).toBe(job.back.width);
      expect(Math.max(...shapes.map(({ y, height }) => y + height))).toBe(job.back.height);
      expect(Math.min(...shapes.flatMap(({ x, y }) => [x, y]))).toBe(0);
      if (shapes.length < 80) expect(overlaps(shapes)).toEqual([]);
    });
  });

  it("fills each cell with its patches", () => {
    forEachSample((sample) => {
      for (const shape of drawPlan(planOf(sample)).shapes) {
        const difference = total(shape.patches.map(areaOf)) - shape.width * shape.height;
        // Slanted seams in a slab end at the nearest 1/320 mm.
        expect(Math.abs(difference)).toBeLessThanOrEqual(4 * (shape.width + shape.height));
      }
    });
  });

  it("has one line for every seam of every join", () => {
    forEachSample((sample) => {
      const joined = drawPlan(planOf(sample)).seams.filter(
        ({ kind }) => kind === "piecing" || kind === "plain",
      );
      expect(joined.length).toBe(leafCount(sample.layout) - 1);
    });
  });

  it("counts all its cloth once among the fabrics, most first", () => {
    forEachSample((sample) => {
      const { fabrics, size } = drawPlan(planOf(sample));
      const areas = fabrics.map(({ area }) => area);
      expect(areas).toEqual(areas.toSorted((a, b) => b - a));
      expect(total(areas) / (size.width * size.height)).toBeCloseTo(1, 4);
    });
  });
});

describe("the drawing of any step", () => {
  it("shows all its parts in cut size, half an inch apart", () => {
    forEachSample((sample) => {
      if (sample.layout.kind !== "join") return;
      const steps = stepsFor(sample.layout, sample.job);
      for (const step of [...steps.slice(0, 3), ...steps.slice(-2)]) {
        const { size, allowances } = drawStep(planOf(sample), step.id);
        const along = step.direction === "beside" ? "width" : "height";
        const parts = total(step.from.map((part) => part[along] * part.count));
        const gaps = (allowances.length - 1) * inches(1, 2);
        const expected = step.kind === "join" ? parts + gaps : step.unfinished[along];
        expect(size[along]).toBe(expected);
      }
    });
  });
});

describe("the place of any step in the back", () => {
  it("has the size the step finishes at, and holds the cloth of its parts", () => {
    forEachSample((sample) => {
      if (sample.layout.kind !== "join") return;
      const plan = planOf(sample);
      const { shapes } = drawPlan(plan);
      const steps = stepsFor(sample.layout, sample.job);
      for (const step of [...steps.slice(0, 3), ...steps.slice(-2)]) {
        const place = placeOfStep(plan, step.id);
        expect({ width: place.width, height: place.height }).toEqual(step.finished);
        const inside = shapes.filter(
          ({ x, y, width, height }) =>
            x + width > place.x &&
            x < place.x + place.width &&
            y + height > place.y &&
            y < place.y + place.height,
        );
        // What it is sewn of lies inside it, save the outer allowance that shows at the edge of the back.
        const over = sample.job.seam;
        for (const { x, y, width, height } of inside) {
          expect(x + over >= place.x && y + over >= place.y).toBe(true);
          expect(x + width <= place.x + place.width + over).toBe(true);
          expect(y + height <= place.y + place.height + over).toBe(true);
        }
        if (step.kind !== "slab" && step.from.every((part) => "piece" in part && step.kind === "join"))
          expect(inside).toHaveLength(total(step.from.map(({ count }) => count)));
      }
    });
  });
});

describe("a back of 10 × 8 in, checked by hand", () => {
  // Finished 9½ × 7½: a half-square triangle of 3½ over cloth of 4, beside cloth of 6.
  const triangle: PieceNode = {
    kind: "piece",
    piece: "half-square-triangle-1",
    turned: false,
    ...size(3.5, 3.5),
  };
  const layout = joined("beside", inches(1, 4), 9.5, 7.5, [
    joined("below", inches(1, 4), 3.5, 7.5, [triangle, cloth(3.5, 4)]),
    cloth(6, 7.5),
  ]);

  it("lays cells inside the outer allowance and runs the cloth on to the raw edge", () => {
    const { shapes, allowances } = drawn(layout);
    expect(shapes.map(boxInInches)).toEqual([
      [0, 0, 3.75, 3.75],
      [0, 3.75, 3.75, 4.25],
      [3.75, 0, 6.25, 8],
    ]);
    expect(allowances.map(boxInInches)).toEqual([[0.25, 0.25, 9.5, 7.5]]);
  });

  it("draws seams to the raw edge", () => {
    const { seams } = drawn(layout);
    const lines = seams
      .filter(({ kind }) => kind !== "inside")
      .map((s) => [s.x1, s.y1, s.x2, s.y2].map(inInches));
    expect(lines).toEqual([
      [0, 3.75, 3.75, 3.75],
      [3.75, 0, 3.75, 8],
    ]);
  });

  it("cuts a sewn triangle from corner to corner and turns it clockwise", () => {
    expect(colourAtCorners(drawn(layout))).toEqual(["upper left", "lower right"]);
    const quarters = ([0, 1, 2, 3] as const).map((quarter) => {
      const turned = joined("beside", inches(1, 4), 9.5, 7.5, [
        joined("below", inches(1, 4), 3.5, 7.5, [{ ...triangle, quarter }, cloth(3.5, 4)]),
        cloth(6, 7.5),
      ]);
      return colourAtCorners(drawn(turned))[0];
    });
    expect(quarters).toEqual(["upper left", "upper right", "lower right", "lower left"]);
  });

  it("puts the top in the middle and gives a ruler that fits", () => {
    const top = { width: inches(6), height: inches(4), method: "hand", extra: inches(2) } as const;
    const drawing = drawPlan({ ...planFor(layout), top });
    expect(drawing.cutOff && boxInInches(drawing.cutOff.outline)).toEqual([2, 2, 6, 4]);
    expect(inInches(drawing.ruler.length)).toBe(3);
    expect(drawn(layout).cutOff).toBeNull();
  });

  it("lets what is left long stand over beside the other parts of its step, at the end at which it is", () => {
    const long = { leftLong: { height: inches(1) } };
    const row = (parts: readonly LayoutNode[]) => joined("below", inches(1, 4), 4, 24, [...parts]);
    const step = (left: LayoutNode) => {
      const whole = joined("beside", inches(1, 4), 8, 24, [left, row([cloth(4, 12), cloth(4, 12)])]);
      return drawStep(
        planFor(whole),
        String(stepsFor(whole, { seam: inches(1, 4), pieces: [], top: null }).length),
      );
    };
    const edges = (drawing: Drawing) => drawing.edges.map(boxInInches);
    expect(edges(step({ ...cloth(4, 24), ...long }))).toEqual([
      [0, 0, 4.5, 25.5],
      [5, 0, 4.5, 24.5],
    ]);
    const above = step(row([{ ...cloth(4, 12), ...long }, cloth(4, 12)]));
    expect(edges(above)).toEqual([
      [0, 0, 4.5, 25.5],
      [5, 1, 4.5, 24.5],
    ]);
    // The cells themselves lie in one line.
    expect(above.allowances.map(({ y }) => inInches(y))).toEqual([1.25, 1.25]);
  });

  it("says which way a print runs", () => {
    const strip = { ...pieceLike("strip-1", "strip"), direction: "one-way" as const };
    const lying: PieceNode = { kind: "piece", piece: "strip-1", turned: true, ...size(9.5, 7.5) };
    const { shapes } = drawPlan({ ...planFor(lying), pieces: [strip] });
    expect(shapes[0]?.print).toEqual({ direction: "one-way", along: "width" });
  });
});

describe("units with a diagonal inside", () => {
  const heap = [
    pieceLike("triangle-1", "triangle"),
    pieceLike("half-square-triangle-1", "half-square-triangle"),
  ];
  const drawnUnit = (unit: Partial<UnitNode>) => {
    const node: UnitNode = { kind: "unit", pattern: "", pieces: [], cloth: [], ...size(9.5, 7.5), ...unit };
    return drawPlan({ ...planFor(node), pieces: heap });
  };

  it.each([
    ["half-square-triangle", [{ piece: "triangle-1", count: 2 }], 2, 1],
    ["hourglass", [{ piece: "triangle-1", count: 4 }], 4, 4],
    ["square-in-square", [{ piece: "triangle-1", count: 5 }], 5, 4],
    // Four squares, each of two triangles: four seams inside and the cross between them, in halves.
    ["pinwheel", [{ piece: "half-square-triangle-1", count: 4 }], 8, 8],
  ])("%s is drawn in its patches", (pattern, pieces, patches, seams) => {
    const drawing = drawnUnit({ pattern, pieces });
    expect(drawing.shapes[0]?.patches.length).toBe(patches);
    expect(drawing.seams.length).toBe(seams);
    expect(total((drawing.shapes[0]?.patches ?? []).map(areaOf))).toBeCloseTo(inches(10) * inches(8), -6);
  });

  it("a pinwheel of eight loose triangles looks like one of four sewn ones", () => {
    const loose = drawnUnit({ pattern: "pinwheel", pieces: [{ piece: "triangle-1", count: 8 }] });
    const sewn = drawnUnit({ pattern: "pinwheel", pieces: [{ piece: "half-square-triangle-1", count: 4 }] });
    const outlines = ({ shapes }: Drawing) =>
      shapes.map(({ patches }) => patches.map(({ outline }) => outline));
    expect(outlines(loose)).toEqual(outlines(sewn));
    expect(loose.seams).toEqual(sewn.seams);
  });

  it("all diagonals of a pinwheel meet in its middle, and none of a diamond's", () => {
    const diagonalsAtMiddle = (pattern: string) => {
      const drawing = drawnUnit({ pattern, pieces: [{ piece: "half-square-triangle-1", count: 4 }] });
      const slanted = drawing.seams.filter((seam) => seam.x1 !== seam.x2 && seam.y1 !== seam.y2);
      return slanted.filter(({ x1, y1, x2, y2 }) => isMiddle(x1, y1) || isMiddle(x2, y2)).length;
    };
    expect(["pinwheel", "broken-dishes", "diamond"].map(diagonalsAtMiddle)).toEqual([4, 0, 0]);
  });

  it("never fails on a pattern without parts", () => {
    expect(drawnUnit({ pattern: "unheard of" }).shapes).toHaveLength(1);
  });
});

function forEachSample(law: (sample: Sample) => void): void {
  fc.assert(
    fc.property(sizes, ({ seed, ...size }) => law(sampleLayout(seed, { ...size, fabrics: [teal] }))),
    { numRuns: 60 },
  );
}

function planOf({ layout, job }: Sample): DrawnPlan {
  return { ...job, layout };
}

function planFor(layout: LayoutNode): DrawnPlan {
  return {
    unit: "in",
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    top: null,
    back: { width: inches(10), height: inches(8) },
    fabrics: [teal, plainCloth],
    pieces: [pieceLike("half-square-triangle-1", "half-square-triangle")],
    layout,
  };
}

function drawn(layout: LayoutNode): Drawing {
  return drawPlan(planFor(layout));
}

function pieceLike<K extends "half-square-triangle" | "triangle" | "strip">(id: string, kind: K) {
  const side = cut(inches(4));
  const facts = {
    count: 9,
    fabric: "teal",
    use: "yes",
    grain: "straight",
    washed: null,
    cloth: "",
    name: "",
  } as const;
  return { id, kind, width: side, height: side, keep: "whole", direction: "none", ...facts } as const;
}

function joined(
  direction: "beside" | "below",
  seam: Length,
  ...[width, height, parts]: [number, number, LayoutNode[]]
): LayoutNode {
  return { kind: "join", direction, seam, parts, ...size(width, height) };
}

function cloth(width: number, height: number): LayoutNode {
  return { kind: "cloth", role: "plain", fabric: "plain", source: "buy", ...size(width, height) };
}

function size(width: number, height: number) {
  return { width: finished(length(width * 8128)), height: finished(length(height * 8128)) };
}

/** Where the square corner of each patch of the first cell lies. */
function colourAtCorners({ shapes }: Drawing): string[] {
  const [cell] = shapes;
  return (cell?.patches ?? []).map((patch) => squareCorner(patch, cell ?? fail()));
}

function squareCorner({ outline }: Patch, cell: Shape): string {
  const corner = outline.find(
    (at) => outline.filter((other) => other.x === at.x || other.y === at.y).length === 3,
  );
  if (!corner) return "none";
  return `${corner.y === cell.y ? "upper" : "lower"} ${corner.x === cell.x ? "left" : "right"}`;
}

function isMiddle(x: number, y: number): boolean {
  return x === inches(5) && y === inches(4);
}

function boxInInches(box: Point & { width: Length; height: Length }): number[] {
  return [box.x, box.y, box.width, box.height].map(inInches);
}

function inInches(size: Length): number {
  return size / 8128;
}

function areaOf({ outline }: Patch): number {
  const doubled = outline.reduce((sum, { x, y }, index) => {
    const next = outline[(index + 1) % outline.length] ?? fail();
    return sum + x * next.y - next.x * y;
  }, 0);
  return Math.abs(doubled) / 2;
}

function overlaps(shapes: readonly Shape[]): (readonly [Shape, Shape])[] {
  return shapes.flatMap((a, index) =>
    shapes.slice(index + 1).flatMap((b) => (meets(a, b) ? [[a, b] as const] : [])),
  );
}

function meets(a: Shape, b: Shape): boolean {
  return (
    a.x < add(b.x, b.width) && b.x < add(a.x, a.width) && a.y < add(b.y, b.height) && b.y < add(a.y, a.height)
  );
}

function leafCount(node: LayoutNode): number {
  return node.kind === "join" ? node.parts.reduce((count, part) => count + leafCount(part), 0) : 1;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, next) => sum + next, 0);
}

function fail(): never {
  throw new Error("the test is wrong");
}
