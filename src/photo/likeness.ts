import { colourDifference } from "../engine/cloth/index.ts";
import type { MeasuredPiece } from "./types.ts";

type Cloth = Pick<MeasuredPiece, "colours" | "busyness">;

// How much of a difference in busyness counts as one of color: a print and a plain of its mean are two cloths.
const busynessCounts = 0.5;

/**
 * How far two pieces are from being of one cloth, in the measure of ΔE00: each color of the one against the nearest of
 * the other, by its share, both ways; and how much busier one is.
 */
export function clothDifference(one: Cloth, other: Cloth): number {
  const colours = (towards(one, other) + towards(other, one)) / 2;
  return colours + busynessCounts * Math.abs(one.busyness - other.busyness);
}

function towards(one: Cloth, other: Cloth): number {
  const all = one.colours.reduce((sum, { share }) => sum + share, 0);
  const apart = one.colours.reduce((sum, { lab, share }) => {
    const nearest = Math.min(...other.colours.map((theirs) => colourDifference(lab, theirs.lab)));
    return sum + share * nearest;
  }, 0);
  return all === 0 ? Number.POSITIVE_INFINITY : apart / all;
}

// Two photos of one cloth are up to four apart, cloths that one tells apart at a glance more than ten.
const alike = 6;

export function isOneCloth(one: Cloth, other: Cloth): boolean {
  return clothDifference(one, other) < alike;
}
