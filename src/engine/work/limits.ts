import type { Job, Time } from "../cloth/index.ts";
import {
  centimetres,
  type DisplayUnit,
  inches,
  type Length,
  length,
  type Size,
  smaller,
} from "../length/index.ts";

/** How many seams fit into the time she gives: an afternoon about 40, a weekend about 120 (common practice). */
export function joinLimit(time: Time): number {
  switch (time) {
    case "afternoon":
      return 40;
    case "weekend":
      return 120;
    case "any":
      return Number.POSITIVE_INFINITY;
  }
}

/**
 * How many seams a plan may have: her time's, or what she wishes to sew of it. Who would sew less gives a weekend six
 * tenths of its seams (so that a plan takes at least about a third less time), and does not take all the time there is.
 */
export function joinsFor({ time, wishes }: Pick<Job, "time" | "wishes">): number {
  if (!wishes.includes("sew-less")) return joinLimit(time);
  return time === "any" ? joinLimit("weekend") : Math.floor(joinLimit(time) * 0.6);
}

/**
 * What a slab of this finished size counts for in her time: bits are sewn by eye and nobody counts them, so a join for
 * each 6 sq in begun (derived: a crumb that shows 2 by 3 in takes one seam). 6 in square 6, 8 in 11, 12 in 24.
 */
export function slabJoins({ width, height }: Size): number {
  const inch = inches(1);
  return Math.ceil((width * height) / (6 * inch * inch));
}

/**
 * How much longer one of two edges may be and still be eased in without a pucker: 1/8 in for each 12 in, never more
 * than 1/2 in on one seam. From memory; no published limit was found. Rounded down.
 */
export function easingLimit(seam: Length): Length {
  const share = length(Math.floor(seam / 96));
  return smaller(share, inches(1, 2));
}

/** A join is long over 18 in, or where more than six seams end on one side of it: common practice. */
export function isLongJoin(long: number, seams: number): boolean {
  return long > inches(18) || seams > 6;
}

/** "One to two inches" is as much as quilters leave on a part beside a long join, to be trimmed once that is sewn. */
export const leftLongIn: Readonly<Record<DisplayUnit, { readonly usual: Length; readonly most: Length }>> = {
  in: { usual: inches(1), most: inches(2) },
  cm: { usual: centimetres(3), most: centimetres(5) },
};
