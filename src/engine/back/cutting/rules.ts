import { longer, type Rule, type Split, shorter } from "./packing.ts";
import type { Box, Outline } from "./types.ts";

type Order = Rule["order"];
type Fit = Rule["fit"];

const byArea: Order = (outline) => outline.width * outline.height;
const byLongerSide: Order = longer;
const byShorterSide: Order = shorter;
const byOutline: Order = (outline) => outline.width + outline.height;
const byWidth: Order = (outline) => outline.width;
const byHeight: Order = (outline) => outline.height;

const leastArea: Fit = (free, width, height) => free.width * free.height - width * height;
const leastShortSide: Fit = (free, width, height) => Math.min(free.width - width, free.height - height);
const leastLongSide: Fit = (free, width, height) => Math.max(free.width - width, free.height - height);

const largerRestWhole: Split = (free, width, height) =>
  free.width * (free.height - height) >= (free.width - width) * free.height;
const shorterRest: Split = (free, width, height) => free.width - width <= free.height - height;
const longerRest: Split = (free, width, height) => !shorterRest(free, width, height);
const alwaysAcross: Split = () => true;
const alwaysDown: Split = () => false;

const orders = [byArea, byLongerSide, byShorterSide, byOutline, byWidth, byHeight];
const fits = [leastArea, leastShortSide, leastLongSide];
const splits = [largerRestWhole, shorterRest, longerRest, alwaysAcross, alwaysDown];

/** Every way to pack, the most promising first. With one sheet there is no choice among sheets. */
export function rulesFor(sheetCount: number): readonly Rule[] {
  const ways = sheetCount > 1 ? (["first", "best"] as const) : (["first"] as const);
  const plain = orders.flatMap((order) =>
    fits.flatMap((fit) => splits.flatMap((split) => ways.map((sheets) => ({ order, fit, split, sheets })))),
  );
  return [...plain, ...shuffled()];
}

/** Largest first, but not quite: sizes are weighed anew in each round, the same size always alike. */
function shuffled(): readonly Rule[] {
  return Array.from({ length: 40 }, (_, round) => {
    const order: Order = (outline) => byArea(outline) * (0.6 + 0.8 * scatter(outline, round));
    const fit = fits[round % fits.length] ?? leastArea;
    const split = splits[round % splits.length] ?? largerRestWhole;
    return { order, fit, split, sheets: round % 2 === 0 ? "best" : "first" };
  });
}

/** A number from 0 to 1 that depends on nothing but the size and the round. */
function scatter(outline: Outline, round: number): number {
  let mixed = Math.imul(outline.width ^ (round + 1), 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15) ^ outline.height, 0x85ebca77);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae3d);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
}

// A bolt has no end: what counts is how far down a piece comes to lie, then how well it fits there.
const nearestTheStart: Fit = (free, width) => free.y + (free.width - width) / 2 ** 32;
const leastDown: Fit = (free: Box, width, height) => free.y + height + (free.width - width) / 2 ** 32;

/** Ways to lay pieces on a bolt: shelf below shelf, each shelf cut across the whole width. */
export const boltRules: readonly Rule[] = orders.flatMap((order) =>
  [nearestTheStart, leastDown].map((fit) => ({ order, fit, split: alwaysAcross, sheets: "first" as const })),
);
