import type { SizedPiece } from "../cloth/index.ts";
import { type Cut, type Finished, type Length, length, smaller } from "../length/index.ts";

/** A unit's own cell. */
type Unit = { readonly pattern: string; readonly width: Finished; readonly height: Finished };
type Part = Pick<SizedPiece, "kind" | "width"> & { readonly count: number };

/**
 * How long the seams inside a unit are together as they are sewn, raw edge to raw edge; diagonals to the nearest whole
 * unit. `parts`: the pieces it is made of, with their own cut widths. Two triangles share one diagonal; an hourglass has
 * two half ones and a whole one; four half-square triangles two short seams and one across, and each pair of loose
 * triangles its diagonal; in a square in a square each corner is sewn along a side of the centre.
 */
export function seamLengthInside(unit: Unit, parts: readonly Part[], seam: Length): Length {
  const { pattern, width } = unit;
  switch (pattern) {
    case "on-point":
      return inLine(unit, parts, seam);
    case "half-square-triangle":
      return diagonal(width + 2 * seam);
    case "hourglass":
      return length(2 * diagonal(width + 2 * seam));
    case "square-in-square":
      return length(4 * centreOf(parts));
    default:
      return aboutCentre(width, loosePairs(parts), seam);
  }
}

function inLine({ width, height }: Unit, parts: readonly Part[], seam: Length): Length {
  const blocks = parts.reduce((sum, { count }) => sum + count, 0);
  const across = diagonal(smaller(width, height) + 2 * seam);
  return length((2 * blocks + 2) * (parts[0]?.width ?? 0) + (blocks - 1) * across);
}

function diagonal(side: number): Length {
  return length(Math.round(Math.SQRT2 * side));
}

function aboutCentre(width: Finished, pairs: number, seam: Length): Length {
  const quarter = width / 2 + 2 * seam;
  return length(Math.round(2 * quarter) + width + 2 * seam + pairs * diagonal(quarter));
}

function loosePairs(parts: readonly Part[]): number {
  const loose = parts.filter(({ kind }) => kind === "triangle");
  return loose.reduce((sum, { count }) => sum + count, 0) / 2;
}

function centreOf(parts: readonly Part[]): Cut | 0 {
  return parts.find(({ kind }) => kind !== "triangle")?.width ?? 0;
}
