import { sides } from "./packing.ts";
import type { Outline, Spot } from "./types.ts";

/** Up to this many pieces every guillotine cutting is tried. */
export const few = 8;

/** A rectangle that some pieces can be cut from: one piece, or two smaller such rectangles with a cut between. */
type Made = { readonly width: number; readonly height: number; readonly of: One | Two };
type One = { readonly index: number; readonly turned: boolean };
type Two = { readonly first: Made; readonly second: Made; readonly beside: boolean };

/** For each set of pieces (a bit each): the smallest rectangles they can be cut from, none inside another. */
type Table = readonly (readonly Made[])[];

/**
 * The best guillotine cutting of a few pieces from given sheets: the largest area cut, then the most pieces, then
 * the fewest sheets. Exact: with at most `few` pieces all ways to put rectangles together are gone through.
 */
export function cutFew(sheets: readonly Outline[], outlines: readonly Outline[]): readonly (Spot | null)[] {
  const bound = {
    width: Math.max(0, ...sheets.map((sheet) => sheet.width)),
    height: Math.max(0, ...sheets.map((sheet) => sheet.height)),
  };
  const free = tableOf(outlines, bound);
  const fixed = sheets.some((sheet) => sheet.directed)
    ? tableOf(
        outlines.map((outline) => ({ ...outline, directed: true })),
        bound,
      )
    : free;
  const tables = sheets.map((sheet) => (sheet.directed ? fixed : free));
  return spotsOf(share(sheets, tables, outlines), outlines.length);
}

/** The shortest rectangle at most `width` wide that all pieces can be cut from, with its spots; null: none. */
export function shortestOfFew(
  outlines: readonly Outline[],
  bound: Outline,
): { readonly length: number; readonly spots: readonly (Spot | null)[] } | null {
  const made = tableOf(outlines, bound)[2 ** outlines.length - 1] ?? [];
  const [shortest] = made.toSorted((a, b) => a.height - b.height);
  if (shortest === undefined) return null;
  return { length: shortest.height, spots: spotsOf([shortest], outlines.length) };
}

function tableOf(outlines: readonly Outline[], bound: Outline): Table {
  const table: (readonly Made[])[] = [[]];
  for (let set = 1; set < 2 ** outlines.length; set++) {
    const index = 31 - Math.clz32(set);
    const found: Found = { bound, byWidth: new Map() };
    if (set === 1 << index) addSingle(outlines[index], index, found);
    else addJoined(set, table, found);
    table.push(smallest([...found.byWidth.values()]));
  }
  return table;
}

/** Within the largest sheet, the lowest rectangle of each width. */
type Found = { readonly bound: Outline; readonly byWidth: Map<number, Made> };

function addSingle(outline: Outline | undefined, index: number, found: Found): void {
  if (outline === undefined) return;
  for (const turned of outline.directed ? [false] : [false, true]) {
    const [width, height] = sides(outline, turned);
    if (isWorthKeeping(width, height, found))
      found.byWidth.set(width, { width, height, of: { index, turned } });
  }
}

function addJoined(set: number, table: Table, found: Found): void {
  // Half of the set is enough: the other half is the same pair the other way round.
  for (let part = (set - 1) & set; part > (set ^ part); part = (part - 1) & set) {
    for (const first of table[part] ?? []) {
      for (const second of table[set ^ part] ?? []) {
        addPair(first, second, true, found);
        addPair(first, second, false, found);
      }
    }
  }
}

function addPair(first: Made, second: Made, beside: boolean, found: Found): void {
  const width = beside ? first.width + second.width : Math.max(first.width, second.width);
  const height = beside ? Math.max(first.height, second.height) : first.height + second.height;
  if (!isWorthKeeping(width, height, found)) return;
  found.byWidth.set(width, { width, height, of: { first, second, beside } });
}

function isWorthKeeping(width: number, height: number, { bound, byWidth }: Found): boolean {
  if (width > bound.width || height > bound.height) return false;
  const known = byWidth.get(width);
  return known === undefined || height < known.height;
}

/** Without those that are at least as large both ways as another. */
function smallest(made: readonly Made[]): readonly Made[] {
  let least = Number.POSITIVE_INFINITY;
  return made
    .toSorted((a, b) => a.width - b.width || a.height - b.height)
    .filter((one) => {
      const kept = one.height < least;
      least = Math.min(least, one.height);
      return kept;
    });
}

type Shared = { readonly cut: readonly (Made | null)[]; readonly used: number };

/** Which pieces go to which sheet: over the sheets, the best way to have cut each set of pieces. */
function share(sheets: readonly Outline[], tables: readonly Table[], outlines: readonly Outline[]) {
  let ways = new Map<number, Shared>([[0, { cut: [], used: 0 }]]);
  for (const [index, sheet] of sheets.entries()) {
    ways = withSheet(ways, sheet, tables[index] ?? []);
  }
  let best = 0;
  for (const [set, way] of ways) {
    if (isBetter(set, way.used, { set: best, used: ways.get(best)?.used ?? 0, outlines })) best = set;
  }
  return ways.get(best)?.cut ?? [];
}

function withSheet(ways: ReadonlyMap<number, Shared>, sheet: Outline, table: Table) {
  const onSheet = table.map(
    (made) => made.find((one) => one.width <= sheet.width && one.height <= sheet.height) ?? null,
  );
  const next = new Map<number, Shared>();
  for (const [set, way] of ways) {
    keepFewer(next, set, { cut: [...way.cut, null], used: way.used });
    for (const [more, made] of onSheet.entries()) {
      if (made === null || (more & set) !== 0) continue;
      keepFewer(next, set | more, { cut: [...way.cut, made], used: way.used + 1 });
    }
  }
  return next;
}

function keepFewer(ways: Map<number, Shared>, set: number, way: Shared): void {
  const known = ways.get(set);
  if (known === undefined || way.used < known.used) ways.set(set, way);
}

function isBetter(
  set: number,
  used: number,
  best: { readonly set: number; readonly used: number; readonly outlines: readonly Outline[] },
): boolean {
  const chosen = (mask: number) => best.outlines.filter((_, index) => (mask >> index) & 1);
  const areaOfSet = (mask: number) =>
    chosen(mask).reduce((total, { width, height }) => total + width * height, 0);
  const more = areaOfSet(set) - areaOfSet(best.set) || chosen(set).length - chosen(best.set).length;
  return more > 0 || (more === 0 && used < best.used);
}

function spotsOf(cut: readonly (Made | null)[], count: number): readonly (Spot | null)[] {
  const spots: (Spot | null)[] = Array.from({ length: count }, () => null);
  for (const [sheet, made] of cut.entries()) {
    if (made !== null) settle(made, { sheet, x: 0, y: 0 }, spots);
  }
  return spots;
}

function settle(made: Made, at: Omit<Spot, "turned">, spots: (Spot | null)[]): void {
  const { of } = made;
  if ("index" in of) {
    spots[of.index] = { ...at, turned: of.turned };
    return;
  }
  settle(of.first, at, spots);
  const moved = of.beside ? { x: at.x + of.first.width, y: at.y } : { x: at.x, y: at.y + of.first.height };
  settle(of.second, { sheet: at.sheet, ...moved }, spots);
}
