import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCloth, type Sample, sampleLayout } from "../../../test/generators/layouts.ts";
import type { ClothNode, JoinNode, LayoutNode } from "../layout/index.ts";
import { cut, finished, inches, type Length, length, subtract, sum, times } from "../length/index.ts";
import { fittedIn } from "./leftLong.ts";
import { flattened, reassemble } from "./reassemble.ts";
import { sectionAtMost } from "./runs.ts";
import { seamsIn, stepsFor } from "./steps.ts";
import type { Step, StepPart } from "./types.ts";

const sizes = fc.record({
  seed: fc.nat(),
  width: fc.integer({ min: 4, max: 100 }),
  height: fc.integer({ min: 4, max: 100 }),
  cell: fc.integer({ min: 4, max: 30 }),
});

function forEachSample(law: (steps: Step[], sample: Sample) => void): void {
  const lawOf = (sample: Sample) => law(stepsFor(sample.layout, sample.job), sample);
  fc.assert(
    fc.property(sizes, ({ seed, ...size }) => lawOf(sampleLayout(seed, { ...size, fabrics: [plainCloth] }))),
    { numRuns: 200 },
  );
}

describe("the steps of any layout", () => {
  it("sew up to that layout, read from their labels and sizes alone", () => {
    forEachSample((steps, { layout }) => {
      const asWritten = JSON.parse(JSON.stringify(steps));
      expect(reassemble(asWritten)).toEqual(flattened(layout));
      expect(flattened(layout)).toEqual(layout);
    });
  });

  it("add up: parts less two allowances a seam are the unit, and all are as long as the seam", () => {
    forEachSample((steps) => {
      for (const step of steps.filter(({ kind }) => kind === "join")) {
        const [along, across] = step.direction === "beside" ? widthFirst : heightFirst;
        const parts = sum(step.from.map((part) => times(part[along], part.count)));
        expect(subtract(parts, times(step.seam, 2 * seamsIn(step)))).toBe(step.unfinished[along]);
        expect(new Set([step.unfinished[across], ...step.from.map((part) => part[across])]).size).toBe(1);
      }
    });
  });

  it("end with the whole back, squared up, in raw size", () => {
    forEachSample((steps, { job }) => {
      expect(steps.at(-1)?.unfinished).toEqual(job.back);
      expect(steps.at(-1)?.squareUp).toEqual(job.back);
    });
  });

  it("take every cell once, and sew every seam once", () => {
    forEachSample((steps, { layout }) => {
      const laid = steps.filter(({ kind }) => kind === "join").flatMap(({ from }) => from);
      const cells = laid.filter((part) => !("step" in part)).reduce((count, part) => count + part.count, 0);
      const made = steps.filter(({ kind }) => kind !== "join").length;
      const alone = layout.kind === "unit" || layout.kind === "slab";
      expect(cells + made).toBe(alone ? made : leafCount(layout));
      const joins = steps
        .filter(({ kind }) => kind === "join")
        .reduce((count, step) => count + seamsIn(step), 0);
      expect(joins).toBe(leafCount(layout) - 1);
    });
  });

  it("make units and slabs first, and join nothing larger than a section before all sections are sewn", () => {
    forEachSample((steps) => {
      const stage = steps.map((step) => {
        if (step.kind !== "join") return 0;
        return Math.max(step.finished.width, step.finished.height) <= sectionAtMost ? 1 : 2;
      });
      if (steps.length > 1) expect(stage).toEqual(stage.toSorted());
    });
  });

  it("leave the big plain parts to the last", () => {
    forEachSample((steps) => {
      // A cell has up to 1 in of allowances, so one a little larger than a section may be either.
      const [surely, perhaps] = [new Set<string>(), new Set<string>()];
      let touched = false;
      for (const step of steps) {
        if (hasBigPlain(step, inches(0), perhaps)) perhaps.add(step.id);
        else expect(touched).toBe(false);
        if (hasBigPlain(step, inches(1), surely)) surely.add(step.id);
        touched ||= surely.has(step.id);
      }
    });
  });

  it("sew runs of about 24 in where more than one part fits", () => {
    forEachSample((steps) => {
      for (const step of steps.filter(({ kind }) => kind === "join")) {
        const [along] = step.direction === "beside" ? widthFirst : heightFirst;
        if (step.finished[along] <= sectionAtMost) continue;
        const sides = step.from.flatMap((part) => Array.from({ length: part.count }, () => part[along]));
        const pairs = sides.slice(1).map((side, index) => side + (sides[index] ?? 0));
        const plain = step.from.some((part) => "cloth" in part && part.role === "plain");
        if (!plain) expect(Math.min(...pairs)).toBeGreaterThan(inches(20));
      }
    });
  });
});

describe("a hand-made back", () => {
  // Two 6 in squares, one above the other, and a strip beside them, between two plain parts; checked by hand.
  const insert = joined("beside", inches(1, 4), [
    joined("below", inches(1, 4), [square(6), square(6)]),
    piece("strip-1", 2, 12),
  ]);
  const layout = joined("beside", inches(1, 4), [cloth(30, 12), insert, cloth(40, 12)]);
  const job = { seam: inches(1, 4), pieces: [], top: null };
  const pieces = sampleLayout(1, { width: 8, height: 8, cell: 8, fabrics: [plainCloth] }).job.pieces;
  const sized = (id: string, width: number, height: number) => ({
    ...(pieces[0] ?? fail()),
    id,
    kind: "square" as const,
    width: toCutInches(width),
    height: toCutInches(height),
  });
  const heap = [sized("square-1", 6.5, 6.5), sized("strip-1", 2.5, 12.5)];
  const steps = stepsFor(layout, { ...job, pieces: heap });

  it("is sewn from the squares outward, plain last", () => {
    expect(steps.map(({ id, from }) => [id, from.map(nameOf)])).toEqual([
      ["1", ["square-1 × 2"]],
      ["2", ["unit 1", "strip-1"]],
      ["3", ["plain", "unit 2", "plain"]],
    ]);
  });

  it("gives cut sizes as laid and sizes before and after it is sewn in", () => {
    expect(steps[0]).toMatchObject({
      direction: "below",
      from: [{ piece: "square-1", count: 2, width: inches(13, 2), height: inches(13, 2) }],
      unfinished: { width: inches(13, 2), height: inches(25, 2) },
      finished: { width: inches(6), height: inches(12) },
    });
    expect(steps[1]?.unfinished).toEqual({ width: inches(17, 2), height: inches(25, 2) });
    expect(steps[2]?.unfinished).toEqual({ width: inches(157, 2), height: inches(25, 2) });
  });

  it("squares up what has two seams, not the first pair", () => {
    expect(steps.map(({ squareUp }) => squareUp !== undefined)).toEqual([false, true, true]);
  });

  it("presses open where seams meet, and a plain pair to one side", () => {
    expect(steps.map(({ press }) => press)).toEqual(["to-one-side", "open", "open"]);
    const byHand = stepsFor(layout, {
      ...job,
      pieces: heap,
      top: { ...size(60, 12), method: "hand", extra: inches(2) },
    });
    expect(new Set(byHand.map(({ press }) => press))).toEqual(new Set(["to-one-side"]));
  });

  it("of a single plain cloth is one step: cut it", () => {
    const [only, ...none] = stepsFor(cloth(40, 40), job);
    expect(none).toEqual([]);
    expect(only).toMatchObject({
      from: [{ cloth: "plain", width: inches(81, 2) }],
      squareUp: { width: inches(81, 2) },
    });
    expect(reassemble(only ? [only] : [])).toEqual(cloth(40, 40));
  });
});

describe("a part that is left long", () => {
  const pieces = (count: number) =>
    joined(
      "beside",
      inches(1, 4),
      Array.from({ length: count }, () => square(6)),
    );
  const inch = inches(1);
  const job = { seam: inches(1, 4), pieces: heapOfSquares(), top: null };

  it("is laid so, and trimmed with what it was joined to", () => {
    const layout = joined("below", inches(1, 4), [
      pieces(4),
      { ...cloth(24, 12), leftLong: { width: inch } },
    ]);
    const steps = stepsFor(layout, job);
    expect(steps.at(-1)).toMatchObject({
      from: [{ width: inches(49, 2) }, { width: inches(49, 2), leftLong: { width: inch } }],
      squareUp: { width: inches(49, 2) },
    });
    expect(steps.every(({ leftLong }) => leftLong === undefined)).toBe(true);
    expect(reassemble(steps)).toEqual(layout);
  });

  it("at the end of a row makes the row long, until that is joined", () => {
    const row = joined("beside", inches(1, 4), [
      square(6),
      square(6),
      { ...cloth(12, 6), leftLong: { width: inch } },
    ]);
    const layout = joined("below", inches(1, 4), [row, pieces(4)]);
    const steps = stepsFor(layout, job);
    expect(steps.find(({ from }) => from.some((part) => "cloth" in part))).toMatchObject({
      unfinished: { width: inches(49, 2) },
      leftLong: { width: inch },
      squareUp: { width: inches(51, 2) },
    });
    expect(steps.at(-1)?.from[0]).toMatchObject({ step: expect.any(String), leftLong: { width: inch } });
    expect(steps.at(-1)?.squareUp).toMatchObject({ width: inches(49, 2) });
    expect(reassemble(steps)).toEqual(layout);
  });

  it("within a row is trimmed before the row is closed", () => {
    const row = joined("beside", inches(1, 4), [
      square(6),
      { ...cloth(12, 6), leftLong: { width: inch } },
      square(6),
    ]);
    const layout = joined("below", inches(1, 4), [row, pieces(4)]);
    const steps = stepsFor(layout, job);
    const [closing] = steps.filter((step) => fittedIn(step).length > 0);
    expect(closing && fittedIn(closing)).toMatchObject([{ cloth: "plain", width: inches(25, 2) }]);
    expect(closing).toMatchObject({ unfinished: { width: inches(49, 2) } });
    expect(closing?.leftLong).toBeUndefined();
    expect(reassemble(steps)).toEqual(layout);
  });

  it("beside a seam between two runs stands over until both are joined", () => {
    const tall = (long: boolean) => ({ ...cloth(8, 24), ...(long ? { leftLong: { height: inch } } : {}) });
    const layout = joined("beside", inches(1, 4), [
      tall(false),
      tower(4),
      tall(true),
      tower(4),
      tower(4),
      tall(true),
    ]);
    const steps = stepsFor(layout, job);
    const runs = steps
      .filter(({ direction, from }) => direction === "beside" && from.length > 1)
      .slice(0, -1);
    expect(runs.length).toBeGreaterThan(1);
    expect(runs.every(({ squareUp }) => squareUp === undefined)).toBe(true);
    expect(runs.map(({ leftLong }) => leftLong)).toContainEqual({ height: inch });
    expect(steps.at(-1)?.squareUp).toMatchObject({ height: inches(49, 2) });
    expect(reassemble(steps)).toEqual(layout);
  });

  it("side by side with others that all are, goes on being long together", () => {
    const long = { leftLong: { width: inch } };
    const pair = joined("below", inches(1, 2), [
      { ...cloth(24, 12), ...long },
      { ...cloth(24, 30), ...long },
    ]);
    const layout = joined("below", inches(1, 4), [pieces(4), pair]);
    const steps = stepsFor(layout, job);
    expect(steps.find(({ seam }) => seam === inches(1, 2))).toMatchObject({ leftLong: { width: inch } });
    expect(steps.at(-1)?.squareUp).toMatchObject({ width: inches(49, 2) });
    expect(reassemble(steps)).toEqual(layout);
  });

  function tower(count: number) {
    return joined(
      "below",
      inches(1, 4),
      Array.from({ length: count }, () => square(6)),
    );
  }

  function heapOfSquares() {
    const [piece] = sampleLayout(1, { width: 8, height: 8, cell: 8, fabrics: [plainCloth] }).job.pieces;
    const side = toCutInches(6.5);
    return [{ ...(piece ?? fail()), id: "square-1", kind: "square" as const, width: side, height: side }];
  }
});

describe("two 42 in lengths with a plain seam of ½ in", () => {
  // Published: two pieces 42 wide joined by a ½ in seam make 83 (Quiltingboard, thread t28279).
  const layout = joined("beside", inches(1, 2), [cloth(41.25, 67), cloth(41.25, 67)]);

  it("give 83 in, as the trade counts", () => {
    const [step] = stepsFor(layout, { seam: inches(1, 4), pieces: [], top: null });
    expect(step?.from).toMatchObject([{ count: 2, width: inches(42) }]);
    expect(step?.unfinished).toEqual({ width: inches(83), height: inches(135, 2) });
    expect(step?.press).toBe("open");
  });
});

describe("re-assembly refuses", () => {
  const { layout, job } = sampleLayout(7, { width: 40, height: 40, cell: 8, fabrics: [plainCloth] });
  const steps = stepsFor(layout, job);

  it("a step that is used before it is made", () => {
    expect(() => reassemble(steps.toReversed())).toThrow();
  });

  it("a unit that is used twice", () => {
    const used = steps.flatMap(({ from }) => from).find((part) => "step" in part) ?? fail();
    expect(() => reassemble(steps.map((step) => ({ ...step, from: [...step.from, used] })))).toThrow();
  });

  it("a step that is left out", () => {
    expect(() => reassemble(steps.slice(1))).toThrow();
    expect(() => reassemble([])).toThrow();
  });

  it("a part of another size", () => {
    const wider = steps.map((step) =>
      step === steps.at(-1)
        ? { ...step, from: step.from.map((part) => ({ ...part, width: toCutInches(part.width / 8128 + 1) })) }
        : step,
    );
    expect(() => reassemble(wider)).toThrow();
  });
});

const widthFirst = ["width", "height"] as const;
const heightFirst = ["height", "width"] as const;

function leafCount(node: LayoutNode): number {
  return node.kind === "join" ? node.parts.reduce((count, part) => count + leafCount(part), 0) : 1;
}

function hasBigPlain(step: Step, over: Length, known: ReadonlySet<string>): boolean {
  return step.from.some((part) => {
    if ("step" in part) return known.has(part.step);
    if (!("cloth" in part) || part.role !== "plain" || step.kind !== "join") return false;
    return Math.max(part.width, part.height) > sectionAtMost + over;
  });
}

function nameOf(part: StepPart): string {
  const name = "step" in part ? `unit ${part.step}` : "piece" in part ? part.piece : part.cloth;
  return part.count > 1 ? `${name} × ${part.count}` : name;
}

function joined(direction: JoinNode["direction"], seam: Length, parts: LayoutNode[]): JoinNode {
  const widths = parts.map(({ width }) => width);
  const heights = parts.map(({ height }) => height);
  const width = direction === "beside" ? sum(widths) : (widths[0] ?? fail());
  const height = direction === "below" ? sum(heights) : (heights[0] ?? fail());
  return { kind: "join", direction, seam, width, height, parts };
}

function square(side: number): LayoutNode {
  return piece("square-1", side, side);
}

function piece(id: string, width: number, height: number): LayoutNode {
  return { kind: "piece", piece: id, turned: false, ...size(width, height) };
}

function cloth(width: number, height: number): ClothNode {
  return { kind: "cloth", role: "plain", fabric: "plain", source: "buy", ...size(width, height) };
}

function size(width: number, height: number) {
  return { width: finished(length(width * 8128)), height: finished(length(height * 8128)) };
}

function toCutInches(count: number) {
  return cut(length(count * 8128));
}

function fail(): never {
  throw new Error("the test is wrong");
}
