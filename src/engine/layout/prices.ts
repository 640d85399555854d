import type { Wish } from "../cloth/index.ts";

/** What a cell or a seam costs: how far it is from what a quilter would like. In inches. */
export type Prices = {
  /** Per cell of plain cloth, beside its area. */
  readonly clothCell: number;
  /** Per inch of the side of a square of its area: two cells cost more than one as large as both. */
  readonly clothSide: number;
  readonly trimArea: number;
  readonly trimPiece: number;
  /** Of what is cut off the length of a strip that gives one cell alone, by area. */
  readonly stripEnd: number;
  readonly seam: number;
  /** Each cell cut off a strip; for each inch of its width (two allowances are lost); for each inch short of 5 in. */
  readonly crosscut: number;
  readonly crosscutInch: number;
  readonly shortInch: number;
  /** Plain cloth, for its area; to leave out a little bit, against the usual. */
  readonly clothArea: number;
  readonly bit: number;
};

const usualPrices: Prices = {
  clothCell: 4,
  clothSide: 0,
  trimArea: 1.2,
  trimPiece: 0.7,
  stripEnd: 1,
  seam: 0.25,
  crosscut: 0.5,
  crosscutInch: 1.5,
  shortInch: 0.6,
  clothArea: 1,
  bit: 1,
};

/** What her wishes make of them: seams dearer, plain cloth dearer, little bits not to be left out. */
export function pricesFor(wishes: readonly Wish[]): Prices {
  return Object.assign({}, usualPrices, ...wishes.map((wish) => dearer[wish]));
}

/** How full a back gets. */
type Fullness = {
  /** Leftovers by room. */
  readonly share: number;
  readonly pieces: number;
};

/**
 * All over a back that is filled closely. Where there is clearly more room, `pricesInRoom`. Where many leftovers are just
 * enough a little bit may lie open for some moves until its place is found: in the end all are used all the same. Where
 * there are clearly more, it must not be the little bits that are left over.
 */
export function pricesAllOver(prices: Prices, { share, pieces }: Fullness): Prices {
  if (share <= 1 / clearly) return pricesInRoom(prices);
  const isJustEnough = share < clearly && pieces >= many;
  return isJustEnough ? { ...prices, bit: prices.bit * lightBit } : prices;
}

/**
 * Plain cloth is needed in any case: what is trimmed away is lost for nothing, and a few large cells of it are better
 * than many small ones. Where leftovers are just enough, a trim often saves more cloth than it costs.
 */
export function pricesInRoom(prices: Prices): Prices {
  return {
    ...prices,
    clothSide: 1.5,
    trimArea: prices.trimArea * dearTrim,
    trimPiece: prices.trimPiece * dearPiece,
    stripEnd: prices.stripEnd * dearTrim,
  };
}

const clearly = 1.1 - 1e-9;
// By trial on the dense heaps (docs/decisions/0013).
const dearTrim = 6;
const dearPiece = 4;
const lightBit = 0.6;
const many = 40;

// By trial on the real heaps; they tilt the search and never outweigh what must be.
const dearer: Readonly<Record<Wish, Partial<Prices>>> = {
  "sew-less": { seam: 1.5, crosscut: 1.5 },
  "use-small": { bit: 4 },
  "buy-nothing": { clothArea: 1.5 },
};
