import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canBeCut } from "../../../test/laws/guillotine.ts";
import { clothLayouts, madeCloth, madeJob, madeJoin, madeLength } from "../../../test/made/cloth.ts";
import { leavesOf } from "../layout/index.ts";
import { centimetres, inches } from "../length/index.ts";
import { buyRows, cuttingPlan, sourceCloth, untrueEnd } from "./index.ts";

describe("plain cloth to buy", () => {
  // Derived, by hand: cut size, half an inch for the untrue end, up to the next 1/8 yd (4 1/2 in).
  test.each([
    // 50 1/2 + 1/2 = 51 in → 1 1/2 yd
    [50, 54],
    // 53 1/2 + 1/2 = 54 in → 1 1/2 yd exactly
    [53, 54],
    [53.125, 58.5],
  ])("a section %d in long is %d in of cloth", (height, expected) => {
    const layout = madeCloth(40, height);
    expect(buyRows(layout, madeJob([]))).toEqual([
      { use: "plain", fabric: "plain", width: inches(42), length: inches(expected * 2, 2) },
    ]);
  });

  test("in a metric job cloth is bought to 10 cm", () => {
    const [row] = buyRows(madeCloth(40, 50), madeJob([], { unit: "cm" }));
    expect(row?.length).toBe(centimetres(130));
  });

  test("nothing to buy, no row", () => {
    const job = madeJob([madeLength("length-1", 42, 60)]);
    expect(buyRows(sourceCloth(madeCloth(40, 50, "moss"), job), job)).toEqual([]);
  });

  test("a cell wider than the cloth is our own mistake", () => {
    const wide = madeCloth(41.75, 50);
    expect(() => buyRows(wide, madeJob([]))).toThrow("at least as wide");
  });

  test("one row for all cells of one fabric, side by side where they fit", () => {
    const seam = inches(1, 2);
    const layout = madeJoin("beside", seam, [madeCloth(20, 60), madeCloth(19.75, 60)]);
    // Cut 20 3/4 and 20 1/2 wide: together 41 1/4.
    expect(buyRows(layout, madeJob([]))).toMatchObject([{ length: inches(63) }]);
  });

  test("what is bought is enough: an independent law finds all cells on it", () => {
    const job = madeJob([madeLength("length-1", 42, 36)]);
    fc.assert(
      fc.property(clothLayouts(["plain", "moss"]), (layout) => {
        const sourced = sourceCloth(layout, job);
        const wanted = leavesOf(sourced, job).filter(
          ({ node }) => node.kind === "cloth" && node.source === "buy",
        );
        const rows = buyRows(sourced, job);
        expect(rows).toHaveLength(wanted.length === 0 ? 0 : 1);
        const [row] = rows;
        const bought = cuttingPlan(sourced, job).find(({ source }) => source === "buy");
        expect(bought?.height).toBe(row?.length);
        if (row === undefined || bought === undefined) return;
        expect(canBeCut({ width: row.width, height: row.length }, bought.cells)).toBe(true);
        expect(bought.cells.every(({ y }) => y >= untrueEnd)).toBe(true);
        const laid = bought.cells.map(({ width, height, turned }) =>
          turned ? [height, width] : [width, height],
        );
        expect(laid).toEqual(wanted.map(({ cutWidth, cutHeight }) => [cutWidth, cutHeight]));
      }),
    );
  });
});
