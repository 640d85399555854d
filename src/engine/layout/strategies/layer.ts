import {
  acrossOf,
  type Filling,
  isFreeAlong,
  leastAcross,
  leastAlong,
  longestAlong,
  place,
  type Strategy,
} from "../filling.ts";
import { mostPieces } from "../knapsack.ts";
import type { Face } from "../stock.ts";
import type { Twig } from "../twig.ts";

/** A row of pieces of one thickness across the region, chosen by a knapsack; the rest is filled below or beside it. */
export const layer: Strategy = (filling, width, height) => {
  let best: Row | null = null;
  for (const beside of [true, false]) {
    const deep = beside ? height : width;
    const long = beside ? width : height;
    for (const thickness of thicknesses(filling, beside, deep)) {
      const row = bestRow(filling, { beside, thickness, long, deep });
      if (row !== null && (best === null || row.score > best.score)) best = row;
    }
  }
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
  readonly faces: readonly Face[];
  /** What is saved per step² of the row. */
  readonly score: number;
};

const tries = 5;

/** A few thicknesses that pieces still in the heap have, and the whole depth if any could be so thick. */
function thicknesses(filling: Filling, beside: boolean, deep: number): number[] {
  const { faces, random, stock, pool } = filling;
  const found = new Set<number>();
  for (let look = 0; look < tries * 4 && found.size < tries; look++) {
    const face = faces[random.below(faces.length)];
    if (face === undefined) break;
    const free = face.along === (beside ? "height" : "width");
    const thick = free ? Math.min(deep, pool.reach(face.lot)) : acrossOf(face, beside);
    if (thick < stock.smallest || pool.supply(face, stock.smallest) <= 0) continue;
    if (fitsDepth(thick, deep, stock.smallest)) found.add(thick);
    else if (leastAcross(face, beside) <= deep && deep <= thick) found.add(deep);
  }
  return [...found];
}

function fitsDepth(thick: number, deep: number, smallest: number): boolean {
  return thick === deep || thick <= deep - smallest;
}

/** Which of the pieces that can be so thick make the best row, and how well it would do. */
function bestRow(filling: Filling, shape: Shape): Row | null {
  const faces = candidates(filling, shape);
  if (faces.length === 0) return null;
  const slack = filling.stock.stepsPerInch;
  const lengths = faces.map((face) => longestAlong(filling, face, shape.beside));
  const values = faces.map((face, index) => worth(filling, shape, face, lengths[index] as number));
  filling.knapsack.solve(lengths, values, shape.long + slack);
  const length = bestLength(filling, shape, faces);
  if (length === 0) return null;
  const mask = filling.knapsack.chosen[length] as number;
  const chosen = faces.filter((_, index) => mask & (1 << index));
  const saved = (filling.knapsack.value[length] as number) - gapCost(filling, shape, shape.long - length);
  const area = shape.thickness * shape.long;
  const closes = shape.thickness === shape.deep ? 0.05 : 0;
  return { ...shape, faces: chosen, score: saved / area + closes + filling.random.next() * 0.12 };
}

function candidates(filling: Filling, { beside, thickness, long }: Shape): Face[] {
  const { pool, random } = filling;
  const fitting: Face[] = [];
  const seen = new Set<number>();
  const start = random.below(filling.faces.length);
  for (let look = 0; look < filling.faces.length; look++) {
    const face = filling.faces[(start + look) % filling.faces.length] as Face;
    if (thickness > acrossOf(face, beside) || thickness < leastAcross(face, beside)) continue;
    if (leastAlong(face, beside) > long || seen.has(face.lot.index)) continue;
    const need = isFreeAlong(face, beside) ? filling.stock.smallest : thickness;
    const supply = Math.min(pool.supply(face, need), isFreeAlong(face, beside) ? 1 : 6);
    if (supply <= 0) continue;
    seen.add(face.lot.index);
    for (let copy = 0; copy < supply; copy++) fitting.push(face);
  }
  return fitting.length <= mostPieces ? fitting : some(fitting, random.below);
}

function some(faces: Face[], below: (count: number) => number): Face[] {
  for (let at = 0; at < mostPieces; at++) {
    const other = at + below(faces.length - at);
    const face = faces[at] as Face;
    faces[at] = faces[other] as Face;
    faces[other] = face;
  }
  return faces.slice(0, mostPieces);
}

/** What a piece saves in this row: the cloth it stands for and the cost of leaving it out, less what is trimmed. */
function worth(filling: Filling, { beside, thickness }: Shape, face: Face, along: number): number {
  const trim = filling.twigs.leaf(face, beside ? along : thickness, beside ? thickness : along).cost;
  const noise = 0.9 + 0.2 * filling.random.next();
  return (along * thickness + face.lot.leftOut) * noise - trim;
}

function bestLength(filling: Filling, shape: Shape, faces: readonly Face[]): number {
  const { value, chosen } = filling.knapsack;
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let length = 1; length <= shape.long + filling.stock.stepsPerInch; length++) {
    const worthOfSet = value[length] as number;
    if (worthOfSet === Number.NEGATIVE_INFINITY) continue;
    const over = length - shape.long;
    if (over > 0 && giveOf(filling, shape, faces, chosen[length] as number) < over) continue;
    const total = worthOfSet - gapCost(filling, shape, -over);
    if (total > most) {
      most = total;
      best = length;
    }
  }
  return best;
}

/** How much a set can be trimmed shorter in all. */
function giveOf(filling: Filling, { beside }: Shape, faces: readonly Face[], mask: number): number {
  let give = 0;
  for (let index = 0; index < faces.length; index++) {
    if (!(mask & (1 << index))) continue;
    const face = faces[index] as Face;
    give += Math.max(0, longestAlong(filling, face, beside) - leastAlong(face, beside));
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
  const parts = layOut(filling, row);
  if (parts === null) {
    filling.pool.undo(mark);
    return null;
  }
  const used = parts.reduce((total, part) => total + (beside ? part.width : part.height), 0);
  const gap = long - used;
  if (gap > 0) parts.push(beside ? filling.fill(gap, thickness) : filling.fill(thickness, gap));
  const whole = filling.twigs.join(beside, parts);
  if (thickness === deep) return whole;
  const rest = beside ? filling.fill(width, deep - thickness) : filling.fill(deep - thickness, height);
  return filling.twigs.join(!beside, [whole, rest]);
}

function layOut(filling: Filling, row: Row): Twig[] | null {
  const { beside, thickness, long } = row;
  const lengths = row.faces.map((face) => longestAlong(filling, face, beside));
  let over = lengths.reduce((total, length) => total + length, 0) - long;
  const parts: Twig[] = [];
  row.faces.forEach((face, index) => {
    const full = lengths[index] as number;
    const give = Math.min(Math.max(0, over), Math.max(0, full - leastAlong(face, beside)));
    over -= give;
    const along = full - give;
    const [width, height] = beside ? [along, thickness] : [thickness, along];
    if (filling.pool.offers(face, width, height)) parts.push(place(filling, face, width, height));
  });
  const gap = long - parts.reduce((total, part) => total + (beside ? part.width : part.height), 0);
  const closes = gap === 0 || gap >= filling.stock.smallest;
  return closes && parts.length > 0 ? parts : null;
}
