import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canBeCut } from "../../../../test/laws/guillotine.ts";
import { inches, type Length, roundUpTo } from "../../length/index.ts";
import { type CutCell, eighthYard, stripPack } from "../index.ts";

const usable = inches(42);
const exactly = (needed: Length) => needed;
const toTheEighth = (needed: Length) => roundUpTo(needed, eighthYard);

function cells(...sizes: readonly (readonly [number, number])[]): readonly CutCell[] {
  return sizes.map(([width, height], key) => ({
    key,
    width: inches(width * 4, 4),
    height: inches(height * 4, 4),
  }));
}

const cellsGiven = fc
  .array(
    fc.record({
      short: fc.integer({ min: 1, max: 84 }),
      long: fc.integer({ min: 1, max: 180 }),
      turned: fc.boolean(),
    }),
    { maxLength: 25 },
  )
  .map((made): readonly CutCell[] =>
    made.map(({ short, long, turned }, key) => {
      const [narrow, wide] = [inches(Math.min(short, long), 2), inches(Math.max(short, long), 2)];
      return turned ? { key, width: wide, height: narrow } : { key, width: narrow, height: wide };
    }),
  );

describe("laying cells out on cloth to buy", () => {
  test("the cloth covers them all, cut from edge to edge, and never more than one below the other", () => {
    fc.assert(
      fc.property(cellsGiven, fc.constantFrom(exactly, toTheEighth), (wanted, sold) => {
        const bought = stripPack(wanted, usable, sold);
        expect(canBeCut({ width: usable, height: bought.length }, bought.places)).toBe(true);
        expect(bought.places).toHaveLength(wanted.length);
        for (const [index, cell] of wanted.entries()) {
          const place = bought.places[index];
          const size = place?.turned ? [place.height, place.width] : [place?.width, place?.height];
          expect(size).toEqual([cell.width, cell.height]);
        }
        const area = wanted.reduce((total, { width, height }) => total + width * height, 0);
        const stacked = wanted.reduce((total, { width, height }) => total + Math.max(width, height), 0);
        expect(bought.length * usable).toBeGreaterThanOrEqual(area);
        expect(bought.length).toBeLessThanOrEqual(stacked);
      }),
    );
  });

  // Derived, by hand.
  test.each([
    ["one plain section lies along the cloth", [[67.5, 30]], 67.5],
    [
      "two that fit side by side",
      [
        [20, 60],
        [22, 60],
      ],
      60,
    ],
    [
      "two that do not",
      [
        [21, 60],
        [21.25, 60],
      ],
      120,
    ],
    ["turned when that is shorter", [[40, 10]], 10],
    [
      "spacers beside a section",
      [
        [30, 68],
        [3, 68],
        [3, 68],
        [3, 68],
        [3, 68],
      ],
      68,
    ],
    [
      "two sections and strips in the rest of each",
      [
        [30, 70],
        [28, 40],
        [12, 70],
        [14, 40],
      ],
      110,
    ],
    ["nothing", [], 0],
  ] as const)("%s", (_, sizes, expected) => {
    expect(stripPack(cells(...sizes), usable).length).toBe(inches(expected * 2, 2));
  });

  test("lengthwise grain is kept where the shop cuts the same length anyway", () => {
    const [along] = stripPack(cells([40, 38]), usable, toTheEighth).places;
    expect(along).toMatchObject({ width: inches(38), height: inches(40), turned: true });
    // 38 in are 1 1/8 yd and 40 in too; 10 in and 40 in are not the same purchase.
    const [across] = stripPack(cells([40, 10]), usable, toTheEighth).places;
    expect(across).toMatchObject({ width: inches(40), turned: false });
  });

  test("a cell wider than the cloth is our own mistake", () => {
    expect(() => stripPack(cells([43, 60]), usable)).toThrow("at least as wide");
  });
});
