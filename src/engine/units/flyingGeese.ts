import { type Cut, type Finished, type Length, type Size, times, toCut } from "../length/index.ts";
import { halfSquareCut } from "./halfSquare.ts";
import { quarterSquareCut } from "./quarterSquare.ts";

/** One square for the geese, cut twice, and smaller ones for the sky, cut once. */
export type GeeseSquares = { readonly large: Cut; readonly small: Cut };

/**
 * Geese twice as wide as high, four from one large and four small squares without waste, or one from a quarter of the
 * large and half of each of two small ones: W + 1 1/4 and H + 7/8 (All People Quilt, 2019; livinginstitches, 2009).
 * Exact, rounded up to whole units.
 */
export function geeseSquares(height: Finished, seam: Length): GeeseSquares {
  return {
    large: quarterSquareCut(doubled(height), seam),
    small: halfSquareCut(height, seam),
  };
}

/** One goose by stitch and flip: a rectangle, and two squares of its height (common practice). */
export function flippedGoose(
  height: Finished,
  seam: Length,
): { readonly rectangle: Size<Cut>; readonly square: Cut } {
  const side = toCut(height, seam);
  return { rectangle: { width: toCut(doubled(height), seam), height: side }, square: side };
}

/** A goose as it lies in the quilt. */
export function gooseSize(height: Finished): Size<Finished> {
  return { width: doubled(height), height };
}

function doubled(size: Finished): Finished {
  return times(size, 2);
}
