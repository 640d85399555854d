import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../../test/generators/handMadePlan.ts";
import { withRow } from "../../../test/generators/mutations.ts";
import { validInput } from "../../../test/generators/validLayouts.ts";
import { cut, inches, unitsPerInch } from "../length/index.ts";
import { type CheckInput, figuresOf, type LayoutNode, leavesOf } from "./index.ts";

const plan: CheckInput = handMadePlan();
const squareInch = unitsPerInch ** 2;

describe("the figures of the hand-made plan (derived by hand)", () => {
  const figures = figuresOf(plan);
  // Each leg loses 0.8536 in to the seams.
  const triangle = (5.875 - (2 + Math.SQRT2) / 4) ** 2 / 2;

  it("plain: 25 × 20 + 15 × 20 + 3 × 5 sq in in three cells", () => {
    expect(figures.plain / squareInch).toBe(815);
    expect(figures.plainCells).toBe(3);
  });

  it("covered: what shows of the finished area of all leftovers that may show", () => {
    // Block 100, rectangle 80, squares 50, strip 40, sewn triangle 25, unit 25, slab 65.
    const shown = 100 + 80 + 50 + 40 + 25 + 25 + 65;
    // 10 × 10, 8 1/8 × 10 1/8, three of 5 × 5, 2 × 29 1/2, 5 × 5 and six triangles.
    const heap = 100 + 8.125 * 10.125 + 75 + 2 * 29.5 + 25 + 6 * triangle;
    expect(figures.covered).toBeCloseTo(shown / heap, 12);
  });

  it("trim waste: an eighth round the rectangle; the end of the strip goes back to the shelf", () => {
    const waste = 8.625 * 10.625 - 8.5 * 10.5;
    const finishedUsed = 100 + 8.125 * 10.125 + 50 + 2 * 29.5 + 25 + 2 * triangle;
    expect(figures.trimWaste).toBeCloseTo(waste / finishedUsed, 12);
  });

  it("trim waste: an end under 5 in does not go back", () => {
    const shorter = figuresOf(withRow(plan, "strip-1", { height: cut(inches(25)) }));
    const waste = 8.625 * 10.625 - 8.5 * 10.5 + 4 * 2.5;
    const finishedUsed = 100 + 8.125 * 10.125 + 50 + 2 * 24.5 + 25 + 2 * triangle;
    expect(shorter.trimWaste).toBeCloseTo(waste / finishedUsed, 12);
  });

  it("seams: eleven in the joins and one in the unit, as long as they are sewn", () => {
    expect(figures.joins).toBe(1 + 5 + 1 + 1 + 2 + 1 + 1);
    const inJoins = 40.5 + 5 * 10.5 + 5.5 + 13.5 + 2 * 5.5 + 20.5;
    expect(figures.seamLength / unitsPerInch).toBeCloseTo(inJoins + 5.5 * Math.SQRT2, 3);
  });
});

it("agrees with a count that knows nothing of trees, on random layouts", () => {
  fc.assert(
    fc.property(fc.nat(), (seed) => {
      const input = validInput(seed);
      const leaves = leavesOf(input.layout, input);
      const figures = figuresOf(input);
      const plain = leaves.filter(({ node }) => node.kind === "cloth");
      expect(figures.plainCells).toBe(plain.length);
      const inside = { "half-square-triangle": 1, hourglass: 3, pinwheel: 3 };
      const inUnits = leaves.reduce(
        (total, { node }) =>
          total + (node.kind === "unit" ? (inside[node.pattern as keyof typeof inside] ?? 0) : 0),
        0,
      );
      // A tree of n leaves, cut apart one seam at a time, has n − 1 of them.
      expect(figures.joins).toBe(leaves.length - 1 + inUnits);
      expect(figures.trimWaste).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 200 },
  );
});

it("is the same for a plan mirrored, its joins in the other direction", () => {
  fc.assert(
    fc.property(fc.nat(), (seed) => {
      const input = validInput(seed);
      const mirrored = { ...input, layout: onItsSide(input.layout) };
      const { seamLength, joins, plain, plainCells } = figuresOf(input);
      expect(figuresOf(mirrored)).toMatchObject({ seamLength, joins, plain, plainCells });
    }),
    { numRuns: 50 },
  );
});

function onItsSide(node: LayoutNode): LayoutNode {
  const size = { width: node.height, height: node.width };
  if (node.kind !== "join") return { ...node, ...size };
  const direction = node.direction === "beside" ? "below" : "beside";
  return { ...node, ...size, direction, parts: node.parts.map(onItsSide).toReversed() };
}
