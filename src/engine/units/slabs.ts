import { type Area, areaOf, type Cut, cut, inches, type Length, toFinished } from "../length/index.ts";

/** Slabs are trimmed to one of three sizes, cut: 6 1/2, 8 1/2 and 12 1/2 in (common practice). */
export const slabSizes: readonly Cut[] = [cut(inches(13, 2)), cut(inches(17, 2)), cut(inches(25, 2))];

/** Odd bits sewn by eye: of 40 to 50 % of their area that shows, the cautious end (common practice). */
const crumbShare = { parts: 2, of: 5 } as const;

/** What shows of like squares sewn to one another: ((s − 2 × seam) ÷ s)² of their cut area, rounded down (derived). */
export function usableOfSquares(side: Cut, seam: Length, count = 1): Area {
  const shows = Math.max(0, toFinished(side, seam));
  return areaOf(shows * shows * count);
}

/** What shows of crumbs of this area: two fifths, rounded down. */
export function usableOfCrumbs(area: Area): Area {
  return areaOf(Math.floor((area * crumbShare.parts) / crumbShare.of));
}

/** How much of her crumbs goes into one slab of this cut size: the other way round, rounded up. */
export function crumbsUsedFor(size: Cut): Area {
  return areaOf(Math.ceil((size * size * crumbShare.of) / crumbShare.parts));
}

/** What shows of strings, under 1 1/2 in wide, sewn side by side: a seam's two allowances off each of both sides. */
export function usableOfString(width: Cut, long: Cut, seam: Length): Area {
  return areaOf(Math.max(0, toFinished(width, seam)) * Math.max(0, toFinished(long, seam)));
}

/** How many slabs of a cut size so much usable area gives: each must be sewn to its cut size and trimmed. */
export function slabsFrom(usable: Area, size: Cut): number {
  return Math.floor(usable / (size * size));
}

/** The largest size that still gives `least` slabs, and how many; null: not even of the smallest. */
export function slabYield(usable: Area, least = 1): { readonly size: Cut; readonly count: number } | null {
  const sizes = slabSizes.map((size) => ({ size, count: slabsFrom(usable, size) }));
  return sizes.findLast(({ count }) => count >= least) ?? null;
}
