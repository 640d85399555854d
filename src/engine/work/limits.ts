import type { Time } from "../cloth/index.ts";
import { inches, type Length, length, smaller } from "../length/index.ts";

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
 * How much longer one of two edges may be and still be eased in without a pucker: 1/8 in for each 12 in, never more
 * than 1/2 in on one seam. From memory; no published limit was found. Rounded down.
 */
export function easingLimit(seam: Length): Length {
  const share = length(Math.floor(seam / 96));
  return smaller(share, inches(1, 2));
}
