import { mostPieces } from "../endToEnd.ts";
import { type Filling, longest, place, type Strategy } from "../filling.ts";
import type { Lie, LiesOfLot } from "../lies.ts";
import type { Face, Lot, Stock } from "../stock.ts";
import type { Twig } from "../twig.ts";

/** A row of pieces of one thickness across the region, laid end to end to its length; the rest is filled after. */
export const layer: Strategy = (filling, width, height) => {
  const across = bestOf(filling, true, width, height);
  const down = bestOf(filling, false, height, width);
  const best = across !== null && (down === null || across.score >= down.score) ? across : down;
  return best === null ? null : sew(filling, best, width, height);
};

type Shape = {
  /** The row runs left to right. */
  readonly beside: boolean;
  readonly thickness: number;
  readonly long: number;
  /** How deep the region is, the row included. */
  readonly deep: number;
};

type Row = Shape & {
  readonly lies: readonly Lie[];
  /** What is saved per step² of the row. */
  readonly score: number;
};

const tries = 4;

function bestOf(filling: Filling, beside: boolean, long: number, deep: number): Row | null {
  let best: Row | null = null;
  for (const thickness of thicknesses(filling, beside, deep)) {
    best = bestRow(filling, { beside, thickness, long, deep }, best);
  }
  return best;
}

/** A few thicknesses that pieces still in the heap have, and the whole depth if any could be so thick. */
function thicknesses(filling: Filling, beside: boolean, deep: number): number[] {
  const { stock } = filling;
  const found: number[] = [];
  for (let look = 0; look < tries * 4 && found.length < tries; look++) {
    const face = anyFace(filling);
    if (face === null) continue;
    const free = face.along === (beside ? "height" : "width");
    const most = beside ? face.maxHeight : face.maxWidth;
    const thick = free ? Math.min(deep, reachOf(filling, face.lot), most) : most;
    const least = beside ? face.minHeight : face.minWidth;
    const fits = thick === deep || thick <= deep - stock.smallest;
    const chosen = fits ? thick : least <= deep && deep <= thick ? deep : 0;
    if (chosen >= stock.smallest && !found.includes(chosen)) found.push(chosen);
  }
  return found;
}

/** A face of something that is left, null where the look was in vain. */
function anyFace({ dense, faces, pool, random }: Filling): Face | null {
  if (dense) {
    const lot = pool.open[random.below(pool.open.length)];
    return lot?.faces[random.below(lot.faces.length)] ?? null;
  }
  const face = faces[random.below(faces.length)];
  return face !== undefined && pool.isOpen(face.lot) ? face : null;
}

/** What a strip that lies across the row can still be cut to. */
function reachOf({ dense, pool }: Filling, lot: Lot): number {
  return dense && !lot.roll ? Number.POSITIVE_INFINITY : pool.reach(lot);
}

/** The best row of the pieces that can be so thick, if it does better than `best`; else that one. */
function bestRow(filling: Filling, shape: Shape, best: Row | null): Row | null {
  const { candidates, ends, random } = filling;
  const { long, thickness, deep } = shape;
  collect(filling, shape);
  if (candidates.count === 0) return best;
  ends.lay(candidates.lengths, candidates.count, { wanted: long, most: long + slack(filling.stock) });
  const length = bestLength(filling, shape);
  if (length === 0) return best;
  const mask = ends.chosen(length);
  const saved = candidates.worth(mask) - gapCost(filling, shape, long - length);
  const closes = thickness === deep ? 0.05 : 0;
  const score = saved / (thickness * long) + closes + random.next() * (filling.dense ? 0.04 : 0.12);
  if (best !== null && score <= best.score) return best;
  return { ...shape, lies: candidates.chosen(mask), score };
}

/** As many candidates as the row's length can use, strips laid across it last. */
function collect(filling: Filling, shape: Shape): void {
  const { candidates, stock } = filling;
  const { firm, loose } = shape.beside ? filling.beside : filling.below;
  const known = firm(shape.thickness);
  const enough = Math.min(mostPieces, 8 + Math.ceil(shape.long / (2.5 * stock.stepsPerInch)));
  if (filling.dense && filling.pool.open.length < known.length + loose.length) {
    collectOpen(filling, shape, enough);
    return;
  }
  const share = Math.ceil((enough * known.length) / (known.length + loose.length || 1));
  candidates.count = 0;
  gather(filling, shape, known, loose.length === 0 ? enough : Math.max(share, enough - 6));
  gather(filling, shape, loose, enough);
}

/** The same where little is left: only what is. */
function collectOpen(filling: Filling, shape: Shape, enough: number): void {
  const { candidates, pool } = filling;
  const { ofLots } = shape.beside ? filling.beside : filling.below;
  const { length } = pool.open;
  candidates.count = 0;
  if (length === 0) return;
  const start = filling.random.below(length);
  for (let look = 0; look < length && candidates.count < enough; look++) {
    const lot = pool.open[(start + look) % length] as Lot;
    const { firm, loose } = ofLots[lot.index] as LiesOfLot;
    for (const lie of firm) offer(filling, shape, lie, enough);
    for (const lie of loose) offer(filling, shape, lie, enough);
  }
}

/** From a place that chance chooses, in strides, so that the same pieces don't always come together. */
function gather(filling: Filling, shape: Shape, known: readonly Lie[], enough: number): void {
  const { length } = known;
  if (length === 0) return;
  const stride = prime % length || 1;
  let at = filling.random.below(length);
  for (let look = 0; look < length && filling.candidates.count < enough; look++) {
    offer(filling, shape, known[at] as Lie, enough);
    at += stride;
    if (at >= length) at -= length;
  }
}

// It shares no factor with the length of a shorter list, so that the strides come by every place once.
const prime = 7919;
/** Of one lot no more than this many are candidates for the same row. */
const mostOfOne = 6;

function offer(filling: Filling, { beside, thickness, long }: Shape, lie: Lie, enough: number): void {
  const { candidates, pool, random, twigs } = filling;
  if (lie.leastAlong > long || thickness > lie.across || thickness < lie.leastAcross) return;
  const supply = supplyOf(filling, lie, thickness);
  if (supply === 0) return;
  const along = longest(pool, lie);
  const area = along * thickness;
  const trim = twigs.costOf(lie.face, beside ? along : thickness, beside ? thickness : along);
  const worth = area + lie.lot.leftOut - trim;
  // Most of a strip that gives one cell alone would be cut off.
  if (worth <= 0 && !lie.lot.roll) return;
  for (let copy = 0; copy < supply && candidates.count < enough; copy++) {
    candidates.enter(lie, { along, worth, price: 0.3 * random.next() - worth / area });
  }
}

function supplyOf({ pool }: Filling, lie: Lie, thickness: number): number {
  if (lie.freeAlong) return pool.reach(lie.lot) >= lie.leastAlong ? 1 : 0;
  return Math.min(mostOfOne, pool.supply(lie.face, thickness));
}

/** The region's own length, else one beside a column, a little more that is trimmed off, or a gap worth filling. */
function bestLength(filling: Filling, shape: Shape): number {
  const { candidates, dense, ends, stock } = filling;
  const { long } = shape;
  if (ends.reaches(long)) return long;
  const matched = dense ? lengthBesideColumn(filling, shape) : 0;
  if (matched > 0) return matched;
  const most = long + slack(stock);
  for (let length = long + 1; length <= most; length++) {
    if (ends.reaches(length) && candidates.give(ends.chosen(length)) >= length - long) return length;
  }
  // A row that is less than a third full is no row.
  for (let length = long - stock.smallest; length > long / 3; length--) {
    if (ends.reaches(length)) return length;
  }
  return 0;
}

/** A length that leaves a gap as wide as something that lies open, so that a column of such pieces closes it; 0: none. */
function lengthBesideColumn(filling: Filling, { beside, long, thickness }: Shape): number {
  const { ends, pool, random, stock } = filling;
  const { ofLots } = beside ? filling.beside : filling.below;
  for (let look = 0; look < looksForColumn && pool.open.length > 0; look++) {
    const lot = pool.open[random.below(pool.open.length)] as Lot;
    const { firm } = ofLots[lot.index] as LiesOfLot;
    const lie = firm[random.below(firm.length)];
    if (lie === undefined || lie.freeAlong || lie.leastAcross > thickness) continue;
    const gap = lie.along;
    if (gap >= stock.smallest && gap <= (long * 2) / 3 && ends.reaches(long - gap)) return long - gap;
  }
  return 0;
}

const looksForColumn = 3;

/** How much too long a row may be before it is trimmed: an inch, in whole steps. */
function slack(stock: Stock): number {
  return Math.floor(stock.stepsPerInch);
}

/** A gap is part cloth, part something that will be found for it; too small a gap can't be closed. Over: trim. */
function gapCost(filling: Filling, { thickness }: Shape, gap: number): number {
  const { smallest, stepsPerInch } = filling.stock;
  if (gap === 0) return 0;
  if (gap < 0) return -gap * thickness * 1.2;
  if (gap < smallest) return Number.POSITIVE_INFINITY;
  return gap * thickness * 0.45 + 2.5 * stepsPerInch * stepsPerInch;
}

/** Takes the row's pieces, trims them to the length, closes the gap, and fills the rest of the region. */
function sew(filling: Filling, row: Row, width: number, height: number): Twig | null {
  const { beside, thickness, long, deep } = row;
  const mark = filling.pool.mark();
  const parts: Twig[] = [];
  const gap = long - layOut(filling, row, parts);
  if (parts.length === 0 || (gap > 0 && gap < filling.stock.smallest)) {
    filling.pool.undo(mark);
    return null;
  }
  if (gap > 0) parts.push(beside ? filling.fill(gap, thickness) : filling.fill(thickness, gap));
  const whole = filling.twigs.join(beside, parts);
  if (thickness === deep) return whole;
  const rest = beside ? filling.fill(width, deep - thickness) : filling.fill(deep - thickness, height);
  return filling.twigs.join(!beside, [whole, rest]);
}

/** Lays the row's pieces, trimmed where they are too long together; gives the length they make. */
function layOut(filling: Filling, row: Row, parts: Twig[]): number {
  const { beside, thickness, long } = row;
  let over = -long;
  for (const lie of row.lies) over += longest(filling.pool, lie);
  let laid = 0;
  for (const lie of row.lies) {
    const full = longest(filling.pool, lie);
    const give = Math.min(Math.max(0, over), Math.max(0, full - lie.leastAlong));
    over -= give;
    const along = full - give;
    // Another cell of this row may have taken what was left of the same strip.
    if (along < lie.leastAlong) continue;
    const width = beside ? along : thickness;
    const height = beside ? thickness : along;
    // One strip may be in the row twice, along it and across: what the first has left may be too short.
    if (along < lie.leastAlong || !filling.pool.offers(lie.face, width, height)) continue;
    parts.push(place(filling, lie.face, width, height));
    laid += along;
  }
  return laid;
}
