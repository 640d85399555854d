import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canBeCut } from "../../../../test/laws/guillotine.ts";
import { inches, type Length, length } from "../../length/index.ts";
import { type CutCell, cutFrom, type Sheet, type SheetPlace } from "../index.ts";
import { cutFew } from "./few.ts";

function sheet(id: string, width: number, height: number, more: Partial<Sheet> = {}): Sheet {
  return { id, copy: 1, width: inches(width * 4, 4), height: inches(height * 4, 4), ...more };
}

function cells(...sizes: readonly (readonly [number, number])[]): readonly CutCell[] {
  return sizes.map(([width, height], key) => ({
    key,
    width: inches(width * 4, 4),
    height: inches(height * 4, 4),
  }));
}

const side = fc.integer({ min: 1, max: 40 });
const sheetsGiven = fc
  .array(fc.record({ width: side, height: side, directed: fc.boolean() }), { minLength: 1, maxLength: 5 })
  .map((made) =>
    made.map(({ width, height, directed }, i) => sheet(`length-${i}`, width, height, { directed })),
  );
const cellsGiven = fc
  .array(fc.record({ width: side, height: side, directed: fc.boolean() }), { maxLength: 30 })
  .map((made): readonly CutCell[] =>
    made.map(({ width, height, directed }, key) => ({
      key,
      width: inches(width),
      height: inches(height),
      directed,
    })),
  );

function placed(found: readonly (SheetPlace | null)[]): readonly SheetPlace[] {
  return found.filter((place) => place !== null);
}

function area(of: readonly { readonly width: Length; readonly height: Length }[]): number {
  return of.reduce((total, { width, height }) => total + width * height, 0);
}

describe("cutting cells from lengths", () => {
  test("every sheet can be cut from edge to edge, sizes and directions kept", () => {
    fc.assert(
      fc.property(sheetsGiven, cellsGiven, (sheets, wanted) => {
        const found = cutFrom(sheets, wanted);
        expect(found).toHaveLength(wanted.length);
        for (const one of sheets) {
          expect(
            canBeCut(
              one,
              placed(found).filter(({ id }) => id === one.id),
            ),
          ).toBe(true);
        }
        for (const [index, cell] of wanted.entries()) {
          const place = found[index];
          if (!place) continue;
          const [width, height] = place.turned ? [cell.height, cell.width] : [cell.width, cell.height];
          expect(place).toMatchObject({ key: cell.key, width, height });
          const from = sheets.find(({ id }) => id === place.id);
          if (cell.directed || from?.directed) expect(place.turned).toBe(false);
        }
      }),
    );
  });

  test("what is left out fits nowhere alone on an empty sheet", () => {
    fc.assert(
      fc.property(sheetsGiven, cellsGiven, (sheets, wanted) => {
        const found = placed(cutFrom(sheets, wanted));
        const missing = wanted.filter(({ key }) => !found.some((place) => place.key === key));
        const empty = sheets.filter(({ id }) => !found.some((place) => place.id === id));
        for (const cell of missing) expect(cutFrom(empty, [cell])).toEqual([null]);
      }),
    );
  });

  test("the same again, and the same from each sheet alone", () => {
    fc.assert(
      fc.property(sheetsGiven, cellsGiven, (sheets, wanted) => {
        const found = cutFrom(sheets, wanted);
        expect(cutFrom(sheets, wanted)).toEqual(found);
        for (const one of sheets) {
          const its = wanted.filter((_, index) => found[index]?.id === one.id);
          expect(cutFrom([one], its)).not.toContain(null);
        }
      }),
    );
  });

  test("up to eight cells, whatever a sheet was cut into can be cut from it again", () => {
    const cuts = fc.array(
      fc.record({ part: fc.nat(1000), share: fc.integer({ min: 15, max: 85 }), across: fc.boolean() }),
      {
        maxLength: 7,
      },
    );
    fc.assert(
      fc.property(cuts, (made) => {
        let parts = [{ width: 42 * 800, height: 61 * 800 }];
        for (const { part, share, across } of made) {
          const [chosen = { width: 0, height: 0 }] = parts.splice(part % parts.length, 1);
          const { width, height } = chosen;
          const [first, second] = across
            ? [Math.max(1, Math.floor((height * share) / 100)), 0]
            : [0, Math.max(1, Math.floor((width * share) / 100))];
          parts = across
            ? [...parts, { width, height: first }, { width, height: height - first }]
            : [...parts, { width: second, height }, { width: width - second, height }];
        }
        const wanted = parts
          .filter(({ width, height }) => width > 0 && height > 0)
          .map(({ width, height }, key) => ({ key, width: length(width), height: length(height) }));
        const whole = { id: "length-1", copy: 1, width: length(42 * 800), height: length(61 * 800) };
        expect(cutFrom([whole], wanted)).not.toContain(null);
      }),
    );
  });

  test("a few cells are cut as well as any packing could", () => {
    fc.assert(
      fc.property(sheetsGiven, fc.array(fc.tuple(side, side), { maxLength: 6 }), (sheets, sizes) => {
        const wanted = cells(...sizes);
        const spots = cutFew(sheets, wanted);
        const exact = area(wanted.filter((_, index) => spots[index] !== null));
        expect(area(placed(cutFrom(sheets, wanted)))).toBe(exact);
      }),
    );
  });
});

describe("cutting by hand", () => {
  test("homemadecity.com: four pieces 37 × 42 from 150 × 42", () => {
    const found = cutFrom([sheet("length-1", 150, 42)], cells([37, 42], [37, 42], [37, 42], [37, 42]));
    expect(placed(found)).toHaveLength(4);
    expect(cutFrom([sheet("length-1", 147, 42)], cells([37, 42], [37, 42], [37, 42], [37, 42]))).toContain(
      null,
    );
  });

  // Derived: these five fill 101 × 101 in the manner of a wheel, and then no cut goes from edge to edge.
  test("a wheel cannot be cut", () => {
    const wheel = cells([61, 29], [40, 57], [70, 44], [31, 72], [30, 28]);
    expect(area(wheel)).toBe(area([sheet("length-1", 101, 101)]));
    expect(placed(cutFrom([sheet("length-1", 101, 101)], wheel))).toHaveLength(4);
    expect(cutFrom([sheet("length-1", 101, 131)], wheel)).not.toContain(null);
  });

  test("a print with an up is not turned", () => {
    const tall = cells([10, 20]);
    expect(cutFrom([sheet("length-1", 20, 10)], tall)[0]).toMatchObject({ turned: true });
    expect(cutFrom([sheet("length-1", 20, 10, { directed: true })], tall)).toEqual([null]);
    expect(
      cutFrom(
        [sheet("length-1", 20, 10)],
        tall.map((cell) => ({ ...cell, directed: true })),
      ),
    ).toEqual([null]);
  });

  test("large cells come before small ones where not all can be cut", () => {
    const found = cutFrom([sheet("length-1", 20, 20)], cells([5, 5], [20, 19], [6, 6]));
    expect(found.map((place) => place !== null)).toEqual([false, true, false]);
  });

  test("it stays on as few lengths as it can, the first ones first", () => {
    const found = cutFrom(
      [sheet("length-1", 42, 20), sheet("length-2", 42, 60), sheet("length-3", 42, 20)],
      cells([20, 18], [20, 18]),
    );
    expect(found.map((place) => place?.id)).toEqual(["length-1", "length-1"]);
  });

  test("no sheets, no cells", () => {
    expect(cutFrom([], cells([1, 1]))).toEqual([null]);
    expect(cutFrom([sheet("length-1", 1, 1)], [])).toEqual([]);
  });
});
