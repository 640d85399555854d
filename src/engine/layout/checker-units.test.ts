import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../../test/generators/handMadePlan.ts";
import { at, withRow } from "../../../test/generators/mutations.ts";
import { cut, finished, inches, type Length, length, millimetres } from "../length/index.ts";
import {
  type CheckedPiece,
  type CheckInput,
  checkLayout,
  type LayoutProblem,
  type UnitNode,
} from "./index.ts";

type Made = {
  readonly pattern: string;
  readonly kind: "triangle" | "half-square-triangle" | "square";
  readonly count: number;
  readonly cut: Length;
  readonly finished: Length;
  readonly keep?: CheckedPiece["keep"];
  readonly unit?: "cm";
};

/** What the checker says of one unit that is the whole layout; that a size is off the ruler's step is not asked here. */
function said(made: Made): LayoutProblem["kind"][] {
  const seam = made.unit === "cm" ? millimetres(7.5) : inches(1, 4);
  const side = finished(made.finished);
  const layout: UnitNode = {
    kind: "unit",
    pattern: made.pattern,
    pieces: [{ piece: "row", count: made.count }],
    cloth: [],
    width: side,
    height: side,
  };
  const edge = length(side + 2 * seam);
  const input: CheckInput = {
    layout,
    back: { width: edge, height: edge },
    step: made.unit === "cm" ? millimetres(1) : inches(1, 8),
    seam,
    plainSeam: inches(1, 2),
    floor: inches(5, 2),
    fabrics: [],
    buy: [],
    pieces: [
      {
        id: "row",
        kind: made.kind,
        width: cut(made.cut),
        height: cut(made.cut),
        count: made.count,
        fabric: "print",
        keep: made.keep ?? (made.kind === "half-square-triangle" ? "whole" : "trim"),
        use: "yes",
        direction: "none",
      },
    ],
  };
  return checkLayout(input).flatMap(({ kind }) => (kind === "off-step" ? [] : [kind]));
}

const eighths = (count: number) => inches(count, 8);
const right: LayoutProblem["kind"][] = [];
const wrong: LayoutProblem["kind"][] = ["wrong-unit-size"];

describe("a half-square triangle from two triangles", () => {
  const made = (cutLeg: Length, side: Length) =>
    said({ pattern: "half-square-triangle", kind: "triangle", count: 2, cut: cutLeg, finished: side });

  // Published rule: squares of finished + 7/8, cut once; the exact addition is 0.8536 in.
  // North Hampshire Quilters: 3 in from 3 7/8. J. Wickell, About.com: 4 in from 4 7/8.
  it.each([
    [eighths(31), inches(3), right],
    [eighths(39), inches(4), right],
    // North Hampshire Quilters: an oversize start of 4 1/8, trimmed to 3 1/2 unfinished.
    [eighths(33), inches(3), right],
    // Derived: the rule is 0.0214 in over the exact size, so nothing more can come of it.
    [eighths(31), length(inches(3) + 127), right],
    [eighths(31), length(inches(3) + 2 * 127), wrong],
    [eighths(31), eighths(25), wrong],
    // Derived: 6 in legs give 5.146; an eighth for the step and half an inch to trim: not under 4.521.
    [inches(6), eighths(37), right],
    [inches(6), eighths(36), wrong],
  ])("%d cut gives %d finished", (cutLeg, side, expected) => {
    expect(made(cutLeg, side)).toEqual(expected);
  });

  it("is 2.561 cm smaller than its legs in a job with seams of 0.75 cm (derived)", () => {
    const metric = (leg: number, side: number) =>
      said({
        pattern: "half-square-triangle",
        kind: "triangle",
        count: 2,
        cut: millimetres(leg),
        finished: millimetres(side),
        unit: "cm",
      });
    expect(metric(106, 80)).toEqual(right);
    // The remembered 2.5 cm rounds down and comes out too small.
    expect(metric(105, 80)).toEqual(wrong);
  });
});

describe("an hourglass from four triangles, long sides outside", () => {
  // Published rule: a square of finished + 1 1/4, cut twice; its quarters have legs of that / √2.
  // North Hampshire Quilters: 3 in from a 4 1/4 in square.
  const quarterOf = (square: Length) => length(Math.floor(square / Math.SQRT2));
  it.each([
    [eighths(34), inches(3), right],
    [eighths(34), eighths(25), wrong],
    [eighths(58), inches(6), right],
    [eighths(57), inches(6), wrong],
  ])("a square of %d, cut twice, gives %d finished", (square, side, expected) => {
    const cutLeg = quarterOf(square);
    expect(said({ pattern: "hourglass", kind: "triangle", count: 4, cut: cutLeg, finished: side })).toEqual(
      expected,
    );
  });
});

describe("four half-square triangles", () => {
  const four = (pattern: string, cutSide: Length, side: Length, keep?: CheckedPiece["keep"]) =>
    said({
      pattern,
      kind: "half-square-triangle",
      count: 4,
      cut: cutSide,
      finished: side,
      ...(keep ? { keep } : {}),
    });

  it.each(["pinwheel", "broken-dishes", "diamond"])("make a %s of twice their finished size", (pattern) => {
    // J. Wickell, About.com: units of 4 1/2 in make a pinwheel of 8 1/2 in, which finishes at 8 in.
    expect(four(pattern, eighths(36), inches(8))).toEqual(right);
    // Seymour Quilters Guild: finished 2 1/2 in, the pinwheel finishes at 5 in.
    expect(four(pattern, inches(3), inches(5))).toEqual(right);
    expect(four(pattern, inches(3), eighths(41))).toEqual(wrong);
    // Left whole they lose nothing; trimmed, no more than a piece may.
    expect(four(pattern, inches(3), eighths(39))).toEqual(wrong);
    expect(four(pattern, inches(3), eighths(38), "trim")).toEqual(right);
    expect(four(pattern, inches(3), eighths(34), "trim")).toEqual(wrong);
  });

  it("may be sewn from eight triangles first", () => {
    const eight = (side: Length) =>
      said({ pattern: "pinwheel", kind: "triangle", count: 8, cut: eighths(31), finished: side });
    expect(eight(inches(6))).toEqual(right);
    expect(eight(eighths(49))).toEqual(wrong);
  });

  it.each([
    ["three of them", { pattern: "pinwheel", kind: "half-square-triangle", count: 3 }],
    ["squares", { pattern: "pinwheel", kind: "square", count: 4 }],
    ["sewn triangles", { pattern: "hourglass", kind: "half-square-triangle", count: 4 }],
  ] as const)("are not %s", (_, made) => {
    expect(said({ ...made, cut: inches(3), finished: inches(5) })).toEqual(["wrong-unit-parts"]);
  });
});

describe("a square in a square", () => {
  const made = (leg: Length, side: Length, change: Partial<UnitNode> = {}): LayoutProblem["kind"][] => {
    const edge = length(side + 2 * inches(1, 4));
    const row = (id: string, kind: "square" | "triangle", cutSide: Length) => ({
      ...{ id, kind, width: cut(cutSide), height: cut(cutSide), count: 4, fabric: "print" },
      ...({ keep: "trim", use: "yes", direction: "none" } as const),
    });
    const layout: UnitNode = {
      ...{
        kind: "unit",
        pattern: "square-in-square",
        cloth: [],
        width: finished(side),
        height: finished(side),
      },
      pieces: [
        { piece: "centre", count: 1 },
        { piece: "corner", count: 4 },
      ],
      ...change,
    };
    const back = { width: edge, height: edge };
    const pieces = [row("centre", "square", eighths(44)), row("corner", "triangle", leg)];
    const rest = { step: inches(1, 8), seam: inches(1, 4), plainSeam: inches(1, 2), floor: inches(5, 2) };
    return checkLayout({ ...rest, layout, back, pieces, fabrics: [], buy: [] }).map(({ kind }) => kind);
  };

  // Quiltingboard, 12 October 2019: a centre that finishes at 5 in, corners from squares of 4 1/2 cut once. It finishes
  // at 7.07 in, so 7 1/8 on the ruler, with 0.06 in round the points.
  it.each([
    [eighths(36), eighths(57), right],
    // Published with 3 5/8 + 7/8; the exact addition leaves 0.11 in over, so nothing more can come of it.
    [eighths(36), eighths(58), wrong],
    // At 7 in the centre would lose its points.
    [eighths(36), inches(7), wrong],
    [eighths(35), eighths(57), wrong],
    [eighths(42), eighths(59), right],
    // More than half an inch would come off the corners.
    [eighths(42), eighths(57), wrong],
  ])("corners with legs of %d, %d finished", (leg, side, expected) => {
    expect(made(leg, side)).toEqual(expected);
  });

  it("has one centre and four corners", () => {
    const three = [
      { piece: "centre", count: 1 },
      { piece: "corner", count: 3 },
    ];
    expect(made(eighths(36), eighths(57), { pieces: three })).toEqual(["wrong-unit-parts"]);
    expect(made(eighths(36), eighths(57), { pieces: [{ piece: "corner", count: 4 }] })).toEqual([
      "wrong-unit-parts",
    ]);
  });
});

describe("the parts of a unit", () => {
  const unit = [0, 5, 0, 0];
  const plan: CheckInput = handMadePlan();
  const kinds = (input: CheckInput) => checkLayout(input).map(({ kind }) => kind);
  const changed = (change: Partial<UnitNode>) =>
    kinds(at(plan, unit, (node) => (node.kind === "unit" ? { ...node, ...change } : node)));

  it("are turned by quarters, one turn each", () => {
    expect(changed({ rotations: [2] })).toEqual([]);
    expect(changed({ rotations: [0, 1] })).toEqual(["wrong-unit-parts"]);
  });

  it("are pieces of the table that she does not keep back", () => {
    expect(changed({ pieces: [{ piece: "triangle-9", count: 2 }] })).toContain("unknown-piece");
    expect(kinds(withRow(plan, "triangle-1", { use: "keep-back" }))).toContain("not-to-be-used");
  });

  it("have equal legs", () => {
    expect(kinds(withRow(plan, "triangle-1", { height: cut(inches(6)) }))).toContain("wrong-unit-parts");
  });

  it("keep their direction: a pinwheel would turn a one-way print", () => {
    const oneWay = withRow(plan, "triangle-1", { direction: "one-way", count: 8 });
    expect(kinds({ ...oneWay, unused: [] })).not.toContain("one-way-turned");
    const turned = at(oneWay, unit, (node) =>
      node.kind === "unit"
        ? { ...node, pattern: "pinwheel", pieces: [{ piece: "triangle-1", count: 8 }] }
        : node,
    );
    expect(kinds(turned)).toContain("one-way-turned");
  });
});
