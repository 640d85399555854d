import { type Cut, cut, type Finished, finished, type Length, times } from "../length/index.ts";
import { halfSquareCut } from "./halfSquare.ts";
import { atLeast, atMost } from "./rootTwo.ts";

/** A square on its point in a square: what it finishes at, rounded down; a centre of `size` just touches its sides. */
export function squareInSquareFinished(size: Finished): Finished {
  return finished(atMost({ whole: 0, roots: size }));
}

/** The largest centre whose points lie within a block that finishes at `block`, rounded down. */
export function centreWithin(block: Finished): Finished {
  return finished(atMost({ whole: 0, roots: block, parts: 2 }));
}

/**
 * The side of the two squares that, cut once, make the four corners round a centre of finished `size` in a block of
 * finished `block` ≥ size √2: block − size ÷ √2 + s (2 + √2), rounded up. Where the centre just touches the sides this is
 * size ÷ √2 + 7/8 (catbirdquilts, 2014); in a larger block it floats, its points a little inside.
 */
export function cornerSquares(size: Finished, block: Finished, seam: Length): Cut {
  return cut(atLeast({ whole: 2 * block + 4 * seam, roots: 2 * seam - size, parts: 2 }));
}

/**
 * The largest block that a centre of finished `size` and four triangles with such legs make: leg + size ÷ √2 − s (2 + √2),
 * rounded down. Below size √2 the centre would lose its points: then the triangles are too small.
 */
export function blockFromCorners(size: Finished, leg: Cut, seam: Length): Finished {
  return finished(atMost({ whole: 2 * leg - 4 * seam, roots: size - 2 * seam, parts: 2 }));
}

/** The side of the corner squares where the centre just touches: size ÷ √2 + s (2 + √2), rounded up. */
export function closeCornerSquares(size: Finished, seam: Length): Cut {
  return cut(atLeast({ whole: 4 * seam, roots: size + 2 * seam, parts: 2 }));
}

/** Two rounds of corners: the block is straight again and finishes at twice its centre. */
export type Economy = { readonly finished: Finished; readonly inner: Cut; readonly outer: Cut };

/** An economy block about a centre of finished `size`: two squares cut once for each round. Exact, rounded up. */
export function economy(size: Finished, seam: Length): Economy {
  return {
    finished: times(size, 2),
    inner: closeCornerSquares(size, seam),
    // The first round measures size √2, its corners' legs in turn just the size.
    outer: halfSquareCut(size, seam),
  };
}
