import type { Site, SitePiece } from "./site.ts";

/** Of a row: how deep it may be, and how long it is. */
export type Depths = { readonly least: number; readonly most: number; readonly long: number };

/** `full`: of what is wanted of the row, the share that can stand in it. `worth`: the same, less for being far from the wanted depth. */
export type Depth = { readonly deep: number; readonly full: number; readonly worth: number };

/**
 * The depth of a row, near the wanted one, that her leftovers fill best: as many as are wanted stand in it side by
 * side, alone or several alike one above the other, with no strip of plain cloth left along them.
 */
export function naturalDepth(site: Site, wanted: number, depths: Depths): number {
  return bestDepth(site, wanted, depths).deep;
}

export function bestDepth(site: Site, wanted: number, depths: Depths): Depth {
  const all = naturalDepths(site, wanted, depths);
  return all.reduce((best, next) => (next.worth > best.worth ? next : best));
}

/** The wanted depth and every one that some of her leftovers fill, shallow ones first. */
export function naturalDepths(
  site: Site,
  wanted: number,
  { least, most, long }: Depths,
): readonly [Depth, ...Depth[]] {
  const usual = Math.max(least, Math.min(most, wanted));
  const depth = (deep: number): Depth => {
    const full = Math.min(1, Math.min(standingIn(site, deep), long * deep) / (long * usual));
    return { deep, full, worth: full - (0.5 * Math.abs(deep - usual)) / usual };
  };
  const others = heapOf(site).stacks.filter((deep) => deep >= least && deep <= most && deep !== usual);
  return [depth(usual), ...others.map(depth)];
}

/** A heap as it may stand in rows: for each style, and each part of one, the same is asked of hundreds of pieces. */
type Heap = {
  readonly pieces: readonly Standing[];
  /** Depths that some of them fill, shallow ones first. */
  readonly stacks: readonly number[];
  /** What `standingIn` said of a depth. */
  readonly areas: Map<number, number>;
};

type Standing = { readonly piece: SitePiece; readonly sides: readonly Side[] };

const heaps = new WeakMap<Site["pieces"], Heap>();

function heapOf({ pieces }: Site): Heap {
  const known = heaps.get(pieces);
  if (known !== undefined) return known;
  const standing = pieces.map((piece) => ({ piece, sides: sidesOf(piece) }));
  const stacks = [...new Set(standing.flatMap(stacksOf))].sort((one, other) => one - other);
  const heap = { pieces: standing, stacks, areas: new Map() };
  heaps.set(pieces, heap);
  return heap;
}

/** Area of the leftovers that stand in a row of this depth, each filling it alone or with its like. */
function standingIn(site: Site, deep: number): number {
  const { pieces, areas } = heapOf(site);
  const area = areas.get(deep) ?? pieces.reduce((sum, piece) => sum + columnsOf(piece, deep), 0);
  areas.set(deep, area);
  return area;
}

const mostStacked = 4;
// Bits of strips fill any row, but nobody wants it made of them.
const stripBits = 0.4;

// Rather a row that needs no trimming, above all none of what can't be trimmed.
const trimmed = 0.7;
const rigid = 1.5;

function columnsOf({ piece, sides }: Standing, deep: number): number {
  let stacked = Number.NEGATIVE_INFINITY;
  for (const side of sides) stacked = Math.max(stacked, stackArea(piece.count, side, deep));
  if (!piece.cut) return stacked;
  const [narrow, long] = [Math.min(piece.width, piece.height), Math.max(piece.width, piece.height)];
  return Math.max(stacked, piece.count * Math.floor(long / deep) * narrow * deep * stripBits);
}

/** `trim`: how much of it may be trimmed away. */
type Side = { readonly side: number; readonly across: number; readonly trim: number };

function stackArea(count: number, { side, across, trim }: Side, deep: number): number {
  for (let alike = 1; alike <= Math.min(mostStacked, count); alike++) {
    const isFilled = alike * side >= deep && alike * (side - trim) <= deep;
    if (!isFilled) continue;
    const area = Math.floor(count / alike) * across * deep;
    return area * (trim === 0 ? rigid : alike * side === deep ? 1 : trimmed);
  }
  return 0;
}

function stacksOf({ piece, sides }: Standing): number[] {
  const most = Math.min(mostStacked, piece.count);
  return sides.flatMap(({ side }) => Array.from({ length: most }, (_, at) => (at + 1) * side));
}

/** A print with an up stands as it is, a strip lies along the row. */
function sidesOf({ width, height, upright, cut, trim }: SitePiece): Side[] {
  const standing = { side: height, across: width, trim: trim(height) };
  const lying = { side: width, across: height, trim: trim(width) };
  if (upright) return [standing];
  if (cut) return [height < width ? standing : lying];
  return [standing, lying];
}
