import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { area, areaOf, cut, inches } from "../length/index.ts";
import { areaByFabric, defaultPileLimits, heapArea, pileNames, pilesOf } from "./piles.ts";
import { kinds, type Piece, type SizedKind } from "./types.ts";

const facts = {
  fabric: "teal",
  keep: "trim",
  use: "yes",
  direction: "none",
  grain: "straight",
  washed: null,
  cloth: "",
  name: "",
} as const;

function sized(
  kind: SizedKind,
  wide: number,
  high: number,
  more: { count?: number; fabric?: string } = {},
): Piece {
  const sides = { width: cut(inches(wide * 8, 8)), height: cut(inches(high * 8, 8)) };
  return { ...facts, id: `${kind}-${wide}x${high}`, kind, ...sides, count: 1, ...more };
}

const crumbs: Piece = {
  ...facts,
  id: "crumbs-1",
  kind: "crumbs",
  count: 1,
  area: area(inches(10), inches(12)),
};

describe("piles", () => {
  const heap = [
    sized("strip", 2.5, 20),
    sized("block", 12.5, 12.5),
    sized("part-block", 4.5, 8.5),
    sized("triangle", 4.875, 4.875),
    sized("half-square-triangle", 4.5, 4.5),
    sized("square", 2.5, 2.5),
    sized("square", 6.5, 6.5),
    sized("rectangle", 3.25, 30),
    sized("rectangle", 3.5, 10.5),
    sized("odd", 5, 5),
    sized("length", 41, 60),
    crumbs,
  ];

  test("each where a quilter would lay it", () => {
    const ids = Object.fromEntries(
      Object.entries(pilesOf(heap)).map(([name, pile]) => [name, pile.map(({ id }) => id)]),
    );
    expect(ids).toEqual({
      strips: ["strip-2.5x20"],
      blocks: ["block-12.5x12.5", "part-block-4.5x8.5"],
      triangles: ["triangle-4.875x4.875", "half-square-triangle-4.5x4.5"],
      small: ["square-2.5x2.5", "rectangle-3.25x30", "odd-5x5", "crumbs-1"],
      large: ["square-6.5x6.5", "rectangle-3.5x10.5", "length-41x60"],
    });
  });

  test("her own limits move the line", () => {
    const all = pilesOf(heap, { ...defaultPileLimits, area: area(inches(7), inches(7)) });
    expect(all.large.map(({ id }) => id)).toEqual(["length-41x60"]);
  });

  test("every piece lies in exactly one pile", () => {
    const side = fc.integer({ min: 1, max: 60 });
    const anyPiece = fc
      .tuple(fc.constantFrom(...kinds), side, side)
      .map(([kind, width, height]) => (kind === "crumbs" ? crumbs : sized(kind, width, height)));
    fc.assert(
      fc.property(fc.array(anyPiece), (pieces) => {
        const piles = pilesOf(pieces);
        const sorted = pileNames.flatMap((name) => piles[name]);
        expect(sorted).toHaveLength(pieces.length);
        expect(new Set(sorted)).toEqual(new Set(pieces));
      }),
    );
  });
});

describe("area by fabric", () => {
  test("all pieces of a row, a triangle half its box, most first", () => {
    const heap = [
      sized("square", 2, 2, { count: 3, fabric: "oat" }),
      sized("triangle", 4, 4, { count: 2, fabric: "plum" }),
      sized("strip", 2, 5, { fabric: "oat" }),
      crumbs,
    ];
    const inch = inches(1) ** 2;
    expect([...areaByFabric(heap)]).toEqual([
      ["teal", 120 * inch],
      ["oat", 22 * inch],
      ["plum", 16 * inch],
    ]);
  });

  test("nothing is lost: fabrics add up to the heap", () => {
    const heap = [
      sized("square", 2, 2, { count: 41 }),
      sized("triangle", 4.875, 4.875, { fabric: "plum" }),
      crumbs,
    ];
    const total = areaOf(heap.reduce((sum, piece) => sum + heapArea(piece), 0));
    expect([...areaByFabric(heap).values()].reduce((sum, part) => sum + part, 0)).toBe(total);
  });
});
