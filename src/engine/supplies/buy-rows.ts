import { type CutPlace, shopStep, stripPack } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";
import { canBeCut, type LayoutNode } from "../layout/index.ts";
import { add, inches, type Length, roundUpTo, type Size } from "../length/index.ts";
import type { BuyRow } from "./types.ts";
import { type Want, wantsOf } from "./wants.ts";

/** Cloth off the bolt is never square at its end: the first crosscut gives up half an inch. Trade practice. */
export const untrueEnd = inches(1, 2);

/**
 * Plain cloth to buy, one row a fabric: enough for every cell and every unit's cloth whose source is `buy`, laid out
 * on cloth `job.clothWidth` wide, with the untrue end, rounded up once to what a shop cuts (1/8 yd, 10 cm).
 *
 * Throws when a cell is wider than that cloth on its shorter side: it ought to have been seamed.
 */
export function buyRows(layout: LayoutNode, job: Job): readonly BuyRow[] {
  return boughtByFabric(layout, job).map(({ fabric, length }) => ({
    use: "plain",
    fabric,
    width: job.clothWidth,
    length,
  }));
}

/** What is cut from one fabric to buy, in the order of the layout's leaves. */
export type Bought = {
  readonly fabric: string;
  readonly wants: readonly Want[];
  /** The wants on their cloth, `key` their index; y is counted from where the untrue end was cut off. */
  readonly places: readonly CutPlace[];
  /** What to buy, the untrue end in it. */
  readonly length: Length;
};

// Laying cloth out takes longer than all else that is asked of a finished layout, and three ask for it.
const laidOut = new WeakMap<LayoutNode, { readonly job: Job; readonly bought: readonly Bought[] }>();

export function boughtByFabric(layout: LayoutNode, job: Job): readonly Bought[] {
  const before = laidOut.get(layout);
  if (before?.job === job) return before.bought;
  const wants = wantsOf(layout, job).filter(({ source }) => source === "buy");
  const fabrics = [...new Set(wants.map(({ fabric }) => fabric))];
  const bought = fabrics.map((fabric) => boughtFrom(fabric, wants, job));
  laidOut.set(layout, { job, bought });
  return bought;
}

function boughtFrom(fabric: string, all: readonly Want[], job: Job): Bought {
  const wants = all.filter((want) => want.fabric === fabric);
  const { places, length: needed } = laidOnBolt(wants, job);
  return { fabric, wants, places, length: shownLength(wants, needed, job) };
}

/** How much to buy for cells given in cut size, off a bolt `job.clothWidth` wide, as `buyRows` reckons it. */
export function boltLength(cells: readonly Size[], job: Job): Length {
  return shownLength(cells, laidOnBolt(cells, job).length, job);
}

function laidOnBolt(wants: readonly Size[], job: Job) {
  const cells = wants.map(({ width, height }, key) => ({ key, width, height }));
  return stripPack(cells, job.clothWidth, (needed) => lengthToBuy(needed, job));
}

function lengthToBuy(needed: Length, job: Job): Length {
  return roundUpTo(add(needed, untrueEnd), shopStep(job.unit));
}

/**
 * A plan's checker knows the row alone and lays the cells out in its own way; where it cannot show that they fit, a
 * little more is bought, so that she need not lay them out as cleverly as we did either.
 */
function shownLength(wants: readonly Size[], needed: Length, job: Job): Length {
  const cells = wants.map(({ width, height }) => ({ width, height, mayTurn: true }));
  let bought = lengthToBuy(needed, job);
  while (!canBeCut(cells, [{ width: job.clothWidth, height: bought }])) {
    bought = add(bought, shopStep(job.unit));
  }
  return bought;
}
