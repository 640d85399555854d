import { describe, expect, it } from "vitest";
import { markerRows } from "../../../test/made/vision.ts";
import { inches, type Length, millimetres, toNumber } from "../length/index.ts";
import {
  type Box,
  cellsAlongMarker,
  inkOf,
  isBlack,
  type Marker,
  markerIds,
  papers,
  type ReferencePage,
  referencePages,
  targets,
} from "./index.ts";

const pages = papers.flatMap((paper) => referencePages(paper));
const named = pages.map((page) => [`${page.paper}, ${page.kind} of ${page.markers[0]?.id}`, page] as const);
const inInches = (length: Length) => toNumber(length, "in");
const cells = Array.from({ length: cellsAlongMarker }, (_, at) => at);

describe("the codes", () => {
  it.each(markerIds)("of %i are those of the vision library", (id) => {
    const ours = cells.map((row) => cells.map((column) => (isBlack(id, row, column) ? 0 : 1)).join(""));
    expect(ours).toEqual(markerRows(id, cellsAlongMarker));
  });

  // The dictionary promises 12 between any two of its 250; so also between ours, and of one with itself turned.
  it("differ in at least 12 cells, however they are turned", () => {
    const turns = markerIds.flatMap((id) =>
      [0, 1, 2, 3].map((turn) => ({ id, turn, code: turned(id, turn) })),
    );
    for (const one of turns)
      for (const other of turns)
        if (one.turn === 0 && one !== other)
          expect(distance(one.code, other.code)).toBeGreaterThanOrEqual(12);
  });
});

function turned(id: number, turn: number): readonly boolean[] {
  const last = cellsAlongMarker - 1;
  const at = (row: number, column: number, left: number): boolean =>
    left === 0 ? isBlack(id, row, column) : at(last - column, row, left - 1);
  return cells.flatMap((row) => cells.map((column) => at(row, column, turn)));
}

function distance(one: readonly boolean[], other: readonly boolean[]): number {
  return one.filter((flag, at) => flag !== other[at]).length;
}

describe("the pages", () => {
  it("carry each marker once: 0 to 3 on the cards, 10 to 13 and 14 to 17 on the sheets", () => {
    for (const paper of papers)
      expect(
        referencePages(paper).map(({ kind, markers }) => [kind, ...markers.map(({ id }) => id)]),
      ).toEqual([
        ["cards", 0, 1, 2, 3],
        ["sheet", 10, 11, 12, 13],
        ["sheet", 14, 15, 16, 17],
      ]);
  });

  it.each([
    ["letter", inches(11, 2), inches(17, 4), inches(6)],
    ["a4", millimetres(148.5), millimetres(105), millimetres(150)],
  ] as const)(
    "on %s are cut into cards of a quarter that lie on their sides, with bars of a length one can read off",
    (paper, ...sizes) => {
      const [cards] = referencePages(paper);
      const [down, across] = cards?.cuts ?? [];
      expect([down?.from.x, across?.from.y, cards?.bar]).toEqual(sizes);
    },
  );

  it.each(named)("%s: bars are exact, both ways, and on the page", (_, page) => {
    const spans = page.bars.map(({ from, to }) => [to.x - from.x, to.y - from.y]);
    expect(spans).toEqual([
      [page.bar, 0],
      [0, page.bar],
    ]);
    for (const { from, to } of page.bars)
      for (const point of [from, to]) expect(isInside({ ...point, width: 0, height: 0 }, page)).toBe(true);
  });

  it.each(named)("%s: a cell of white round every marker, 7 mm at the sides of A4", (_, page) => {
    for (const marker of page.markers) {
      // An A4 sheet is narrower than its four markers would like.
      const sides =
        page.kind === "sheet" && page.paper === "a4" ? millimetres(7) : marker.side / cellsAlongMarker;
      const quiet = grown(marker, sides, marker.side / cellsAlongMarker);
      expect(isInside(quiet, page)).toBe(true);
      const others = [...page.markers.filter((other) => other !== marker).map(boxOf), ...page.notes];
      for (const other of [...others, ...page.bars.map(boxOfLine), ...page.cuts.map(boxOfLine)])
        expect(overlap(quiet, other)).toBe(false);
    }
  });

  it.each(named)("%s: notes stand apart, on the page, and off its bars and cuts", (_, page) => {
    for (const note of page.notes) {
      expect(isInside(note, page)).toBe(true);
      const others = page.notes.filter((other) => other !== note);
      for (const other of [...others, ...page.bars.map(boxOfLine), ...page.cuts.map(boxOfLine)])
        expect(overlap(note, other)).toBe(false);
    }
  });

  it.each(named)(
    "%s: a card's marker lies in its middle, a sheet's 2.6 and 3.85 in from the page's",
    (_, page) => {
      const middles = page.markers.map(({ x, y, side }) => [x + side / 2, y + side / 2] as const);
      const offsets = middles.map(([x, y]) => [
        Math.abs(x - page.size.width / 2),
        Math.abs(y - page.size.height / 2),
      ]);
      const [across, down] =
        page.kind === "cards"
          ? [page.size.width / 4, page.size.height / 4]
          : [2.6 * inches(1), 3.85 * inches(1)];
      for (const [x, y] of offsets) {
        expect(Math.abs((x ?? 0) - across)).toBeLessThan(1);
        expect(Math.abs((y ?? 0) - down)).toBeLessThan(1);
      }
    },
  );
});

describe("the ink of a marker", () => {
  it.each(markerIds)("of %i is its black cells, each once", (id) => {
    const marker: Marker = { id, x: inches(1), y: inches(2), side: inches(3) };
    const black = cells.flatMap((row) => cells.filter((column) => isBlack(id, row, column))).length;
    const cell = marker.side / cellsAlongMarker;
    const ink = inkOf(marker);
    expect(ink.reduce((total, { width, height }) => total + width * height, 0)).toBe(black * cell * cell);
    for (const box of ink) {
      const [row, column] = [(box.y - marker.y) / cell, (box.x - marker.x) / cell];
      for (let at = column; at < column + box.width / cell; at += 1) expect(isBlack(id, row, at)).toBe(true);
    }
  });
});

describe("what lies on the floor", () => {
  it("is four cards and two sheets, the same from either paper", () => {
    expect(targets.map(({ kind, markers }) => [kind, ...markers.map(({ id }) => id)])).toEqual([
      ["card", 0],
      ["card", 1],
      ["card", 2],
      ["card", 3],
      ["sheet", 10, 11, 12, 13],
      ["sheet", 14, 15, 16, 17],
    ]);
  });

  it("has corners clockwise from the upper left, round the middle of the paper", () => {
    const inchesOf = (target: number, marker: number) =>
      targets[target]?.markers[marker]?.corners.map(({ x, y }) => [inInches(x), inInches(y)]);
    expect(inchesOf(0, 0)).toEqual([
      [-1.5, -1.5],
      [1.5, -1.5],
      [1.5, 1.5],
      [-1.5, 1.5],
    ]);
    const lowerLeft = inchesOf(4, 3)?.map(([x, y]) => [x?.toFixed(3), y?.toFixed(3)]);
    expect(lowerLeft).toEqual([
      ["-3.850", "2.600"],
      ["-1.350", "2.600"],
      ["-1.350", "5.100"],
      ["-3.850", "5.100"],
    ]);
  });
});

type Rectangle = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function boxOf({ x, y, side }: Marker): Rectangle {
  return { x, y, width: side, height: side };
}

function boxOfLine({ from, to }: ReferencePage["bars"][number]): Rectangle {
  return { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
}

function grown(marker: Marker, across: number, down: number): Rectangle {
  const { x, y, width, height } = boxOf(marker);
  return { x: x - across, y: y - down, width: width + 2 * across, height: height + 2 * down };
}

function isInside({ x, y, width, height }: Rectangle | Box, { size }: ReferencePage): boolean {
  return x >= 0 && y >= 0 && x + width <= size.width && y + height <= size.height;
}

function overlap(one: Rectangle, other: Rectangle): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}
