import { type Finished, times } from "../length/index.ts";

/** Quarter turns clockwise; at 0 the first colour of a half-square triangle lies in the upper left corner. */
export type Turn = 0 | 1 | 2 | 3;

/** Four half-square triangles about a centre. */
export const fourPatterns = ["pinwheel", "broken-dishes", "diamond"] as const;
export type FourPattern = (typeof fourPatterns)[number];

/**
 * How the four lie, left to right and top to bottom. In a pinwheel all seams run to the middle and the turns follow
 * each other round; in the other two the seams make a square on its point: of one colour in a diamond, of both by
 * turns in broken dishes.
 */
export const turnsIn: Readonly<Record<FourPattern, readonly [Turn, Turn, Turn, Turn]>> = {
  pinwheel: [1, 2, 0, 3],
  "broken-dishes": [0, 3, 1, 2],
  diamond: [0, 1, 3, 2],
};

/** Twice what one of them finishes at (Seymour Quilters Guild, 2021). */
export function fourFinished(one: Finished): Finished {
  return times(one, 2);
}
