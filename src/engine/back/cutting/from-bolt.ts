import { assert, type Length, length } from "../../length/index.ts";
import { few, shortestOfFew } from "./few.ts";
import { placeOf } from "./from-lengths.ts";
import { longer, packAll, type Rule, shorter, sides } from "./packing.ts";
import { boltRules, rulesFor } from "./rules.ts";
import type { CutCell, CutPlace, Outline, Spot } from "./types.ts";

type Laid = { readonly length: number; readonly spots: readonly (Spot | null)[] };

/**
 * Lays cells out on cloth off the bolt, `width` wide after selvages, to be cut by guillotine cuts: x across the
 * cloth, y along it. Gives the length needed, exact and never short. Where the shop sells no more for it
 * (`bought`), every cell lies with its longer side along the cloth: lengthwise grain stretches least.
 *
 * Throws when a cell is wider than the cloth on its shorter side: such a cell ought to have been seamed before.
 */
export function stripPack(
  cells: readonly CutCell[],
  width: Length,
  bought: (needed: Length) => Length = (needed) => needed,
): { readonly length: Length; readonly places: readonly CutPlace[] } {
  for (const cell of cells)
    assert(widthOf(cell) <= width, "cloth to buy is at least as wide as what is cut from it");
  const lengthwise = cells.map(alongTheCloth);
  const upright = shelved(lengthwise, width);
  const isNoMore = (needed: number) => bought(length(upright.length)) <= bought(length(needed));
  // What can't be less in the shop need not be sought.
  const shortest = isNoMore(leastLength(cells, width)) ? upright : shortestLaid(cells, upright.length, width);
  const laid = isNoMore(shortest.length) ? { ...upright, spots: turnedBack(upright.spots, cells) } : shortest;
  return { length: length(laid.length), places: placesOf(cells, laid.spots) };
}

function widthOf(cell: Outline): number {
  return cell.directed ? cell.width : shorter(cell);
}

function alongTheCloth(cell: Outline): Outline {
  return cell.directed ? cell : { width: shorter(cell), height: longer(cell), directed: true };
}

function turnedBack(spots: readonly (Spot | null)[], cells: readonly CutCell[]): readonly (Spot | null)[] {
  return spots.map((spot, index) => {
    const cell = cells[index];
    if (spot === null || cell === undefined) return null;
    return { ...spot, turned: !cell.directed && cell.width > cell.height };
  });
}

function placesOf(cells: readonly CutCell[], spots: readonly (Spot | null)[]): readonly CutPlace[] {
  return cells.map((cell, index) => {
    const spot = spots[index] ?? null;
    assert(spot !== null, "cloth to buy has room for every cell");
    return placeOf(cell, spot);
  });
}

function shelved(cells: readonly Outline[], width: number): Laid {
  const bolt = { width, height: cells.reduce((total, cell) => total + longer(cell), 0) };
  return boltRules
    .map((rule) => laidBy(rule, cells, bolt))
    .reduce((best, next) => (next.length < best.length ? next : best));
}

/** Endless where one finds no place. */
function laidBy(rule: Rule, cells: readonly Outline[], bolt: Outline): Laid {
  const spots = packAll([bolt], cells, rule);
  return spots === null
    ? { length: Number.POSITIVE_INFINITY, spots: [] }
    : { length: usedLength(cells, spots), spots };
}

/** How far the last cell reaches. */
function usedLength(cells: readonly Outline[], spots: readonly Spot[]): number {
  return cells.reduce((least, cell, index) => {
    const { y, turned } = spots[index] as Spot;
    return Math.max(least, y + sides(cell, turned)[1]);
  }, 0);
}

/** `enough`: a length that is known to be. */
function shortestLaid(cells: readonly Outline[], enough: number, width: number): Laid {
  const lying = shelved(cells, width);
  const known = { width, height: Math.min(enough, lying.length) };
  const exact = cells.length <= few ? shortestOfFew(cells, known) : null;
  return exact ?? narrowed(cells, lying, width);
}

// An eighth of an inch is below anything a shop cuts.
const fineEnough = 1016;

/** From shelves on, ever shorter cloth, halving what is left between the shortest possible and the best known. */
function narrowed(cells: readonly Outline[], shelves: Laid, width: number): Laid {
  let best = shelves;
  let least = leastLength(cells, width);
  while (best.length - least > fineEnough) {
    const tried = Math.floor((best.length + least) / 2);
    const found = laidWithin(cells, { width, height: tried });
    if (found === null) least = tried;
    else best = found;
  }
  return best;
}

function leastLength(cells: readonly Outline[], width: number): number {
  const all = cells.reduce((total, cell) => total + cell.width * cell.height, 0);
  const highest = cells.map((cell) =>
    cell.directed || longer(cell) > width ? heightOf(cell) : shorter(cell),
  );
  return Math.max(Math.ceil(all / width), ...highest);
}

function heightOf(cell: Outline): number {
  return cell.directed ? cell.height : longer(cell);
}

function laidWithin(cells: readonly Outline[], cloth: Outline): Laid | null {
  for (const rule of rulesFor(1)) {
    const laid = laidBy(rule, cells, cloth);
    if (laid.length <= cloth.height) return laid;
  }
  return null;
}
