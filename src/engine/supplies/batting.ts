import { backFor } from "../back/index.ts";
import { assert, inches, type Length, length, type Size, smaller } from "../length/index.ts";

/** Batting for a top: larger by `extra` on each side, but never larger than the back it lies on (common practice). */
export function battingFor(top: Size, extra: Length, back: Size): Size {
  const wanted = backFor(top, extra);
  return { width: smaller(wanted.width, back.width), height: smaller(wanted.height, back.height) };
}

export type Package = Size & {
  readonly name: "craft" | "crib" | "throw" | "twin" | "full" | "queen" | "king";
};

/** Batting as it is packed, small to large. Makers differ by an inch or two. */
export const packages: readonly Package[] = [
  { name: "craft", width: inches(34), height: inches(45) },
  { name: "crib", width: inches(45), height: inches(60) },
  { name: "throw", width: inches(60), height: inches(60) },
  { name: "twin", width: inches(72), height: inches(90) },
  { name: "full", width: inches(81), height: inches(96) },
  { name: "queen", width: inches(90), height: inches(108) },
  { name: "king", width: inches(120), height: inches(120) },
];

/** The smallest package that holds the batting, either way round; null: it has to be joined or cut off the roll. */
export function packageFor({ width, height }: Size): Package | null {
  const holds = (one: Package) =>
    (one.width >= width && one.height >= height) || (one.width >= height && one.height >= width);
  return packages.find(holds) ?? null;
}

/** What to cut so that `needed` is left after a wash that takes `share` of it (0.05 for 5 %). Rounded up. */
export function beforeWash(needed: Length, share: number): Length {
  assert(share >= 0 && share < 1, "cloth does not shrink to nothing");
  return length(Math.ceil(needed / (1 - share)));
}

/** By how much quilting draws a top in, each way: from a published set of four quilts (melgeecrafts.com). */
export const drawIn = { least: 0.022, most: 0.036 } as const;

/** How large a side may be after quilting: from the most drawn in to the least. */
export function afterQuilting(side: Length): readonly [Length, Length] {
  return [length(Math.floor(side * (1 - drawIn.most))), length(Math.ceil(side * (1 - drawIn.least)))];
}
