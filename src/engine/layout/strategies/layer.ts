import { type Filling, longest, place, type Strategy } from "../filling.ts";
import { mostPieces } from "../knapsack.ts";
import type { Lie } from "../lies.ts";
import type { Twig } from "../twig.ts";

/** A row of pieces of one thickness across the region, chosen by a knapsack; the rest is filled below or beside it. */
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
    const row = bestRow(filling, { beside, thickness, long, deep });
    if (row !== null && (best === null || row.score > best.score)) best = row;
  }
  return best;
}

/** A few thicknesses that pieces still in the heap have, and the whole depth if any could be so thick. */
function thicknesses(filling: Filling, beside: boolean, deep: number): number[] {
  const { faces, random, stock, pool } = filling;
  const found: number[] = [];
  for (let look = 0; look < tries * 4 && found.length < tries; look++) {
    const face = faces[random.below(faces.length)];
    if (face === undefined) break;
    if (pool.supply(face, stock.smallest) <= 0) continue;
    const free = face.along === (beside ? "height" : "width");
    const most = beside ? face.maxHeight : face.maxWidth;
    const thick = free ? Math.min(deep, pool.reach(face.lot), most) : most;
    const least = beside ? face.minHeight : face.minWidth;
    const fits = thick === deep || thick <= deep - stock.smallest;
    const chosen = fits ? thick : least <= deep && deep <= thick ? deep : 0;
    if (chosen >= stock.smallest && !found.includes(chosen)) found.push(chosen);
  }
  return found;
}

/** Which of the pieces that can be so thick make the best row, and how well it would do. */
function bestRow(filling: Filling, shape: Shape): Row | null {
  const lies = candidates(filling, shape);
  if (lies.length === 0) return null;
  const { pool, knapsack } = filling;
  const lengths = lies.map((lie) => longest(pool, lie));
  const values = lies.map((lie, index) => worth(filling, shape, lie, lengths[index] as number));
  knapsack.solve(lengths, values, shape.long + slack(filling));
  const length = bestLength(filling, shape, lies);
  if (length === 0) return null;
  const mask = knapsack.chosen[length] as number;
  const saved = (knapsack.value[length] as number) - gapCost(filling, shape, shape.long - length);
  const closes = shape.thickness === shape.deep ? 0.05 : 0;
  const score = saved / (shape.thickness * shape.long) + closes + filling.random.next() * 0.12;
  return { ...shape, lies: lies.filter((_, index) => mask & (1 << index)), score };
}

function candidates(filling: Filling, { beside, thickness, long }: Shape): Lie[] {
  const { pool, random, stock } = filling;
  const { firm, loose } = beside ? filling.beside : filling.below;
  const fitting: Lie[] = [];
  const offer = (lie: Lie) => {
    if (lie.leastAlong > long || thickness > lie.across || thickness < lie.leastAcross) return;
    const supply = lie.freeAlong
      ? Math.min(1, pool.supply(lie.face, stock.smallest))
      : Math.min(6, pool.supply(lie.face, thickness));
    for (let copy = 0; copy < supply; copy++) fitting.push(lie);
  };
  const known = firm(thickness);
  for (const lie of known) offer(lie);
  const start = random.below(loose.length || 1);
  for (let look = 0; look < loose.length && fitting.length < 2 * mostPieces; look++) {
    offer(loose[(start + look) % loose.length] as Lie);
  }
  const enough = Math.min(mostPieces, 8 + Math.ceil(long / (2.5 * stock.stepsPerInch)));
  return fitting.length <= enough ? fitting : some(fitting, enough, random.below);
}

function some(lies: Lie[], count: number, below: (count: number) => number): Lie[] {
  for (let at = 0; at < count; at++) {
    const other = at + below(lies.length - at);
    const lie = lies[at] as Lie;
    lies[at] = lies[other] as Lie;
    lies[other] = lie;
  }
  lies.length = count;
  return lies;
}

/** What a piece saves in this row: the cloth it stands for and the cost of leaving it out, less what is trimmed. */
function worth(filling: Filling, { beside, thickness }: Shape, lie: Lie, along: number): number {
  const trim = filling.twigs.costOf(lie.face, beside ? along : thickness, beside ? thickness : along);
  const noise = 0.9 + 0.2 * filling.random.next();
  return (along * thickness + lie.lot.leftOut) * noise - trim;
}

function bestLength(filling: Filling, shape: Shape, lies: readonly Lie[]): number {
  const { value, chosen } = filling.knapsack;
  const { long } = shape;
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  // A row that is less than a third full is no row.
  for (let length = long + slack(filling); length > long / 3; length--) {
    const worthOfSet = value[length] as number;
    if (worthOfSet <= most) continue;
    const total = length === long ? worthOfSet : worthOfSet - gapCost(filling, shape, long - length);
    if (total <= most) continue;
    if (length > long && giveOf(filling, lies, chosen[length] as number) < length - long) continue;
    most = total;
    best = length;
  }
  return best;
}

/** How much too long a row may be before it is trimmed: an inch, in whole steps. */
function slack({ stock }: Filling): number {
  return Math.floor(stock.stepsPerInch);
}

/** How much a set can be trimmed shorter in all. */
function giveOf(filling: Filling, lies: readonly Lie[], mask: number): number {
  let give = 0;
  for (let index = 0; index < lies.length; index++) {
    if (!(mask & (1 << index))) continue;
    const lie = lies[index] as Lie;
    give += Math.max(0, longest(filling.pool, lie) - lie.leastAlong);
  }
  return give;
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
function layOut(filling: Filling, { lies, beside, thickness, long }: Row, parts: Twig[]): number {
  const lengths = lies.map((lie) => longest(filling.pool, lie));
  let over = lengths.reduce((total, length) => total + length, 0) - long;
  let laid = 0;
  lies.forEach((lie, index) => {
    const full = lengths[index] as number;
    const give = Math.min(Math.max(0, over), Math.max(0, full - lie.leastAlong));
    over -= give;
    const along = full - give;
    const [width, height] = beside ? [along, thickness] : [thickness, along];
    if (!filling.pool.offers(lie.face, width, height)) return;
    parts.push(place(filling, lie.face, width, height));
    laid += along;
  });
  return laid;
}
