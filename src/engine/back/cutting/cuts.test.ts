import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canBeCut } from "../../../../test/laws/guillotine.ts";
import { inches } from "../../length/index.ts";
import { type CutPlace, cutFrom, cutsOf, isKept } from "../index.ts";

const cloth = { id: "length-1", copy: 1, width: inches(42), height: inches(60) };

function place(x: number, y: number, width: number, height: number): CutPlace {
  return {
    key: 0,
    x: inches(x),
    y: inches(y),
    width: inches(width),
    height: inches(height),
    turned: false,
  };
}

describe("cutting out", () => {
  test("a cell in the corner takes two cuts; the larger rest stays whole", () => {
    const { cuts, remains } = cutsOf(cloth, [place(0, 0, 30, 20)]);
    expect(cuts).toEqual([
      { way: "across", at: inches(20), from: inches(0), to: inches(42) },
      { way: "down", at: inches(30), from: inches(0), to: inches(20) },
    ]);
    expect(remains).toEqual([
      { x: inches(30), y: inches(0), width: inches(12), height: inches(20) },
      { x: inches(0), y: inches(20), width: inches(42), height: inches(40) },
    ]);
  });

  test("a cell as large as the cloth takes none, an untouched cloth is kept whole", () => {
    expect(cutsOf(cloth, [place(0, 0, 42, 60)])).toEqual({ cuts: [], remains: [] });
    expect(cutsOf(cloth, [])).toMatchObject({
      cuts: [],
      remains: [{ width: inches(42), height: inches(60) }],
    });
  });

  test("places that no cut can reach are our own mistake", () => {
    const wheel = [
      place(0, 0, 28, 20),
      place(28, 0, 14, 40),
      place(14, 40, 28, 20),
      place(0, 20, 14, 40),
      place(14, 20, 14, 20),
    ];
    expect(() => cutsOf(cloth, wheel)).toThrow("edge to edge");
  });

  test("cells and what is kept never overlap, and together can be cut", () => {
    const side = fc.integer({ min: 1, max: 40 });
    fc.assert(
      fc.property(fc.array(fc.tuple(side, side), { maxLength: 15 }), (sizes) => {
        const wanted = sizes.map(([width, height], key) => ({
          key,
          width: inches(width),
          height: inches(height),
        }));
        const places = cutFrom([cloth], wanted).filter((found) => found !== null);
        const { cuts, remains } = cutsOf(cloth, places);
        expect(canBeCut(cloth, [...places, ...remains])).toBe(true);
        expect(remains.every(({ width, height }) => isKept(width, height))).toBe(true);
        const area = [...places, ...remains].reduce((total, { width, height }) => total + width * height, 0);
        if (cuts.length === 0) expect([0, cloth.width * cloth.height]).toContain(area);
        // Each cut makes one part more: no more parts than cuts and one.
        expect(places.length + remains.length).toBeLessThanOrEqual(cuts.length + 1);
      }),
    );
  });
});

describe("what goes back to the shelf", () => {
  // The house's rule: at least 2 by 5 in.
  test.each([
    [2, 5, true],
    [5, 2, true],
    [1.75, 60, false],
    [4.75, 4.75, false],
  ])("%d × %d: %s", (width, height, kept) => {
    expect(isKept(inches(width * 4, 4), inches(height * 4, 4))).toBe(kept);
  });
});
