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
  const stacks = new Set(site.pieces.flatMap((piece) => stacksOf(piece, most)));
  const others = [...stacks].filter((deep) => deep >= least && deep !== usual);
  return [depth(usual), ...others.sort((one, other) => one - other).map(depth)];
}

/** Area of the leftovers that stand in a row of this depth, each filling it alone or with its like. */
function standingIn(site: Site, deep: number): number {
  return site.pieces.reduce((sum, piece) => sum + columnsOf(piece, deep), 0);
}

const mostStacked = 4;
// Bits of strips fill any row, but nobody wants it made of them.
const stripBits = 0.4;

// Rather a row that needs no trimming, above all none of what can't be trimmed.
const trimmed = 0.7;
const rigid = 1.5;

function columnsOf(piece: SitePiece, deep: number): number {
  const stacked = Math.max(...sidesOf(piece).map((one) => stackArea(piece, one, deep)));
  if (!piece.cut) return stacked;
  const [narrow, long] = [Math.min(piece.width, piece.height), Math.max(piece.width, piece.height)];
  return Math.max(stacked, piece.count * Math.floor(long / deep) * narrow * deep * stripBits);
}

type Side = { readonly side: number; readonly across: number };

function stackArea(piece: SitePiece, { side, across }: Side, deep: number): number {
  for (let alike = 1; alike <= Math.min(mostStacked, piece.count); alike++) {
    const isFilled = alike * side >= deep && alike * (side - piece.trim(side)) <= deep;
    const area = Math.floor(piece.count / alike) * across * deep;
    if (isFilled) return area * (piece.trim(side) === 0 ? rigid : alike * side === deep ? 1 : trimmed);
  }
  return 0;
}

function stacksOf(piece: SitePiece, most: number): number[] {
  return sidesOf(piece).flatMap(({ side }) =>
    Array.from({ length: Math.min(mostStacked, piece.count) }, (_, at) => (at + 1) * side).filter(
      (deep) => deep <= most,
    ),
  );
}

/** A print with an up stands as it is, a strip lies along the row. */
function sidesOf({ width, height, upright, cut }: SitePiece): Side[] {
  const standing = { side: height, across: width };
  const lying = { side: width, across: height };
  if (upright) return [standing];
  if (cut) return [height < width ? standing : lying];
  return [standing, lying];
}
