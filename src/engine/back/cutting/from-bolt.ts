import { assert, type Length, length } from "../../length/index.ts";
import { few, shortestOfFew } from "./few.ts";
import { placeOf } from "./from-lengths.ts";
import { longer, pack, type Rule, shorter, sides } from "./packing.ts";
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
  const shortest = shortestLaid(cells, {
    width,
    height: Math.min(upright.length, shelved(cells, width).length),
  });
  const same = bought(length(upright.length)) <= bought(length(shortest.length));
  const laid = same ? { ...upright, spots: turnedBack(upright.spots, cells) } : shortest;
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

function laidBy(rule: Rule, cells: readonly Outline[], bolt: Outline): Laid {
  const spots = pack([bolt], cells, rule);
  return { length: usedLength(cells, spots), spots };
}

/** How far the last cell reaches; endless when one is not placed. */
function usedLength(cells: readonly Outline[], spots: readonly (Spot | null)[]): number {
  return cells.reduce((least, cell, index) => {
    const spot = spots[index] ?? null;
    if (spot === null) return Number.POSITIVE_INFINITY;
    return Math.max(least, spot.y + sides(cell, spot.turned)[1]);
  }, 0);
}

/** `known`: the cloth's width and a length that is known to be enough. */
function shortestLaid(cells: readonly Outline[], known: Outline): Laid {
  const exact = cells.length <= few ? shortestOfFew(cells, known) : null;
  return exact ?? narrowed(cells, known);
}

// An eighth of an inch is below anything a shop cuts.
const fineEnough = 1016;

/** Shelves first, then ever shorter cloth, halving what is left between the shortest possible and the best known. */
function narrowed(cells: readonly Outline[], known: Outline): Laid {
  let best = shelved(cells, known.width);
  let least = leastLength(cells, known.width);
  while (best.length - least > fineEnough) {
    const tried = Math.floor((best.length + least) / 2);
    const found = laidWithin(cells, { width: known.width, height: tried });
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
