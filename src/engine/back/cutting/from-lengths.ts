import { length } from "../../length/index.ts";
import { cutFew, few } from "./few.ts";
import { pack, sides } from "./packing.ts";
import { rulesFor } from "./rules.ts";
import type { CutCell, Outline, Sheet, SheetPlace, Spot } from "./types.ts";

/**
 * Cuts cells out of given lengths by cuts from edge to edge (guillotine cuts). Answers in the order of the cells;
 * null: this one could not be placed. Places as much area as it can, then as many cells, on as few sheets, earlier
 * sheets first. With up to eight cells that fit at all it is exact; above that it is the best of a fixed number of
 * ways. Same sheets and cells, same answer; and what it cut from one sheet it can cut again from that sheet alone.
 */
export function cutFrom(sheets: readonly Sheet[], cells: readonly CutCell[]): readonly (SheetPlace | null)[] {
  const within = cells.filter((cell) => sheets.some((sheet) => fits(cell, sheet)));
  const spots = bestSpots(sheets, within);
  const placed = new Map(within.map((cell, index) => [cell, spots[index] ?? null]));
  return cells.map((cell) => {
    const spot = placed.get(cell) ?? null;
    const sheet = spot === null ? undefined : sheets[spot.sheet];
    if (spot === null || sheet === undefined) return null;
    return { ...placeOf(cell, spot), id: sheet.id, copy: sheet.copy };
  });
}

/** Whether the cell alone can be cut from the sheet. */
export function fits(cell: Outline, sheet: Outline): boolean {
  if (cell.width <= sheet.width && cell.height <= sheet.height) return true;
  if (cell.directed || sheet.directed) return false;
  return cell.height <= sheet.width && cell.width <= sheet.height;
}

export function placeOf(cell: CutCell, spot: Spot) {
  const [width, height] = sides(cell, spot.turned);
  return {
    key: cell.key,
    x: length(spot.x),
    y: length(spot.y),
    width: length(width),
    height: length(height),
    turned: spot.turned,
  };
}

function bestSpots(sheets: readonly Outline[], cells: readonly Outline[]): readonly (Spot | null)[] {
  if (sheets.length === 0 || cells.length === 0) return [];
  const packed = bestPacked(sheets, cells);
  if (packed.every((spot) => spot !== null)) return packed;
  return cells.length > few ? refined(sheets, cells, packed) : cutFew(sheets, cells);
}

function bestPacked(sheets: readonly Outline[], cells: readonly Outline[]): readonly (Spot | null)[] {
  let best: readonly (Spot | null)[] = [];
  let bestWorth: Worth = [-1, 0, 0];
  for (const rule of rulesFor(sheets.length)) {
    const spots = pack(sheets, cells, rule);
    const worth = worthOf(spots, cells);
    if (isWorthMore(worth, bestWorth)) [best, bestWorth] = [spots, worth];
    if (worth[1] === cells.length) break;
  }
  return best;
}

type Worth = readonly [area: number, cells: number, sheetsLeft: number];

function worthOf(spots: readonly (Spot | null)[], cells: readonly Outline[]): Worth {
  let [area, count] = [0, 0];
  const used = new Set<number>();
  for (const [index, spot] of spots.entries()) {
    const cell = cells[index];
    if (spot === null || cell === undefined) continue;
    area += cell.width * cell.height;
    count += 1;
    used.add(spot.sheet);
  }
  return [area, count, -used.size];
}

function isWorthMore(a: Worth, b: Worth): boolean {
  return (a[0] - b[0] || a[1] - b[1] || a[2] - b[2]) > 0;
}

/**
 * Takes up one sheet or two neighbours with few cells, adds the largest cells that found no place, and cuts them
 * anew, exactly; keeps what places more.
 */
function refined(
  sheets: readonly Outline[],
  cells: readonly Outline[],
  packed: readonly (Spot | null)[],
): readonly (Spot | null)[] {
  const windows = sheets.flatMap((_, sheet) => [[sheet], [sheet, sheet + 1]]);
  return windows.reduce((spots, window) => recut(window, { sheets, cells, spots }), packed);
}

type Packed = {
  readonly sheets: readonly Outline[];
  readonly cells: readonly Outline[];
  readonly spots: readonly (Spot | null)[];
};

function recut(window: readonly number[], { sheets, cells, spots }: Packed): readonly (Spot | null)[] {
  const within = window.flatMap((sheet) => sheets[sheet] ?? []);
  const chosen = chosenFor(window, within, { sheets, cells, spots });
  const before = chosen.filter((index) => spots[index] !== null);
  if (chosen.length > few || before.length === chosen.length) return spots;
  const found = cutFew(
    within,
    chosen.flatMap((index) => cells[index] ?? []),
  );
  const after = new Map(chosen.map((index, order) => [index, found[order] ?? null]));
  const anew = spots.map(
    (spot, index) => inSheets(after.get(index), window) ?? (after.has(index) ? null : spot),
  );
  return isWorthMore(worthOf(anew, cells), worthOf(spots, cells)) ? anew : spots;
}

/** The cells that lie on the window's sheets, then the largest ones without a place, as many as can be tried. */
function chosenFor(
  window: readonly number[],
  within: readonly Outline[],
  { cells, spots }: Packed,
): readonly number[] {
  const here: number[] = [];
  const nowhere: { readonly index: number; readonly area: number }[] = [];
  for (const [index, cell] of cells.entries()) {
    const spot = spots[index] ?? null;
    if (spot !== null && window.includes(spot.sheet)) here.push(index);
    if (spot === null && within.some((sheet) => fits(cell, sheet))) {
      nowhere.push({ index, area: cell.width * cell.height });
    }
  }
  const largest = nowhere.toSorted((a, b) => b.area - a.area || a.index - b.index);
  return [...here, ...largest.slice(0, Math.max(0, few - here.length)).map(({ index }) => index)];
}

function inSheets(spot: Spot | null | undefined, window: readonly number[]): Spot | null {
  const sheet = spot ? window[spot.sheet] : undefined;
  return spot && sheet !== undefined ? { ...spot, sheet } : null;
}
