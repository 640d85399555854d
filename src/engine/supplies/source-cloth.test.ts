import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  clothLayouts,
  cutSize,
  eighths,
  madeCloth,
  madeJob,
  madeJoin,
  madeLength,
} from "../../../test/made/cloth.ts";
import { checkLayout, type LayoutNode, leavesOf, type UnitNode } from "../layout/index.ts";
import { finished, inches } from "../length/index.ts";
import { buyRows, sourceCloth } from "./index.ts";

const half = inches(1, 2);

function sources(layout: LayoutNode, job: Parameters<typeof sourceCloth>[1]) {
  return leavesOf(sourceCloth(layout, job), job).map(({ node }) =>
    node.kind === "cloth" ? [node.fabric, node.source] : null,
  );
}

function from(piece: string, copy = 1) {
  return { piece, copy };
}

describe("where plain cloth comes from", () => {
  test("her length first, what it does not give is bought", () => {
    // Cut sizes 40 1/2 × 30 3/4 and 40 1/2 × 50 3/4; the length gives one of them.
    const layout = madeJoin("below", half, [madeCloth(40, 30, "moss"), madeCloth(40, 50, "moss")]);
    expect(sources(layout, madeJob([madeLength("length-1", 42, 51)]))).toEqual([
      ["plain", "buy"],
      ["moss", from("length-1")],
    ]);
    expect(sources(layout, madeJob([madeLength("length-1", 42, 82)]))).toEqual([
      ["moss", from("length-1")],
      ["moss", from("length-1")],
    ]);
  });

  test("an eighth of an inch short is short", () => {
    const layout = madeCloth(40, 50, "moss");
    expect(sources(layout, madeJob([madeLength("length-1", 40.5, 50.5)]))).toEqual([
      ["moss", from("length-1")],
    ]);
    expect(sources(layout, madeJob([madeLength("length-1", 40.5, 50.375)]))).toEqual([["plain", "buy"]]);
  });

  test("a print with an up is not turned", () => {
    const layout = madeCloth(40, 30, "moss");
    const upright = madeLength("length-1", 32, 45);
    expect(sources(layout, madeJob([upright]))).toEqual([["moss", from("length-1")]]);
    expect(sources(layout, madeJob([{ ...upright, direction: "one-way" }]))).toEqual([["plain", "buy"]]);
  });

  test("equal lengths are told apart by their copy", () => {
    const layout = madeJoin("below", half, [madeCloth(40, 30, "moss"), madeCloth(40, 30, "moss")]);
    expect(sources(layout, madeJob([madeLength("length-1", 42, 31, { count: 2 })]))).toEqual([
      ["moss", from("length-1", 1)],
      ["moss", from("length-1", 2)],
    ]);
  });

  test("what she wants used first goes first, what she keeps back stays", () => {
    const layout = madeCloth(40, 30, "moss");
    const lengths = [
      madeLength("length-1", 42, 40, { use: "keep-back" }),
      madeLength("length-2", 42, 31),
      madeLength("length-3", 42, 60, { use: "first" }),
      madeLength("length-4", 42, 31, { use: "give-away" }),
    ];
    expect(sources(layout, madeJob(lengths))).toEqual([["moss", from("length-3")]]);
    expect(sources(layout, madeJob(lengths.slice(0, 1)))).toEqual([["plain", "buy"]]);
  });

  test("a length that stays whole gives one cell of its own size, a trimmed one nearly", () => {
    const layout = madeJoin("below", half, [madeCloth(40, 30, "moss"), madeCloth(40, 30, "moss")]);
    const whole = madeLength("length-1", 40.5, 30.75, { keep: "whole", count: 2 });
    expect(sources(layout, madeJob([whole]))).toEqual([
      ["moss", from("length-1", 1)],
      ["moss", from("length-1", 2)],
    ]);
    const larger = madeLength("length-1", 40.5, 61.5, { keep: "whole" });
    expect(sources(layout, madeJob([larger]))[0]).toEqual(["plain", "buy"]);
    const trimmed = madeLength("length-1", 41, 31.25, { keep: "trim" });
    expect(sources(layout, madeJob([trimmed]))).toEqual([
      ["moss", from("length-1")],
      ["plain", "buy"],
    ]);
    expect(sources(layout, madeJob([{ ...trimmed, ...cutSize(41.125, 31.25) }]))[0]).toEqual([
      "plain",
      "buy",
    ]);
  });

  test("a length of the very cloth that would be bought is cut up first", () => {
    const layout = madeJoin("below", half, [madeCloth(40, 50), madeCloth(40, 30)]);
    expect(sources(layout, madeJob([madeLength("length-1", 42, 31, { fabric: "plain" })]))).toEqual([
      ["plain", "buy"],
      ["plain", from("length-1")],
    ]);
  });

  const unitOf = (fabric: string): UnitNode => ({
    kind: "unit",
    pattern: "on-point",
    width: finished(eighths(80)),
    height: finished(eighths(80)),
    pieces: [],
    cloth: [{ fabric, source: "buy", ...cutSize(6, 6), count: 4 }],
  });

  test("cloth in a unit may come from two lengths", () => {
    const job = madeJob([madeLength("length-1", 6, 12), madeLength("length-2", 7, 13)]);
    expect(sourceCloth(unitOf("moss"), job)).toMatchObject({
      cloth: [
        { fabric: "moss", source: from("length-1"), count: 2 },
        { fabric: "moss", source: from("length-2"), count: 2 },
      ],
    });
  });

  test("but is never hers and bought of another fabric: short of one, all of it is bought", () => {
    const job = madeJob([madeLength("length-1", 6, 12), madeLength("length-2", 7, 7)]);
    expect(sourceCloth(unitOf("moss"), job)).toMatchObject({
      cloth: [{ fabric: "plain", source: "buy", count: 4 }],
    });
    // What the unit leaves is there for the next: its place among the cells is no matter.
    const beside = madeJoin("beside", inches(1, 4), [unitOf("moss"), madeCloth(5, 10, "moss")]);
    expect(sourceCloth(beside, job)).toMatchObject({
      parts: [
        { cloth: [{ fabric: "plain", source: "buy", count: 4 }] },
        { fabric: "moss", source: from("length-1") },
      ],
    });
  });

  test("of the fabric that is bought anyway, as much as there is comes from hers", () => {
    const job = madeJob([madeLength("length-1", 6, 18, { fabric: "plain" })]);
    expect(sourceCloth(unitOf("plain"), job)).toMatchObject({
      cloth: [
        { fabric: "plain", source: from("length-1"), count: 3 },
        { fabric: "plain", source: "buy", count: 1 },
      ],
    });
  });
});

const lengths = [
  madeLength("length-1", 42, 36),
  madeLength("length-2", 42, 20, { count: 2 }),
  madeLength("length-3", 30, 30, { fabric: "rust", direction: "one-way" }),
  madeLength("length-4", 40, 60, { fabric: "rust", use: "first" }),
];
const layouts = clothLayouts(["plain", "moss", "rust"]);

describe("laws of sourcing", () => {
  test("the checker finds every source and every purchase enough", () => {
    const job = madeJob(lengths);
    fc.assert(
      fc.property(layouts, (layout) => {
        const sourced = sourceCloth(layout, job);
        expect(checkLayout({ ...job, layout: sourced, buy: buyRows(sourced, job) })).toEqual([]);
      }),
    );
  });

  test("cells keep their sizes and places; only cloth that is not to be had changes its fabric", () => {
    const job = madeJob(lengths);
    fc.assert(
      fc.property(layouts, (layout) => {
        const before = leavesOf(layout, job);
        const after = leavesOf(sourceCloth(layout, job), job);
        expect(after.map(({ node, ...place }) => place)).toEqual(before.map(({ node, ...place }) => place));
        for (const [index, { node }] of after.entries()) {
          const was = before[index]?.node;
          if (node.kind !== "cloth" || was?.kind !== "cloth") continue;
          expect(node.fabric).toBe(node.source === "buy" ? "plain" : was.fabric);
        }
      }),
    );
  });

  test("once sourced, always the same", () => {
    const job = madeJob(lengths);
    fc.assert(
      fc.property(layouts, (layout) => {
        const once = sourceCloth(layout, job);
        expect(sourceCloth(layout, job)).toEqual(once);
      }),
    );
  });
});
