import {
  add,
  inches,
  type Length,
  length,
  millimetres,
  type Size,
  subtract,
  times,
  unitsPerInch,
} from "../length/index.ts";
import { cellsAlongMarker, isBlack } from "./codes.ts";

/** What the reference pages are printed on. */
export const papers = ["letter", "a4"] as const;
export type Paper = (typeof papers)[number];

/** A place on a page: how far right of its left edge and how far below its upper one. */
export type Point = { readonly x: Length; readonly y: Length };
export type Line = { readonly from: Point; readonly to: Point };
export type Box = Point & Size;

/** A black square with a code in it; `x` and `y` of its upper left corner. */
export type Marker = Point & { readonly id: number; readonly side: Length };

/**
 * A page to print. `cards`: cut into four along `cuts`, one marker on each. `sheet`: stays whole, with four markers.
 * `bars` are as long as `bar` exactly: what a ruler says of them tells how much the printer shrank the page.
 */
export type ReferencePage = {
  readonly kind: "cards" | "sheet";
  readonly paper: Paper;
  readonly size: Size;
  readonly markers: readonly Marker[];
  readonly cuts: readonly Line[];
  readonly bar: Length;
  readonly bars: readonly Line[];
  /** Where words may stand, row by row. */
  readonly notes: readonly Box[];
};

/** Standing upright. */
const sizes: { readonly [P in Paper]: Size } = {
  letter: { width: inches(17, 2), height: inches(11) },
  a4: { width: millimetres(210), height: millimetres(297) },
};

/** How long the check bars are. */
export const barLengths: { readonly [P in Paper]: Length } = { letter: inches(6), a4: millimetres(150) };

const cardMarker = inches(3);
const sheetMarker = inches(5, 2);
/** Of a sheet's markers' middles from the middle of the page: 2.6 and 3.85 in, to the nearest 1/320 mm. */
const sheetOffset = {
  across: length(Math.round(2.6 * unitsPerInch)),
  down: length(Math.round(3.85 * unitsPerInch)),
};

/** Clockwise from the upper left, as marker numbers run. */
const corners = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** All pages there are for a paper: the four cards, then the two sheets. */
export function referencePages(paper: Paper): readonly ReferencePage[] {
  return [cardsPage(paper), sheetPage(paper, 10), sheetPage(paper, 14)];
}

/** Each quarter of the page, which lies on its side, is a card with its marker in the middle, numbers 0 to 3. */
function cardsPage(paper: Paper): ReferencePage {
  const size = onItsSide(sizes[paper]);
  const [quarterAcross, quarterDown] = [half(half(size.width)), half(half(size.height))];
  const middle = middleOf(size);
  return {
    ...pageOf(paper, size),
    kind: "cards",
    markers: markersAt(middle, { across: quarterAcross, down: quarterDown }, { first: 0, side: cardMarker }),
    cuts: [
      { from: { x: middle.x, y: length(0) }, to: { x: middle.x, y: size.height } },
      { from: { x: length(0), y: middle.y }, to: { x: size.width, y: middle.y } },
    ],
    notes: cardNotes(middle),
  };
}

function onItsSide({ width, height }: Size): Size {
  return { width: height, height: width };
}

/** One on each card, between its marker and the page's middle: too far from the marker to disturb it. */
function cardNotes({ x, y }: Point): readonly Box[] {
  const note = { width: inches(11, 16), height: inches(5, 2) };
  const gap = inches(1, 8);
  return [subtract(y, add(note.height, gap)), add(y, gap)].flatMap((top) =>
    [subtract(x, add(note.width, gap)), add(x, gap)].map((left) => ({ x: left, y: top, ...note })),
  );
}

function sheetPage(paper: Paper, first: number): ReferencePage {
  const size = sizes[paper];
  const { x, y } = middleOf(size);
  // Between the markers, clear of both bars.
  const note = { width: inches(13, 4), height: inches(15, 8) };
  const gap = inches(3, 16);
  return {
    ...pageOf(paper, size),
    kind: "sheet",
    markers: markersAt(middleOf(size), sheetOffset, { first, side: sheetMarker }),
    cuts: [],
    notes: [
      { x: subtract(x, add(note.width, gap)), y: subtract(y, add(note.height, gap)), ...note },
      { x: add(x, gap), y: add(y, gap), ...note },
    ],
  };
}

function pageOf(paper: Paper, size: Size) {
  const bar = barLengths[paper];
  const { x, y } = middleOf(size);
  const reach = half(bar);
  const bars = [
    { from: { x: subtract(x, reach), y }, to: { x: add(x, reach), y } },
    { from: { x, y: subtract(y, reach) }, to: { x, y: add(y, reach) } },
  ];
  return { paper, size, bar, bars };
}

type Offset = { readonly across: Length; readonly down: Length };

function markersAt(
  middle: Point,
  offset: Offset,
  { first, side }: { first: number; side: Length },
): Marker[] {
  return corners.map(([right, down], index) => ({
    id: first + index,
    x: subtract(add(middle.x, times(offset.across, right)), half(side)),
    y: subtract(add(middle.y, times(offset.down, down)), half(side)),
    side,
  }));
}

function middleOf({ width, height }: Size): Point {
  return { x: half(width), y: half(height) };
}

function half(size: Length): Length {
  return length(size / 2);
}

/** A marker's black cells as boxes that tile its ink, row by row; cells beside one another are one box. */
export function inkOf({ id, x, y, side }: Marker): readonly Box[] {
  const cell = length(side / cellsAlongMarker);
  const rows = Array.from({ length: cellsAlongMarker }, (_, row) => row);
  return rows.flatMap((row) =>
    runsIn(rows.map((column) => isBlack(id, row, column))).map(([from, to]) => ({
      x: add(x, times(cell, from)),
      y: add(y, times(cell, row)),
      width: times(cell, to - from),
      height: cell,
    })),
  );
}

/** Where true begins and where it has ended, run by run. */
function runsIn(flags: readonly boolean[]): readonly (readonly [from: number, to: number])[] {
  const starts = flags.flatMap((flag, at) => (flag && !flags[at - 1] ? [at] : []));
  return starts.map((from) => {
    const end = flags.indexOf(false, from);
    return [from, end < 0 ? flags.length : end] as const;
  });
}
