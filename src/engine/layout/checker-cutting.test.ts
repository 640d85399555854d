import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { length, type Size } from "../length/index.ts";
import { canBeCut, type ToCut } from "./checker-cutting.ts";

function size(width: number, height: number): Size {
  return { width: length(width), height: length(height) };
}

function cell(width: number, height: number, mayTurn = true): ToCut {
  return { ...size(width, height), mayTurn };
}

describe("what can be cut by straight cuts right across", () => {
  // Derived: each by hand.
  it.each([
    ["nothing", [], [size(1, 1)], true],
    ["the whole cloth", [cell(4, 6)], [size(4, 6)], true],
    ["the whole cloth, turned", [cell(6, 4)], [size(4, 6)], true],
    ["not turned where the print has an up", [cell(6, 4, false)], [size(4, 6)], false],
    ["two that fill it", [cell(4, 3), cell(3, 4)], [size(4, 6)], true],
    ["one too many for its area", [cell(4, 3), cell(3, 4), cell(1, 1)], [size(4, 6)], false],
    ["area enough, no room", [cell(3, 3), cell(3, 3)], [size(5, 5)], false],
    // Four 1 × 2 round a 1 × 1 in a 3 × 3: it tiles, yet no straight cut parts it. Derived (the pinwheel tiling).
    [
      "a pinwheel that fits and cannot be cut",
      [cell(1, 2, false), cell(2, 1, false), cell(1, 2, false), cell(2, 1, false), cell(1, 1)],
      [size(3, 3)],
      false,
    ],
    ["two cloths, one each", [cell(4, 4), cell(4, 4)], [size(4, 4), size(5, 4)], true],
    ["two cloths, both in the second", [cell(4, 4), cell(4, 4)], [size(3, 3), size(8, 4)], true],
  ] as const)("%s", (_, wanted, cloths, expected) => {
    expect(canBeCut(wanted, cloths)).toBe(expected);
  });

  it("finds a way for up to nine cells wherever a cloth was cut into them", () => {
    fc.assert(
      fc.property(cutCloth(8), ({ cloth, cells }) => {
        expect(canBeCut(cells, [cloth])).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it("agrees with every order tried by brute force, for up to four cells", () => {
    const side = fc.integer({ min: 1, max: 6 });
    const cells = fc.array(fc.tuple(side, side, fc.boolean()), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(cells, side, side, (wanted, width, height) => {
        const asked = wanted.map(([w, h, turn]) => cell(w, h, turn));
        expect(canBeCut(asked, [size(width, height)])).toBe(bruteForce(asked, width, height));
      }),
      { numRuns: 500 },
    );
  });

  it("finds a way for many cells with a tenth of the cloth to spare", () => {
    fc.assert(
      fc.property(cutCloth(40), ({ cloth, cells }) => {
        const roomier = size(cloth.width, Math.ceil(cloth.height * 1.25));
        expect(canBeCut(cells, [roomier])).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

/** A cloth cut at random into `cuts` + 1 cells at most: whatever comes of it can be cut from it. */
function cutCloth(cuts: number): fc.Arbitrary<{ cloth: Size; cells: ToCut[] }> {
  const share = fc.integer({ min: 20, max: 80 });
  const cut = fc.record({ which: fc.nat(), across: fc.boolean(), share });
  return fc.array(cut, { minLength: cuts / 2, maxLength: cuts }).map((all) => {
    const cloth = size(4200, 3000);
    let cells: { width: number; height: number }[] = [cloth];
    for (const { which, across, share: percent } of all) {
      const at = which % cells.length;
      const whole = cells[at] ?? cloth;
      const side = across ? "height" : "width";
      const first = Math.floor((whole[side] * percent) / 100);
      if (first < 100 || whole[side] - first < 100) continue;
      cells = cells.toSpliced(at, 1, { ...whole, [side]: first }, { ...whole, [side]: whole[side] - first });
    }
    return { cloth, cells: cells.map(({ width, height }, n) => cell(width, height, n % 2 === 0)) };
  });
}

/** Each cell alone if it fits, else every cut at every whole place with every way to share the cells out. */
function bruteForce(wanted: readonly ToCut[], width: number, height: number): boolean {
  const [only] = wanted;
  if (only === undefined) return true;
  if (wanted.length === 1) {
    const upright = only.width <= width && only.height <= height;
    return upright || (only.mayTurn && only.height <= width && only.width <= height);
  }
  return subsets(wanted).some(([some, rest]) => {
    const beside = range(width).some(
      (at) => bruteForce(some, at, height) && bruteForce(rest, width - at, height),
    );
    return (
      beside ||
      range(height).some((at) => bruteForce(some, width, at) && bruteForce(rest, width, height - at))
    );
  });
}

function subsets<T>(items: readonly T[]): [T[], T[]][] {
  return Array.from({ length: 2 ** items.length - 2 }, (_, n) => {
    const isIn = (_: T, at: number) => ((n + 1) & (1 << at)) !== 0;
    return [items.filter(isIn), items.filter((item, at) => !isIn(item, at))];
  });
}

function range(below: number): number[] {
  return Array.from({ length: Math.max(0, below - 1) }, (_, n) => n + 1);
}
