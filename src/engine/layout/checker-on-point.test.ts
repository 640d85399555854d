import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Cut,
  cut,
  finished,
  inches,
  type Length,
  length,
  millimetres,
  toFinished,
} from "../length/index.ts";
import { settingSquaresFor } from "../units/index.ts";
import { type CheckedPiece, type CheckInput, checkLayout, figuresOf, type UnitNode } from "./index.ts";

type Line = {
  /** The block's side as it is cut. */
  readonly block: Cut;
  readonly count: number;
  readonly side: Cut;
  readonly corner: Cut;
  /** Less than the blocks' points need, in units. */
  readonly shorter?: number;
  readonly shallower?: number;
  readonly seam?: Length;
  readonly row?: Partial<CheckedPiece>;
  readonly unit?: Partial<UnitNode>;
};

const quarter = inches(1, 4);

/** A line down that just holds its blocks' points, as a back of its own. */
function planOf({
  block,
  count,
  side,
  corner,
  shorter = 0,
  shallower = 0,
  seam = quarter,
  ...more
}: Line): CheckInput {
  const diagonal = (block - 2 * seam) * Math.SQRT2;
  const square = (size: Cut, times: number) =>
    ({ fabric: "plain", source: "buy", width: size, height: size, count: times }) as const;
  const layout: UnitNode = {
    kind: "unit",
    pattern: "on-point",
    pieces: [{ piece: "row", count }],
    cloth: [square(side, Math.ceil((count - 1) / 2)), square(corner, 2)],
    width: finished(length(Math.ceil(diagonal) - shallower)),
    height: finished(length(Math.ceil(count * diagonal) - shorter)),
    ...more.unit,
  };
  const row = { id: "row", kind: "block", width: block, height: block, count, fabric: "print" } as const;
  return {
    layout,
    back: { width: length(layout.width + 2 * seam), height: length(layout.height + 2 * seam) },
    step: inches(1, 8),
    seam,
    plainSeam: inches(1, 2),
    floor: inches(5, 2),
    fabrics: [{ id: "plain" }],
    buy: [{ use: "plain", fabric: "plain", width: inches(42), length: inches(200) }],
    pieces: [{ ...row, keep: "whole", use: "yes", direction: "none", ...more.row } as CheckedPiece],
  };
}

function said(line: Line): string[] {
  return checkLayout(planOf(line)).flatMap(({ kind }) => (kind === "off-step" ? [] : [kind]));
}

const eighths = (count: number) => cut(inches(count, 8));
const wrong = ["wrong-unit-size"];

describe("blocks on point in a line", () => {
  // A published chart (finished block, side square cut twice, corner square cut once) in eighths: 6 in 9 3/4 and
  // 5 1/8, 9 in 14 and 7 1/4, 12 in 18 1/4 and 9 3/8. An eighth less of either does not reach (derived).
  it.each([
    [6, 78, 41],
    [9, 112, 58],
    [12, 146, 75],
  ])("of %d in: side squares of %d eighths, corners of %d", (size, side, corner) => {
    const line = { block: eighths(size * 8 + 4), count: 4, side: eighths(side), corner: eighths(corner) };
    expect(said(line)).toEqual([]);
    expect(said({ ...line, side: eighths(side - 1) })).toEqual(wrong);
    expect(said({ ...line, corner: eighths(corner - 1) })).toEqual(wrong);
  });

  const nine: Line = { block: eighths(76), count: 5, side: eighths(112), corner: eighths(58) };

  it("keep their points", () => {
    expect(said(nine)).toEqual([]);
    expect(said({ ...nine, shorter: 1 })).toEqual(wrong);
    expect(said({ ...nine, shallower: 1 })).toEqual(wrong);
  });

  it("are square, alike, and between the right squares", () => {
    const parts = ["wrong-unit-parts"];
    expect(said({ ...nine, row: { height: eighths(75) } as Partial<CheckedPiece> })).toEqual(parts);
    expect(said({ ...nine, row: { kind: "triangle" } as Partial<CheckedPiece> })).toEqual(parts);
    const { cloth } = planOf(nine).layout as UnitNode;
    expect(said({ ...nine, unit: { cloth: cloth.slice(1) } })).toEqual(parts);
    expect(
      said({ ...nine, unit: { cloth: cloth.map((one) => ({ ...one, count: 2, width: eighths(113) })) } }),
    ).toEqual(parts);
    expect(said({ ...nine, unit: { pieces: [] } })).toContain("wrong-unit-parts");
  });

  it("are no prints with an up, and none that she keeps back", () => {
    expect(said({ ...nine, row: { direction: "one-way" } })).toEqual(["one-way-turned"]);
    expect(said({ ...nine, row: { use: "keep-back" } })).toContain("not-to-be-used");
  });

  // Derived: beside 5 blocks lie 8 side triangles and 4 corners, so 17 parts and 16 seams. 12 of them run along a block,
  // 4 from edge to edge aslant.
  it("are sewn with three seams each and one more", () => {
    const { joins, seamLength } = figuresOf(planOf(nine));
    expect(joins).toBe(16);
    const deep = Math.ceil(9 * 8128 * Math.SQRT2) + 2 * quarter;
    expect(seamLength).toBe(12 * nine.block + 4 * Math.round(deep * Math.SQRT2));
  });

  it("fit the squares that are reckoned for them, and no smaller ones", () => {
    const lines = fc.record({
      units: fc.integer({ min: 3 * 8128, max: 16 * 8128 }),
      count: fc.integer({ min: 2, max: 9 }),
      seam: fc.constantFrom(quarter, millimetres(7.5)),
    });
    fc.assert(
      fc.property(lines, ({ units, count, seam }) => {
        const block = cut(length(units));
        const diagonal = (block - 2 * seam) * Math.SQRT2;
        const size = {
          width: finished(length(Math.ceil(diagonal))),
          height: finished(length(Math.ceil(count * diagonal))),
        };
        const squares = settingSquaresFor({ block: toFinished(block, seam), count, size }, seam);
        const fewer = (side: Cut) => cut(length(side - 1));
        const line = { block, count, seam, ...squares };
        expect(said(line)).toEqual([]);
        expect(said({ ...line, side: fewer(squares.side) })).toEqual(wrong);
        expect(said({ ...line, corner: fewer(squares.corner) })).toEqual(wrong);
      }),
      { numRuns: 100 },
    );
  });
});
