import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eighths, madeCloth, madeJob, madeJoin, madeLength } from "../../../test/made/cloth.ts";
import type { Job, SizedPiece } from "../cloth/index.ts";
import { checkLayout, type LayoutNode, leavesOf, leftLongOf, withoutGivers } from "../layout/index.ts";
import { finished, inches } from "../length/index.ts";
import { buyRows, cuttingPlan, sourceCloth, withClothAndGivers, withGivers } from "./index.ts";

const quarter = inches(1, 4);

function square(id: string, wide: number, high: number): LayoutNode {
  const [width, height] = [finished(eighths(wide * 8)), finished(eighths(high * 8))];
  return { kind: "piece", piece: id, turned: false, width, height };
}

/** A row of so many squares. */
function row(count: number, side: number): LayoutNode {
  const squares = Array.from({ length: count }, () => square("square-1", side, side));
  return madeJoin("beside", quarter, squares);
}

function longIn(layout: LayoutNode, job: Job) {
  return leavesOf(withGivers(layout, job), job).flatMap(({ node, path }) => {
    const { width, height } = leftLongOf(node);
    return width === undefined && height === undefined ? [] : [{ path, width, height }];
  });
}

describe("beside a long join one part is left long", () => {
  const job = madeJob([]);

  it("not beside a short one of few seams", () => {
    expect(longIn(madeJoin("below", quarter, [row(3, 6), madeCloth(18, 20)]), job)).toEqual([]);
  });

  it.each([
    ["over 18 in", row(4, 6), 24],
    ["of more than 6 seams", row(8, 2), 16],
  ])("the plain cloth next to it: %s", (_, pieced, wide) => {
    const layout = madeJoin("below", quarter, [pieced, madeCloth(wide, 12)]);
    expect(longIn(layout, job)).toEqual([{ path: [1], width: inches(1) }]);
  });

  it("by two inches where more than 16 seams may drift by a sixteenth each", () => {
    // 23 seams make 1 7/16 in, as published; an inch covers 16.
    const beside = (seams: number) =>
      madeJoin("below", quarter, [row(seams + 1, 2), madeCloth(2 * seams + 2, 12)]);
    expect(longIn(beside(16), job)).toEqual([{ path: [1], width: inches(1) }]);
    expect(longIn(beside(17), job)).toEqual([{ path: [1], width: inches(2) }]);
    expect(longIn(beside(23), job)).toEqual([{ path: [1], width: inches(2) }]);
  });

  it("one for the joins on both its sides", () => {
    const layout = madeJoin("below", quarter, [row(4, 6), madeCloth(24, 12), row(4, 6)]);
    expect(longIn(layout, job)).toEqual([{ path: [1], width: inches(1) }]);
  });

  it("both of two plain parts that lie side by side across it", () => {
    const plain = madeJoin("below", inches(1, 2), [madeCloth(24, 12), madeCloth(24, 30)]);
    const layout = madeJoin("below", quarter, [row(4, 6), plain]);
    expect(longIn(layout, job).map(({ path }) => path)).toEqual([
      [1, 0],
      [1, 1],
    ]);
  });

  it("at the end of a row rather than within it", () => {
    const within = madeJoin("beside", quarter, [
      square("square-1", 6, 6),
      madeCloth(6, 6),
      square("square-1", 12, 6),
    ]);
    const atEnd = madeJoin("beside", quarter, [square("square-1", 18, 6), madeCloth(6, 6)]);
    expect(longIn(madeJoin("below", quarter, [within, atEnd]), job).map(({ path }) => path)).toEqual([
      [1, 1],
    ]);
    expect(longIn(madeJoin("below", quarter, [within, row(4, 6)]), job).map(({ path }) => path)).toEqual([
      [0, 1],
    ]);
  });

  const strip = (height: number): SizedPiece => ({
    ...madeLength("strip-1", 3.5, height),
    kind: "strip",
    fabric: "ink",
  });
  const turned: LayoutNode = { ...square("strip-1", 24, 3), kind: "piece", piece: "strip-1", turned: true };

  it("a strip, if it has the inch to spare", () => {
    const layout = madeJoin("below", quarter, [row(4, 6), turned]);
    expect(longIn(layout, madeJob([strip(25.5)]))).toEqual([{ path: [1], width: inches(1) }]);
    expect(longIn(layout, madeJob([strip(25.375)]))).toEqual([]);
    expect(longIn(layout, madeJob([{ ...strip(30), keep: "whole" }]))).toEqual([]);
  });
});

describe("there is cloth for it", () => {
  it("not from a length that is used up, but from the next", () => {
    // Cut 24½ × 12½ from 24½ wide cloth: nothing wider can be had, so the bought part above gives.
    const layout = madeJoin("below", quarter, [madeCloth(24, 12), row(4, 6), madeCloth(24, 12, "moss")]);
    const narrow = madeJob([madeLength("length-1", 24.5, 12.5)]);
    expect(longIn(sourceCloth(layout, narrow), narrow).map(({ path }) => path)).toEqual([[0]]);
    const wide = madeJob([madeLength("length-1", 25.5, 12.5)]);
    expect(longIn(sourceCloth(layout, wide), wide).map(({ path }) => path)).toEqual([[0], [2]]);
  });

  it("bought: the row to buy has it in it", () => {
    const job = madeJob([]);
    const layout = madeJoin("below", quarter, [row(8, 10), madeCloth(80, 20)]);
    // 80½ long and one inch more, the untrue end, up to the next eighth of a yard: 82 → 85½.
    expect(buyRows(withGivers(layout, job), job)).toMatchObject([{ length: inches(171, 2) }]);
    // Exactly at an eighth of a yard without: 76½ + ½ in → 81; with the inch the same.
    const shorter = madeJoin("below", quarter, [row(8, 9.5), madeCloth(76, 20)]);
    expect(buyRows(shorter, job)).toMatchObject([{ length: inches(81) }]);
    expect(buyRows(withGivers(shorter, job), job)).toMatchObject([{ length: inches(81) }]);
  });

  it("bought, where her length is used up, but never where she wishes to buy nothing", () => {
    const usedUp = { ...madeJob([madeLength("length-1", 24.5, 12.5)]), wishes: [] };
    const hers = madeCloth(24, 12, "moss");
    const sources = (layout: LayoutNode, job: Job) =>
      leavesOf(withClothAndGivers(layout, job), job).flatMap(({ node }) =>
        node.kind === "cloth" ? [{ bought: node.source === "buy", long: node.leftLong?.width }] : [],
      );
    const buying = madeJoin("below", quarter, [madeCloth(24, 3), row(4, 6), row(8, 3), hers]);
    expect(sources(buying, usedUp)).toEqual([
      { bought: true, long: inches(1) },
      { bought: true, long: inches(1) },
    ]);
    const alone = madeJoin("below", quarter, [row(4, 6), hers]);
    expect(sources(alone, usedUp)).toEqual([{ bought: true, long: inches(1) }]);
    const sparing: Job = { ...usedUp, wishes: ["buy-nothing"] };
    expect(sources(buying, sparing)[1]).toEqual({ bought: false, long: undefined });
    expect(sources(alone, sparing)).toEqual([{ bought: false, long: undefined }]);
  });

  it("bought still, where another cell that is bought leaves cloth for it", () => {
    // All are 24½ wide, and her length is cut for one of them: whichever is bought, the next would take it.
    const job = { ...madeJob([madeLength("length-1", 24.5, 12.5)]), wishes: [] };
    const parts = [12, 11, 10, 9, 8, 7].flatMap((high) => [
      row(4, 6),
      row(4, 6),
      madeCloth(24, high, "moss"),
    ]);
    const given = leavesOf(withClothAndGivers(madeJoin("below", quarter, parts), job), job);
    for (const { node } of given.filter((leaf) => leaf.node.kind === "cloth"))
      expect(node).toMatchObject({ source: "buy", leftLong: { width: inches(1) } });
  });

  it("never wider than the bolt", () => {
    const job = madeJob([]);
    // Two cells of the bolt's whole width side by side: neither can be cut wider.
    const layout = madeJoin("below", quarter, [row(4, 10.375), madeCloth(41.5, 60)]);
    expect(longIn(layout, job)).toEqual([]);
  });

  it("whatever the layout: all is cut once as long as it is left, and sizes and places stay", () => {
    const kinds = fc.constantFrom<"moss" | "plain">("moss", "plain");
    const rows = fc.array(fc.tuple(kinds, fc.integer({ min: 3, max: 30 }), fc.boolean()), {
      minLength: 2,
      maxLength: 6,
    });
    const made = rows.map((all) =>
      madeJoin(
        "below",
        quarter,
        all.map(([fabric, high, pieced]) => (pieced ? row(5, 6) : madeCloth(30, high, fabric))),
      ),
    );
    const job = madeJob([madeLength("length-1", 42, 30), madeLength("length-2", 31, 20)]);
    fc.assert(
      fc.property(made, (layout) => {
        const sourced = sourceCloth(layout, job);
        const alone = withGivers(sourced, job);
        expect(withoutGivers(alone)).toEqual(sourced);
        expect(withGivers(alone, job)).toEqual(alone);
        for (const given of [alone, withClothAndGivers(layout, job)]) expectCutAndChecked(given, job);
      }),
      { numRuns: 100 },
    );
  });
});

function expectCutAndChecked(given: LayoutNode, job: Job): void {
  const cut = new Map(
    cuttingPlan(given, job).flatMap(({ cells }) => cells.map((cell) => [cell.path.join(), cell])),
  );
  for (const { node, path, cutWidth, cutHeight } of leavesOf(given, job)) {
    if (node.kind !== "cloth") continue;
    const { width = 0, height = 0 } = node.leftLong ?? {};
    const cell = cut.get(path.join());
    const size = cell?.turned ? [cell.height, cell.width] : [cell?.width, cell?.height];
    expect(size).toEqual([cutWidth + width, cutHeight + height]);
  }
  const problems = checkLayout({
    ...job,
    layout: given,
    buy: buyRows(given, job),
    pieces: [
      ...job.pieces,
      { ...madeLength("square-1", 6.5, 6.5, { fabric: "ink" }), kind: "square", count: 99 },
    ],
  });
  const ofCloth = problems.filter(({ kind }) => kind !== "layout-not-the-back" && kind !== "wrong-seam");
  expect(ofCloth).toEqual([]);
}
