import { describe, expect, it } from "vitest";
import type { LayoutNode } from "../../src/engine/layout/index.ts";
import { inches } from "../../src/engine/length/index.ts";
import { handMadePlan } from "../generators/handMadePlan.ts";
import { below, beside, bit, inched, plain, planOf, set, topOf, unit } from "./rules/made.ts";
import {
  brokenDirections,
  caterpillars,
  heavyCrossings,
  joinsWithoutGiver,
  lonelyBits,
  nearMisses,
  rulesBroken,
  sillyCuts,
  slivers,
  wrongContrast,
  wrongLongSeams,
} from "./rules.ts";

// Layouts a quilter can picture: what she would let pass, and what she wouldn't. Finished sizes in inches.

describe("1. no lonely bit", () => {
  it.each([
    ["a quarter of its neighbours", beside(bit("a", 10, 10), bit("b", 2.5, 10), bit("c", 10, 10))],
    ["beside one large and one small", beside(bit("a", 10, 10), bit("b", 2, 10), bit("c", 6, 10))],
    ["two alike", beside(bit("a", 10, 10), bit("b", 2, 10), bit("b", 2, 10), bit("c", 10, 10))],
    ["a spacer", beside(bit("a", 10, 10), plain(2, 10, "spacer"), bit("c", 10, 10))],
    ["in a set", set("strip-set", beside(bit("a", 10, 10), bit("b", 2, 10), bit("c", 10, 10)))],
    ["at the end of a row", beside(bit("b", 2, 10), bit("a", 10, 10))],
  ])("%s passes", (_, layout) => {
    expect(lonelyBits(planOf(layout))).toEqual([]);
  });

  it.each([
    ["across", beside(bit("a", 10, 10), bit("b", 2, 10), bit("c", 10, 10)), { x: 10, y: 0 }],
    ["down", below(bit("a", 10, 10), bit("b", 10, 2), bit("c", 10, 9)), { x: 0, y: 10 }],
    ["of plain cloth", beside(bit("a", 10, 10), plain(2, 10), bit("c", 10, 10)), { x: 10, y: 0 }],
    [
      "with several on one side",
      beside(bit("a", 10, 20), bit("b", 2, 20), below(bit("c", 9, 10), bit("d", 9, 10))),
      { x: 10, y: 0 },
    ],
  ])("one alone %s does not", (_, layout, place) => {
    expect(lonelyBits(planOf(layout))).toMatchObject([{ rule: "lonely-bit", ...place }]);
  });

  it("what is cut off is not seen", () => {
    const layout = below(bit("a", 40, 40), beside(bit("b", 19, 4), bit("c", 2, 4), bit("d", 19, 4)));
    expect(lonelyBits(planOf(layout))).toHaveLength(1);
    expect(lonelyBits(planOf(layout, { top: topOf(30, 34) }))).toEqual([]);
  });
});

describe("2. no caterpillar", () => {
  const row = (deep: number, count: number) =>
    beside(...Array.from({ length: count }, (_, at) => bit(`bit-${at}`, 8, deep)));

  it.each([
    ["30 in or less", below(bit("a", 24, 9), row(3, 3), bit("c", 24, 9))],
    ["4 in wide", below(bit("a", 40, 9), row(4, 5), bit("c", 40, 9))],
    ["plain cloth on both sides", below(plain(40, 9), row(3, 5), plain(40, 9))],
    ["a row of a set", below(bit("a", 40, 9), set("squares", row(3, 5)), bit("c", 40, 9))],
    ["one long strip", below(bit("a", 40, 9), bit("b", 40, 3), bit("c", 40, 9))],
    [
      "broken by plain cloth",
      below(
        bit("a", 40, 9),
        beside(bit("b", 8, 3), bit("c", 8, 3), plain(8, 3), bit("d", 16, 3)),
        bit("e", 40, 9),
      ),
    ],
  ])("%s passes", (_, layout) => {
    expect(caterpillars(planOf(layout))).toEqual([]);
  });

  it.each([
    ["between pieced parts", below(bit("a", 40, 9), row(3, 5), bit("c", 40, 9)), { x: 0, y: 9 }],
    ["with plain cloth on one side", below(plain(40, 9), row(3, 5), bit("c", 40, 9)), { x: 0, y: 9 }],
    ["at the edge of the back", below(row(3.5, 5), plain(40, 9)), { x: 0, y: 0 }],
  ])("long and thin %s does not", (_, layout, place) => {
    expect(caterpillars(planOf(layout))).toMatchObject([{ rule: "caterpillar", ...place }]);
  });
});

describe("3. no sliver", () => {
  it.each([
    ["2 in finished", below(plain(20, 9), bit("a", 20, 2))],
    ["1 in within a set", below(plain(20, 9), set("strip-set", beside(bit("a", 1, 9), bit("b", 19, 9))))],
  ])("%s passes", (_, layout) => {
    expect(slivers(planOf(layout))).toEqual([]);
  });

  it("less than 2 in does not", () => {
    expect(slivers(planOf(below(plain(20, 9), bit("a", 20, 1.875))))).toMatchObject([{ y: 9 }]);
  });

  // The top's outline lies 4 in inside the raw edge: at 3 3/4 in the layout.
  const framed = (ring: number, next: number) =>
    below(plain(40, ring), bit("a", 40, next), plain(40, 60 - ring - next));
  const top = topOf(32.5, 52.5);

  it.each([
    ["4 in across at the outline", framed(1.75, 4)],
    ["a ring that is cut off", framed(1.75, 20)],
    ["thin, but well inside", below(plain(40, 20), bit("a", 40, 2.5), plain(40, 37.5))],
    [
      "thin, running out over the edge",
      below(plain(40, 30), beside(plain(19, 30), bit("a", 2, 30), plain(19, 30))),
    ],
  ])("%s passes", (_, layout) => {
    expect(slivers(planOf(layout, { top }))).toEqual([]);
  });

  it.each([
    ["runs through", framed(1.75, 3.875), { y: 1.75 }],
    ["begins at", framed(3.75, 3), { y: 3.75 }],
  ])("what %s the outline and is thinner does not", (_, layout, place) => {
    expect(slivers(planOf(layout, { top }))).toMatchObject([place]);
  });
});

describe("4. no near miss", () => {
  const rows = (above: number, under: number, whole = 14) =>
    below(
      beside(bit("a", above, 6), bit("b", whole - above, 6)),
      beside(bit("c", under, 6), bit("d", whole - under, 6)),
    );

  it.each([
    ["seams that meet", rows(7, 7)],
    ["1 in apart", rows(7, 8)],
    ["2 in apart where all is large", rows(12, 14, 30)],
    ["1 in apart with one small cell", rows(7, 8, 30)],
  ])("%s passes", (_, layout) => {
    expect(nearMisses(planOf(layout))).toEqual([]);
  });

  it.each([
    ["less than 1 in apart", rows(7, 7.875), { x: 7, y: 6, said: "seams 0.875 in apart" }],
    ["less than 2 in apart where all is large", rows(12, 13.5, 30), { x: 12, y: 6 }],
  ])("%s does not", (_, layout, place) => {
    expect(nearMisses(planOf(layout))).toMatchObject([place]);
  });

  it("the middle of a pinwheel ends on its edge too", () => {
    const layout = below(unit("pinwheel", "t", 8, 10), beside(bit("a", 5.5, 6), bit("b", 4.5, 6)));
    expect(nearMisses(planOf(layout))).toMatchObject([{ x: 5, y: 10 }]);
  });

  it("an all-over may have three in a hundred", () => {
    const far = Array.from({ length: 20 }, () => rows(7, 10));
    const mostly = (misses: number) => beside(...far, ...Array.from({ length: misses }, () => rows(7, 7.5)));
    expect(nearMisses(planOf(mostly(1), { style: "all-over" }))).toEqual([]);
    expect(nearMisses(planOf(mostly(1), { style: "chunks" }))).toHaveLength(1);
    expect(nearMisses(planOf(mostly(3), { style: "all-over" }))).toHaveLength(3);
  });

  const cross = (above: number, under: number) =>
    below(
      beside(plain(above, 20), below(bit("a", 9, 10), bit("b", 9, 10)), plain(51 - above, 20)),
      beside(bit("c", 12, 9), bit("d", 24, 9), bit("e", 24, 9)),
      beside(plain(under, 30), below(bit("f", 9, 15), bit("g", 9, 15)), plain(51 - under, 30)),
    );

  it("the halves of a cross lie 6 in apart", () => {
    expect(nearMisses(planOf(cross(14, 20), { style: "cross" }))).toEqual([]);
    expect(nearMisses(planOf(cross(14, 19), { style: "cross" }))).toMatchObject([
      { said: "the halves of the cross lie 5 in apart" },
    ]);
  });

  it("or there is one half", () => {
    const tee = below(
      plain(60, 20),
      beside(bit("c", 12, 9), bit("d", 24, 9), bit("e", 24, 9)),
      beside(plain(20, 30), below(bit("f", 9, 15), bit("g", 9, 15)), plain(31, 30)),
    );
    expect(nearMisses(planOf(tee, { style: "cross" }))).toEqual([]);
  });
});

describe("5. no heavy crossing", () => {
  const triangle = { kind: "half-square-triangle", keep: "whole" } as const;
  const four = (turn: 0 | 1) =>
    below(beside(bit("t", 5, 5, { quarter: turn }), bit("a", 5, 5)), beside(bit("b", 5, 5), bit("c", 5, 5)));
  const plans = (turn: 0 | 1) => planOf(four(turn), { rows: { t: triangle } });

  it("four seams pass, a diagonal that runs past them too", () => {
    expect(heavyCrossings(plans(0))).toEqual([]);
  });

  it("a fifth, slanting in, does not", () => {
    expect(heavyCrossings(plans(1))).toMatchObject([{ x: 5, y: 5, said: "5 seams meet" }]);
  });

  it("where a seam ends on another there is room for one", () => {
    const layout = below(beside(bit("t", 5, 5, { quarter: 1 }), bit("a", 5, 5)), bit("b", 10, 5));
    expect(heavyCrossings(planOf(layout, { rows: { t: triangle } }))).toEqual([]);
  });

  it("the middle of a pinwheel is its own affair, two that meet are not", () => {
    expect(heavyCrossings(planOf(beside(unit("pinwheel", "t", 8, 10), plain(10, 10))))).toEqual([]);
    const pair = beside(unit("pinwheel", "t", 8, 10), unit("pinwheel", "t", 8, 10));
    const meeting = below(pair, beside(unit("pinwheel", "t", 8, 10), unit("pinwheel", "t", 8, 10)));
    expect(heavyCrossings(planOf(meeting))).toMatchObject([{ x: 10, y: 10, said: "8 seams meet" }]);
  });
});

describe("6. no silly cut", () => {
  const trimmed = { a: inched(6.75, 6.5) };

  it("a trim that plain cloth in the same row could have saved", () => {
    const layout = beside(bit("a", 6, 6), plain(20, 6));
    expect(sillyCuts(planOf(layout, { rows: trimmed }))).toMatchObject([
      { x: 0, y: 0, said: "0.25 in trimmed along x for nothing" },
    ]);
  });

  it.each([
    ["nothing that could give way", beside(bit("a", 6, 6), bit("b", 20, 6)), trimmed],
    [
      "a strip cut to length",
      beside(bit("s", 6, 3), plain(20, 3)),
      { s: { kind: "strip", keep: "cut", ...inched(20, 3.5) } },
    ],
    ["less than the ruler shows", beside(bit("a", 6, 6), plain(20, 6)), { a: inched(6.5625, 6.5) }],
    [
      "another piece would have to be longer",
      below(beside(bit("a", 6, 6), bit("b", 20, 6)), plain(26, 20)),
      { a: inched(6.5, 6.75) },
    ],
    [
      "more than 6 sq in of plain cloth",
      below(beside(bit("a", 6, 6), plain(30, 6)), plain(36, 20)),
      { a: inched(6.5, 6.75) },
    ],
  ] as const)("passes: %s", (_, layout, rows) => {
    expect(sillyCuts(planOf(layout, { rows }))).toEqual([]);
  });

  it("a row that could have been deeper, all of it", () => {
    const layout = below(beside(bit("a", 6, 6), bit("b", 8, 6)), plain(14, 20));
    const rows = { a: inched(6.5, 6.75), b: inched(8.5, 6.75) };
    expect(sillyCuts(planOf(layout, { rows }))).toHaveLength(2);
    expect(sillyCuts(planOf(layout, { rows: { ...rows, b: inched(8.5, 6.5) } }))).toEqual([]);
  });

  const strip = { kind: "strip", keep: "cut", fabric: "moss" } as const;
  const cutRow = beside(bit("long", 8, 3), plain(20, 3));

  it.each([
    ["serves", inched(12, 3.5), 1],
    ["is too short", inched(8, 3.5), 0],
    ["is as large", inched(30, 3.5), 0],
  ])("a big piece is cut while a smaller one %s", (_, small, breaks) => {
    const rows = { long: { ...strip, ...inched(30, 3.5) }, short: { ...strip, ...small } };
    expect(sillyCuts(planOf(cutRow, { rows }))).toHaveLength(breaks);
  });

  it("but not for a smaller one of other cloth, or one that is kept back", () => {
    const long = { ...strip, ...inched(30, 3.5) };
    const other = { long, short: { ...strip, ...inched(12, 3.5), fabric: "oat" } };
    const kept = { long, short: { ...strip, ...inched(12, 3.5), use: "keep-back" as const } };
    expect(sillyCuts(planOf(cutRow, { rows: other }))).toEqual([]);
    expect(sillyCuts(planOf(cutRow, { rows: kept }))).toEqual([]);
  });
});

describe("7. directions kept", () => {
  const inside = (...parts: readonly LayoutNode[]) => {
    const row = beside(...parts);
    const across = row.width / 8128;
    return below(plain(across + 8, 4), beside(plain(4, 5), row, plain(4, 5)), plain(across + 8, 4));
  };

  it("a one-way print stands upright", () => {
    const rows = { a: { direction: "one-way" } } as const;
    expect(brokenDirections(planOf(inside(bit("a", 6, 5), bit("b", 5, 5)), { rows }))).toEqual([]);
    const turned = inside(bit("a", 6, 5, { turned: true }), bit("b", 5, 5));
    expect(brokenDirections(planOf(turned, { rows }))).toHaveLength(1);
  });

  it("and never lies in a pinwheel", () => {
    const rows = { t: { kind: "triangle", direction: "one-way", grain: "legs" } } as const;
    expect(
      brokenDirections(planOf(inside(unit("pinwheel", "t", 8, 5), bit("b", 5, 5)), { rows })),
    ).toHaveLength(1);
  });

  it("stripes run one way within a row", () => {
    const rows = { a: { direction: "stripe" }, b: { direction: "stripe" } } as const;
    const row = (turned: boolean) => inside(bit("a", 6, 5), bit("b", 5, 5, { turned }), bit("c", 5, 5));
    expect(brokenDirections(planOf(row(false), { rows }))).toEqual([]);
    expect(brokenDirections(planOf(row(true), { rows }))).toMatchObject([{ x: 10, y: 4 }]);
  });

  it.each(["bias", "unknown"] as const)("%s grain stays inside", (grain) => {
    const rows = { a: { grain } };
    expect(brokenDirections(planOf(inside(bit("a", 5, 5), bit("b", 5, 5)), { rows }))).toEqual([]);
    expect(brokenDirections(planOf(beside(bit("a", 5, 5), bit("b", 5, 5)), { rows }))).toMatchObject([
      { x: 0 },
    ]);
  });

  it.each([
    ["half-square-triangle", 2, "legs", 0],
    ["half-square-triangle", 2, "long-side", 1],
    ["half-square-triangle", 2, "unknown", 1],
    ["hourglass", 4, "long-side", 0],
    ["hourglass", 4, "legs", 1],
  ] as const)("%s of %d triangles, %s on grain, at the edge: %d", (pattern, count, grain, breaks) => {
    const rows = { t: { kind: "triangle", grain } } as const;
    const layout = beside(unit(pattern, "t", count, 5), bit("b", 5, 5));
    expect(brokenDirections(planOf(layout, { rows }))).toHaveLength(breaks);
  });
});

describe("8. long seams", () => {
  const halves = (above: number) => below(plain(40, above), bit("a", 40, 60 - above));

  it("lie 3 in off the centre lines", () => {
    expect(wrongLongSeams(planOf(halves(27)))).toEqual([]);
    expect(wrongLongSeams(planOf(halves(27.125)))).toMatchObject([{ y: 27.125 }]);
  });

  it("short ones may lie on them", () => {
    const layout = beside(below(bit("a", 19, 30), bit("b", 19, 30)), plain(6, 60), bit("c", 15, 60));
    expect(wrongLongSeams(planOf(layout)).filter(({ x }) => x === 0)).toEqual([]);
  });

  it("but two short ones in one line are long", () => {
    const half = (id: string) => below(bit(`${id}1`, 13, 30), bit(`${id}2`, 13, 30));
    const layout = beside(half("a"), half("b"), plain(14, 60));
    expect(wrongLongSeams(planOf(layout))).toContainEqual(expect.objectContaining({ x: 0, y: 30 }));
  });

  const top = topOf(32.5, 52.5);

  it("keep 1 1/2 in from the top's outline", () => {
    expect(wrongLongSeams(planOf(halves(2.25), { top }))).toEqual([]);
    expect(wrongLongSeams(planOf(halves(2.375), { top }))).toHaveLength(1);
    expect(wrongLongSeams(planOf(halves(5.25), { top }))).toEqual([]);
    expect(wrongLongSeams(planOf(halves(5), { top }))).toHaveLength(1);
  });

  it.each([
    ["frame", 5.75, 0],
    ["frame", 5.5, 1],
    ["machine", 4.75, 0],
    ["hand", 4.5, 1],
  ] as const)("blocks lie inside it: on a %s, beginning at %d in", (method, at, breaks) => {
    const middle = beside(plain(at, 12), bit("a", 12, 12), plain(28 - at, 12));
    const layout = below(plain(40, 8), middle, plain(40, 40));
    const rows = { a: { kind: "block", keep: "whole" } } as const;
    const found = wrongLongSeams(planOf(layout, { rows, top: topOf(32.5, 52.5, method) }));
    expect(found.filter(({ said }) => said.includes("block"))).toHaveLength(breaks);
  });
});

describe("9. a giver at every long join", () => {
  const pieces = (id: string, count: number, wide: number) =>
    beside(...Array.from({ length: count }, (_, at) => bit(`${id}${at}`, wide, 6)));
  const long = <N extends LayoutNode>(node: N, width: number): N => ({
    ...node,
    leftLong: { width: inches(width, 8) },
  });

  it.each([
    ["short and simple", below(pieces("a", 3, 6), pieces("b", 3, 6))],
    ["plain cloth left long on one side", below(pieces("a", 4, 6), long(plain(24, 6), 8))],
    [
      "plain cloth left long at the end of one side",
      below(pieces("a", 4, 6), beside(bit("b", 12, 6), long(plain(12, 6), 8))),
    ],
    [
      "two strips of plain cloth across it, both left long",
      below(pieces("a", 4, 6), beside(below(long(plain(12, 3), 8), long(plain(12, 3), 8)), bit("b", 12, 6))),
    ],
  ])("%s passes", (_, layout) => {
    expect(joinsWithoutGiver(planOf(layout))).toEqual([]);
  });

  it.each([
    ["pieced on both sides, longer than 18 in,", below(pieces("a", 4, 6), pieces("b", 3, 8))],
    ["pieced on both sides, of more than 6 seams,", below(pieces("a", 8, 2), pieces("b", 2, 8))],
    ["plain on one side, but cut to its size,", below(pieces("a", 4, 6), plain(24, 6))],
    ["left long by less than an inch", below(pieces("a", 4, 6), long(plain(24, 6), 7))],
    [
      "of two strips across it one left long",
      below(pieces("a", 4, 6), beside(below(long(plain(12, 3), 8), plain(12, 3)), bit("b", 12, 6))),
    ],
  ])("%s does not", (_, layout) => {
    expect(joinsWithoutGiver(planOf(layout))).toHaveLength(1);
  });

  it("a strip with an inch to spare gives, one without does not", () => {
    const layout = below(long(bit("s", 24, 3), 8), pieces("a", 4, 6));
    const strip = { kind: "strip", keep: "cut" } as const;
    const withStrip = (width: number) =>
      joinsWithoutGiver(planOf(layout, { rows: { s: { ...strip, ...inched(width, 3.5) } } }));
    expect(withStrip(25.5)).toEqual([]);
    expect(withStrip(25)).toHaveLength(1);
  });
});

describe("10. contrast", () => {
  const colours = { a: "#803030", b: "#803030", c: "#e0d060", d: "#204060" };
  const four = (...ids: readonly string[]) => beside(...ids.map((id) => bit(id, 6, 6)));

  it("like fabrics do not touch where an exchange keeps them apart", () => {
    expect(wrongContrast(planOf(four("a", "c", "b", "d"), { colours }))).toEqual([]);
    expect(wrongContrast(planOf(four("a", "b", "c", "d"), { colours }))).toMatchObject([
      { rule: "contrast", x: 6 },
    ]);
  });

  it("unless the heap forces it", () => {
    const one = { a: "#803030", b: "#803030", c: "#803030", d: "#803030" };
    expect(wrongContrast(planOf(four("a", "b", "c", "d"), { colours: one }))).toEqual([]);
  });

  it("or only what lies elsewhere, in another size, could come between", () => {
    const layout = below(beside(bit("a", 6, 6), bit("b", 6, 6)), beside(bit("c", 8, 5), bit("d", 4, 5)));
    expect(wrongContrast(planOf(layout, { colours }))).toEqual([]);
  });

  it("or only what may not lie there: a block of hers where the edge is cut away", () => {
    const outside = below(bit("a", 6, 6), bit("b", 6, 6));
    const inside = below(bit("c", 6, 6), plain(6, 6));
    const row = beside(outside, plain(12, 12), inside, plain(6, 12));
    const layout = below(plain(30, 12), row, plain(30, 12));
    const broken = (kind: "rectangle" | "block") =>
      wrongContrast(planOf(layout, { colours, rows: { c: { kind } }, top: topOf(26, 32) }));
    expect(broken("rectangle")).toHaveLength(1);
    expect(broken("block")).toEqual([]);
  });

  it("in a row they may change places with one of another size, if no seams come to miss by that", () => {
    const row = beside(bit("a", 6, 6), bit("b", 6, 6), bit("c", 8, 6), bit("d", 9, 6));
    expect(wrongContrast(planOf(row, { colours }))).toHaveLength(1);
    const under = (from: number) => beside(bit("e", from, 6), bit("f", 29 - from, 6));
    const more = { ...colours, e: "#90c0a0", f: "#607020" };
    // A seam at 13 1/2 or 12 1/2: whoever parts the two lets a seam end half an inch from it, or another at 6 1/2.
    expect(wrongContrast(planOf(below(row, under(1)), { colours: more }))).toHaveLength(1);
  });

  it("two that nobody tells apart are like, save for who wants them to blend", () => {
    const near = { ...colours, b: "#833231" };
    const plan = planOf(four("a", "b", "c", "d"), { colours: near });
    expect(wrongContrast(plan)).toHaveLength(1);
    expect(wrongContrast(plan, "blend")).toEqual([]);
  });

  it("strong contrast, or as strong as exchanges make it", () => {
    const soft = { a: "#803030", b: "#8c3c34", c: "#e0d060", d: "#ddd870" };
    const plan = (...ids: readonly string[]) => planOf(four(...ids), { colours: soft });
    expect(wrongContrast(plan("a", "c", "b", "d"), "strong")).toEqual([]);
    expect(wrongContrast(plan("a", "b", "c", "d"), "strong")).toContainEqual(
      expect.objectContaining({ said: "strong contrast along 33.3 % of the edges" }),
    );
  });

  const dozen = Array.from({ length: 18 }, (_, at) => `p${at}`);
  const coloured = (red: (at: number) => boolean) =>
    Object.fromEntries(
      dozen.map((id, at) => [id, red(at) ? "#c04040" : at % 2 === 0 ? "#2040a0" : "#208040"]),
    );
  const [first, second, third] = [0, 6, 12].map((from) => four(...dozen.slice(from, from + 6)));
  const rowsOfSix = below(
    ...[first, plain(36, 10), second, plain(36, 10), third].flatMap((row) =>
      row === undefined ? [] : [row],
    ),
  );

  it("a fabric of six cells is spread over the thirds", () => {
    const said = (red: (at: number) => boolean) =>
      wrongContrast(planOf(rowsOfSix, { colours: coloured(red) })).map((one) => one.said);
    expect(said((at) => at < 6)).toContain("6 of #c04040 in one third");
    expect(said((at) => at % 3 === 0)).not.toContain("6 of #c04040 in one third");
  });

  it("no third is much darker than the whole", () => {
    const shade = (dark: (at: number) => boolean) =>
      Object.fromEntries(dozen.map((id, at) => [id, dark(at) ? `#20${at + 20}30` : `#e0d0${at + 70}`]));
    const said = (dark: (at: number) => boolean) =>
      wrongContrast(planOf(rowsOfSix, { colours: shade(dark) })).map((one) => one.said);
    expect(said((at) => at < 6).filter((one) => one.includes("darker"))).toHaveLength(1);
    expect(said((at) => at % 3 === 0).filter((one) => one.includes("darker"))).toEqual([]);
  });
});

describe("all of them", () => {
  it("with a back's size alone, the first six are costs", () => {
    const layout = beside(bit("a", 10, 10), bit("b", 2, 10), bit("c", 10, 10), plain(28, 10));
    expect(rulesBroken(planOf(layout))).toEqual([]);
    expect(rulesBroken(planOf(layout, { top: topOf(46, 4) })).map(({ rule }) => rule)).toContain(
      "lonely-bit",
    );
  });

  it("say of the hand-made plan what a quilter would", () => {
    const said = rulesBroken(handMadePlan()).map(({ rule }) => rule);
    // Its row of bits runs out to the raw edge: a block and a strip lie on the top's outline.
    expect(new Set(said)).toEqual(new Set(["direction", "long-seam", "sliver"]));
  });
});
