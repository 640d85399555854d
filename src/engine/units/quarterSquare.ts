import { type Cut, cut, type Finished, finished, type Length } from "../length/index.ts";
import { atLeast, atMost } from "./rootTwo.ts";

/**
 * The side of each of the two squares, cut on both diagonals, for hourglasses that finish at `size`: F + s (2 + 2 √2),
 * rounded up to a whole unit; the trade's F + 1 1/4 (North Hampshire Quilters).
 */
export function quarterSquareCut(size: Finished, seam: Length): Cut {
  return cut(atLeast({ whole: size + 2 * seam, roots: 2 * seam }));
}

/** What an hourglass from such squares finishes at, rounded down. */
export function quarterSquareFinished(square: Cut, seam: Length): Finished {
  return finished(atMost({ whole: square - 2 * seam, roots: -2 * seam }));
}

/** Four triangles with such legs, the long sides outside: leg √2 − s (2 + 2 √2), rounded down. */
export function hourglassOfTriangles(leg: Cut, seam: Length): Finished {
  return finished(atMost({ whole: -2 * seam, roots: leg - 2 * seam }));
}
