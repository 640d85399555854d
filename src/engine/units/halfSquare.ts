import { type Cut, cut, type Finished, finished, type Length } from "../length/index.ts";
import { atLeast, atMost } from "./rootTwo.ts";

/**
 * Half-square triangles at a time: two squares sewn either side of one diagonal (2), right round and cut on both
 * diagonals (4: their outer edges are bias), either side of both diagonals (8).
 */
export const halfSquareWays = [2, 4, 8] as const;
export type HalfSquareWay = (typeof halfSquareWays)[number];

/**
 * The side of each of the two squares for half-square triangles that finish at `size`. Exact, rounded up to a whole
 * unit: F + s (2 + √2); four at a time √2 (F + 2 s) + 2 s; eight at a time twice the first. Rounded up to an eighth,
 * at 1/4 in seams, it is the trade's F + 7/8 (North Hampshire Quilters) and 2 F + 1 3/4 (Craftsy, 2014).
 */
export function halfSquareCut(size: Finished, seam: Length, way: HalfSquareWay = 2): Cut {
  switch (way) {
    case 2:
      return cut(atLeast({ whole: size + 2 * seam, roots: seam }));
    case 4:
      return cut(atLeast({ whole: 2 * seam, roots: size + 2 * seam }));
    case 8:
      return cut(atLeast({ whole: 2 * size + 4 * seam, roots: 2 * seam }));
  }
}

/** What half-square triangles from two such squares finish at, rounded down; zero or less where nothing is left. */
export function halfSquareFinished(square: Cut, seam: Length, way: HalfSquareWay = 2): Finished {
  switch (way) {
    case 2:
      return finished(atMost({ whole: square - 2 * seam, roots: -seam }));
    case 4:
      // (square − 2 s) ÷ √2 − 2 s
      return finished(atMost({ whole: -4 * seam, roots: square - 2 * seam, parts: 2 }));
    case 8:
      return finished(atMost({ whole: square - 4 * seam, roots: -2 * seam, parts: 2 }));
  }
}

/** Two right-angled triangles with such legs, sewn along the long side: as from a square cut once. */
export function halfSquareOfTriangles(leg: Cut, seam: Length): Finished {
  return halfSquareFinished(leg, seam, 2);
}
