import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canBeCut } from "../../../test/laws/guillotine.ts";
import {
  clothLayouts,
  cutSize,
  eighths,
  madeCloth,
  madeJob,
  madeJoin,
  madeLength,
} from "../../../test/made/cloth.ts";
import { type LayoutNode, leavesOf } from "../layout/index.ts";
import { finished, inches, length } from "../length/index.ts";
import { backToShelf, cutsFor, cuttingPlan, sourceCloth } from "./index.ts";

const quarter = inches(1, 4);

describe("the cutting plan", () => {
  test("one section from one length: two cuts, two rests", () => {
    const job = madeJob([madeLength("length-1", 42, 60)]);
    const layout = sourceCloth(madeCloth(30, 40, "moss"), job);
    const [only, ...more] = cuttingPlan(layout, job);
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      source: { piece: "length-1", copy: 1 },
      fabric: "moss",
      cells: [{ path: [], x: 0, y: 0, width: eighths(244), height: eighths(324) }],
    });
    expect(only?.cuts).toHaveLength(2);
    // 42 × 60 less a corner of 30 1/2 × 40 1/2: the larger rest is kept whole.
    expect(only?.remains.map(({ width, height }) => [width, height])).toEqual([
      [eighths(92), eighths(324)],
      [eighths(336), eighths(156)],
    ]);
  });

  test("bought cloth is trued first", () => {
    const [bought] = cuttingPlan(madeCloth(40, 50), madeJob([]));
    expect(bought).toMatchObject({ source: "buy", height: inches(54) });
    expect(bought?.cuts[0]).toEqual({ way: "across", at: inches(1, 2), from: 0, to: inches(42) });
    expect(bought?.cells[0]).toMatchObject({ x: 0, y: inches(1, 2) });
  });

  const pieces = [
    madeLength("length-1", 42, 36),
    madeLength("length-2", 42, 20, { count: 2 }),
    madeLength("length-3", 30, 30, { fabric: "rust", direction: "one-way" }),
  ];

  test("every cell of cloth is cut once, in its cut size, from edge to edge, and no rest overlaps it", () => {
    const job = madeJob(pieces);
    fc.assert(
      fc.property(clothLayouts(["plain", "moss", "rust"]), (layout) => {
        const sourced = sourceCloth(layout, job);
        const plan = cuttingPlan(sourced, job);
        for (const cloth of plan) expect(canBeCut(cloth, [...cloth.cells, ...cloth.remains])).toBe(true);
        const cut = new Map(plan.flatMap(({ cells }) => cells.map((cell) => [cell.path.join(), cell])));
        const leaves = leavesOf(sourced, job);
        expect(plan.flatMap(({ cells }) => cells)).toHaveLength(leaves.length);
        for (const { path, cutWidth, cutHeight, node } of leaves) {
          const cell = cut.get(path.join());
          expect(cell?.turned ? [cell.height, cell.width] : [cell?.width, cell?.height]).toEqual([
            cutWidth,
            cutHeight,
          ]);
          if (node.kind === "cloth" && node.fabric === "rust") expect(cell?.turned).toBe(false);
        }
      }),
    );
  });
});

describe("counting cuts", () => {
  function strip(width: number, height: number, more: object = {}): LayoutNode {
    return {
      kind: "piece",
      piece: "strip-1",
      turned: false,
      width: finished(eighths(width * 8)),
      height: finished(eighths(height * 8)),
      ...more,
    };
  }
  const piece = (width: number, height: number, more: object = {}) =>
    madeLength("strip-1", width, height, { kind: "strip", ...more });

  test("a piece trimmed on one side, on both, on none", () => {
    const trimmed = (width: number, height: number) =>
      cutsFor(strip(10, 10), madeJob([piece(width, height, { kind: "rectangle", keep: "trim" })]));
    expect(trimmed(10.5, 10.5)).toEqual({ cuts: 0, trims: 0 });
    expect(trimmed(10.5, 10.75)).toEqual({ cuts: 0, trims: 1 });
    expect(trimmed(10.75, 10.75)).toEqual({ cuts: 0, trims: 2 });
  });

  test("a strip cut into two: a crosscut each while something is left", () => {
    const layout = madeJoin("beside", quarter, [strip(10, 2, { copy: 1 }), strip(15, 2, { copy: 1 })]);
    // Cut 10 1/2 and 15 1/2: 26 in of the strip.
    expect(cutsFor(layout, madeJob([piece(26, 2.5)]))).toEqual({ cuts: 1, trims: 0 });
    expect(cutsFor(layout, madeJob([piece(40, 2.5)]))).toEqual({ cuts: 2, trims: 0 });
    expect(cutsFor(layout, madeJob([piece(40, 3)]))).toEqual({ cuts: 2, trims: 2 });
  });

  test("without a copy each cell is a strip of its own", () => {
    const layout = madeJoin("beside", quarter, [strip(10, 2), strip(15, 2)]);
    expect(cutsFor(layout, madeJob([piece(15.5, 2.5, { count: 2 })]))).toEqual({ cuts: 1, trims: 0 });
  });

  test("a turned strip is measured along its own longer side", () => {
    const layout = strip(2, 20, { turned: true });
    expect(cutsFor(layout, madeJob([piece(20.5, 2.5)]))).toEqual({ cuts: 0, trims: 0 });
    expect(cutsFor(layout, madeJob([piece(30, 2.5)]))).toEqual({ cuts: 1, trims: 0 });
  });

  test("cuts through cloth count too", () => {
    const job = madeJob([madeLength("length-1", 42, 60)]);
    expect(cutsFor(sourceCloth(madeCloth(30, 40, "moss"), job), job)).toEqual({ cuts: 2, trims: 0 });
    // The untrue end, the width and the far end.
    expect(cutsFor(madeCloth(40, 50), madeJob([]))).toEqual({ cuts: 3, trims: 0 });
  });

  test("squares round blocks on point are cut corner to corner too", () => {
    const onPoint = (sides: number): LayoutNode => ({
      kind: "unit",
      pattern: "on-point",
      width: finished(eighths(80)),
      height: finished(eighths(80)),
      pieces: [],
      cloth: [
        { fabric: "plain", source: "buy", ...cutSize(9.75, 9.75), count: sides },
        { fabric: "plain", source: "buy", ...cutSize(5.125, 5.125), count: 2 },
      ],
    });
    const straight = (sides: number) =>
      cuttingPlan(onPoint(sides), madeJob([])).reduce((sum, { cuts }) => sum + cuts.length, 0);
    // Each side square twice, each corner square once: worked by hand.
    expect(cutsFor(onPoint(1), madeJob([])).cuts - straight(1)).toBe(4);
    expect(cutsFor(onPoint(3), madeJob([])).cuts - straight(3)).toBe(8);
  });

  test("ends of strips and rests of lengths go back to the shelf, bought cloth does not", () => {
    const layout = madeJoin("below", quarter, [strip(10, 2), madeCloth(10, 30, "moss"), madeCloth(10, 30)]);
    const job = madeJob([piece(40, 2.5), madeLength("length-2", 10.5, 40)]);
    expect(backToShelf(sourceCloth(layout, job), job)).toEqual([
      { piece: "strip-1", copy: null, width: eighths(236), height: eighths(20) },
      { piece: "length-2", copy: 1, width: eighths(84), height: length(eighths(320) - eighths(244)) },
    ]);
    expect(backToShelf(strip(10, 2), madeJob([piece(15, 2.5)]))).toEqual([]);
  });
});
