import {
  type Cut,
  cut,
  type Finished,
  finished,
  type Length,
  larger,
  type Size,
  smaller,
  toCut,
} from "../length/index.ts";
import { atLeast, atMost } from "./rootTwo.ts";
import { closeCornerSquares } from "./squareInSquare.ts";

/** Corner to corner of a block that finishes at `size`: size √2, rounded up, so that a block has its place. */
export function diagonalOf(size: Finished): Finished {
  return finished(atLeast({ whole: 0, roots: size }));
}

/**
 * Squares whose pieces fill the edges round blocks on point, straight grain outside: `side` is cut twice into four side
 * triangles, `corner` once into two corners. Exact, rounded up: size √2 + s (2 + 2 √2) and size ÷ √2 + s (2 + √2); to an
 * eighth these are the trade's tables (× 1.414, + 1 1/4 and + 7/8).
 */
export type SettingSquares = { readonly side: Cut; readonly corner: Cut };

export function settingSquares(size: Finished, seam: Length): SettingSquares {
  return {
    side: cut(atLeast({ whole: 2 * seam, roots: size + 2 * seam })),
    corner: closeCornerSquares(size, seam),
  };
}

/** A line of square blocks on point that is finished at `size`: block √2 across and that times their number along, or a little more. */
export type LineOnPoint = {
  readonly block: Finished;
  readonly count: number;
  readonly size: Size<Finished>;
};

/**
 * The squares for such a line, rounded up. Where the line just holds the blocks' points they are `settingSquares`; what
 * it is larger lies round the points, so that the side squares grow with its width and the corners with both.
 */
export function settingSquaresFor({ block, count, size }: LineOnPoint, seam: Length): SettingSquares {
  const long = larger(size.width, size.height);
  const deep = smaller(size.width, size.height);
  return {
    side: cut(atLeast({ whole: deep + 2 * seam, roots: 2 * seam })),
    corner: cut(atLeast({ whole: long + deep + 4 * seam, roots: 2 * seam - count * block, parts: 2 })),
  };
}

/** Seams in such a line: two a block for the triangles beside it, one between every two, and two corners more. */
export function joinsOnPoint(count: number): number {
  return 3 * count + 1;
}

export type OnPoint = {
  readonly size: Size<Finished>;
  readonly blocks: number;
  readonly sideTriangles: number;
  readonly corners: 4;
};

/** Blocks on point, so many across and down along the edges, those in between counted (common practice). Rounded up. */
export function onPointSetting(size: Finished, across: number, down: number): OnPoint {
  const along = (count: number) => finished(atLeast({ whole: 0, roots: size * count }));
  return {
    size: { width: along(across), height: along(down) },
    blocks: across * down + (across - 1) * (down - 1),
    sideTriangles: 2 * (across - 1) + 2 * (down - 1),
    corners: 4,
  };
}

/** The largest block that stands on point within a band of this depth, rounded down; to be cut, or cut already. */
export function largestOnPoint(
  deep: Finished,
  seam: Length,
): { readonly finished: Finished; readonly cut: Cut } {
  const block = finished(atMost({ whole: 0, roots: deep, parts: 2 }));
  return { finished: block, cut: toCut(block, seam) };
}
