import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { centimetres, finished, inches, length, type Size } from "../length/index.ts";
import { backFor, cutOffEdge, extraFor, layoutSize, squaresFor } from "./index.ts";

function size(width: number, height: number): Size {
  return { width: inches(width * 2, 2), height: inches(height * 2, 2) };
}

describe("the size of a back", () => {
  test.each([
    ["1a Happy Stitches LLC", [40, 60], 4, [48, 68]],
    ["1b mmmquilts", [40, 50], 4, [48, 58]],
    ["1c quiltingjules.com", [60, 60], 4, [68, 68]],
    ["1d American Quilter's Society blog", [65, 75], 3, [71, 81]],
    ["1e maxiemakes.com, 2015", [50, 50], 3, [56, 56]],
    ["1f chocolatecakequiltdesigns, 2013", [60, 75], 2, [64, 79]],
  ] as const)("%s", (_, [width, height], extra, [backWidth, backHeight]) => {
    expect(backFor(size(width, height), inches(extra))).toEqual(size(backWidth, backHeight));
  });

  // Common practice: the most usual ask of each method, editable.
  test.each([
    ["frame", 4, 10],
    ["machine", 3, 7.5],
    ["hand", 2, 5],
  ] as const)("%s asks for %d in or %d cm", (method, inInches, inCentimetres) => {
    expect(extraFor(method, "in")).toBe(inches(inInches));
    expect(extraFor(method, "cm")).toBe(centimetres(inCentimetres));
  });

  test("inside its outer allowances 68 × 88 shows 67½ × 87½", () => {
    expect(layoutSize(size(68, 88), inches(1, 4))).toEqual(size(67.5, 87.5));
  });
});

describe("the cut-off edge", () => {
  test("is the extra on each side", () => {
    const top = { ...size(60, 80), method: "frame", extra: inches(4) } as const;
    expect(cutOffEdge({ top, back: size(68, 88) })).toEqual({ width: inches(4), height: inches(4) });
  });

  test("follows the back she has, not the extra she asked for", () => {
    const top = { ...size(60, 80), method: "frame", extra: inches(4) } as const;
    expect(cutOffEdge({ top, back: size(70, 83) })).toEqual({ width: inches(5), height: inches(3, 2) });
  });

  test("is nothing without a top", () => {
    expect(cutOffEdge({ top: null, back: size(68, 88) })).toEqual({ width: 0, height: 0 });
  });

  test("twice the edge and the top is the back, or a hair more", () => {
    const side = fc.integer({ min: 1, max: 3_000_000 });
    fc.assert(
      fc.property(side, side, (top, more) => {
        const job = {
          top: { width: length(top), height: length(top), method: "hand", extra: length(0) },
          back: { width: length(top + more), height: length(top) },
        } as const;
        const over = 2 * cutOffEdge(job).width - more;
        expect(over === 0 || over === 1).toBe(true);
      }),
    );
  });
});

describe("a back of equal squares", () => {
  test("2m inthedesertquilting, 2015: 65 × 82 of squares that finish 10", () => {
    expect(squaresFor(size(65, 82), finished(inches(10)))).toEqual({ across: 7, down: 9 });
  });

  test("a size that the squares make exactly needs no more", () => {
    expect(squaresFor(size(60, 80), finished(inches(10)))).toEqual({ across: 6, down: 8 });
  });
});
