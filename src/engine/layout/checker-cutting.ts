import type { Size } from "../length/index.ts";

/** A rectangle to cut, in cut size. `mayTurn`: its print has no up. */
export type ToCut = Size & { readonly mayTurn: boolean };

/** Up to here every order of guillotine cuts is tried. */
export const provedUpTo = 9;
/** Beyond this many cells from one cloth nothing is shown: no back has them. */
const mostToCut = 1_500;
/** How much trying is worth it: cells placed, over all attempts. */
const placements = 60_000;

/**
 * Can all these be cut from these cloths by straight cuts right across what is left each time (guillotine cuts)?
 * Up to nine: proved either way. Beyond: true only where a way was found, so that false means "not shown".
 */
export function canBeCut(wanted: readonly ToCut[], cloths: readonly Size[]): boolean {
  if (wanted.length === 0) return true;
  if (wanted.length > mostToCut || total(wanted) > total(cloths)) return false;
  if (!wanted.every((one) => cloths.some((cloth) => fits(one, cloth)))) return false;
  if (wanted.length <= provedUpTo) return isCutExactly(wanted, cloths);
  return isCutByTrying(wanted, cloths);
}

type Box = { readonly width: number; readonly height: number };

function total(sizes: readonly Box[]): number {
  return sizes.reduce((sum, { width, height }) => sum + width * height, 0);
}

function fits(one: ToCut, room: Box): boolean {
  const upright = one.width <= room.width && one.height <= room.height;
  return upright || (one.mayTurn && one.height <= room.width && one.width <= room.height);
}

// ---- Every order: sets of cells are bit masks; for each set, the smallest boxes it can be cut from.

function isCutExactly(wanted: readonly ToCut[], cloths: readonly Size[]): boolean {
  const all = 2 ** wanted.length - 1;
  let reached = new Set([0]);
  for (const cloth of cloths) {
    const cuttable = boxesOfSets(wanted, cloth).flatMap((boxes, set) => (boxes.length > 0 ? [set] : []));
    const next = new Set(reached);
    for (const before of reached) {
      for (const set of cuttable) if ((before & set) === 0) next.add(before | set);
    }
    reached = next;
    if (reached.has(all)) return true;
  }
  return false;
}

/** For each set, by its mask: the boxes no larger than the cloth that it can be cut from, none within another. */
function boxesOfSets(wanted: readonly ToCut[], cloth: Size): Box[][] {
  const boxes: Box[][] = [[]];
  for (let set = 1; set < 2 ** wanted.length; set += 1) {
    const alone = Math.log2(set);
    const one = Number.isInteger(alone) ? wanted[alone] : undefined;
    const found = one === undefined ? joined(set, boxes) : orientations(one);
    boxes.push(smallestOnly(found, cloth));
  }
  return boxes;
}

/** The last cut that parts this set: every split into two, side by side and one above the other. */
function joined(set: number, boxes: readonly Box[][]): Box[] {
  const found: Box[] = [];
  for (let part = (set - 1) & set; part > set - part; part = (part - 1) & set) {
    for (const a of boxes[part] ?? []) {
      for (const b of boxes[set - part] ?? []) {
        found.push({ width: a.width + b.width, height: Math.max(a.height, b.height) });
        found.push({ width: Math.max(a.width, b.width), height: a.height + b.height });
      }
    }
  }
  return found;
}

function orientations({ width, height, mayTurn }: ToCut): Box[] {
  return mayTurn && width !== height
    ? [
        { width, height },
        { width: height, height: width },
      ]
    : [{ width, height }];
}

function smallestOnly(found: readonly Box[], cloth: Size): Box[] {
  const inside = found.filter(({ width, height }) => width <= cloth.width && height <= cloth.height);
  inside.sort((a, b) => a.width - b.width || a.height - b.height);
  const kept: Box[] = [];
  for (const box of inside) {
    if (box.height < (kept.at(-1)?.height ?? Number.POSITIVE_INFINITY)) kept.push(box);
  }
  return kept;
}

// ---- Too many for that: cut greedily, in many orders.

type Rule = {
  /** Which rest of the cloth a cell is cut from: the one it leaves least of. */
  readonly rank: (room: Box, one: Box) => number;
  /** After the cell is cut off a corner: does the first cut run across the whole width of the rest? */
  readonly across: (room: Box, one: Box) => boolean;
};

const ranks: readonly Rule["rank"][] = [
  (room, one) => Math.min(room.width - one.width, room.height - one.height),
  (room, one) => room.width * room.height - one.width * one.height,
  (room, one) => Math.max(room.width - one.width, room.height - one.height),
];

const acrosses: readonly Rule["across"][] = [
  () => true,
  () => false,
  (room, one) => room.width - one.width < room.height - one.height,
  (room, one) => room.width - one.width >= room.height - one.height,
];

const rules: readonly Rule[] = ranks.flatMap((rank) => acrosses.map((across) => ({ rank, across })));

const measures: readonly ((one: ToCut) => number)[] = [
  ({ width, height }) => width * height,
  ({ width, height }) => Math.max(width, height),
  ({ width, height }) => Math.min(width, height),
  ({ width }) => width,
  ({ height }) => height,
  ({ width, height }) => width + height,
];

function isCutByTrying(wanted: readonly ToCut[], cloths: readonly Size[]): boolean {
  const orders = measures.map((measure) => wanted.toSorted((a, b) => measure(b) - measure(a)));
  if (orders.some((order) => rules.some((rule) => isCutInOrder(order, cloths, rule)))) return true;
  // Then the same with a few cells out of their order, always in the same way: no chance enters the answer.
  let seed = 1;
  for (let spent = 0; spent < placements; spent += wanted.length) {
    seed = (seed * 48_271) % 2_147_483_647;
    const order = orders[seed % orders.length] ?? wanted;
    const rule = rules[Math.floor(seed / 7) % rules.length];
    if (rule && isCutInOrder(disturbed(order, seed), cloths, rule)) return true;
  }
  return false;
}

function disturbed(order: readonly ToCut[], seed: number): readonly ToCut[] {
  const cells = [...order];
  let state = seed;
  for (let swap = 0; swap <= seed % 4; swap += 1) {
    state = (state * 48_271) % 2_147_483_647;
    const [from, to] = [state % cells.length, Math.floor(state / cells.length) % cells.length];
    const [moved] = cells.splice(from, 1);
    if (moved) cells.splice(to, 0, moved);
  }
  return cells;
}

function isCutInOrder(order: readonly ToCut[], cloths: readonly Size[], rule: Rule): boolean {
  const rooms: Box[] = cloths.map(({ width, height }) => ({ width, height }));
  return order.every((one) => cutOff(one, rooms, rule));
}

/** Takes one cell from the corner of the best rest of cloth, in place. False where it fits none. */
function cutOff(one: ToCut, rooms: Box[], { rank, across }: Rule): boolean {
  let best: { at: number; room: Box; way: Box; rank: number } | undefined;
  for (const way of orientations(one)) {
    for (const [at, room] of rooms.entries()) {
      if (way.width > room.width || way.height > room.height) continue;
      const ranked = rank(room, way);
      if (best === undefined || ranked < best.rank) best = { at, room, way, rank: ranked };
    }
  }
  if (best === undefined) return false;
  rooms.splice(best.at, 1, ...restsOf(best.room, best.way, across(best.room, best.way)));
  return true;
}

function restsOf(room: Box, cell: Box, across: boolean): Box[] {
  const beside = { width: room.width - cell.width, height: across ? cell.height : room.height };
  const below = { width: across ? room.width : cell.width, height: room.height - cell.height };
  return [beside, below].filter(({ width, height }) => width > 0 && height > 0);
}
