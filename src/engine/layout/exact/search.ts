import type { Budget } from "./budget.ts";
import { Frontier } from "./frontier.ts";
import type { Prices } from "./multipliers.ts";
import { type Draft, type Made, made, Parts } from "./parts.ts";
import type { Relaxed } from "./relaxed.ts";
import { type Shelf, Shelves } from "./shelves.ts";
import type { Sort } from "./sorts.ts";
import { Tallies } from "./tallies.ts";

/** All that a search goes by. */
export type Ground = {
  readonly width: number;
  readonly height: number;
  readonly smallest: number;
  readonly sorts: readonly Sort[];
  readonly relaxed: Relaxed;
  readonly prices: Prices;
};

/**
 * Joins ever larger parts of smaller ones, the most promising first, and drops what can't lead to an arrangement that
 * counts `least` (Wang 1983; best first with a bound: Viswanathan and Bagchi 1993). Once it is exhausted, every
 * arrangement that counts so much has been weighed.
 */
export class PartSearch {
  readonly parts: Parts;
  isExhausted = false;
  /** The best part so far that fills the region with plain cloth; −1: none. It may count less than `least`. */
  best = -1;
  /** What the part that was looked at last may lead to. */
  open = Number.POSITIVE_INFINITY;
  #wanted: number;
  readonly #ground: Ground;
  readonly #budget: Budget;
  readonly #tallies: Tallies;
  readonly #frontier: Frontier;
  readonly #shelves: Shelves;
  readonly #draft: Draft = { width: 0, height: 0, value: 0, worth: 0, most: 0, made: 0, one: 0, other: 0 };

  constructor(ground: Ground, least: number, budget: Budget) {
    this.#ground = ground;
    this.#wanted = least;
    this.#budget = budget;
    this.#tallies = new Tallies(ground.sorts);
    this.parts = new Parts(this.#tallies, ground.smallest);
    this.#frontier = new Frontier(this.parts);
    this.#shelves = new Shelves(this.parts);
  }

  run(): void {
    this.#laySingles();
    for (;;) {
      const part = this.#frontier.take();
      if (part < 0 || (this.parts.most[part] ?? 0) < this.#wanted) break;
      if (this.parts.beaten[part] === 1) continue;
      this.open = this.parts.most[part] ?? 0;
      if (this.#budget.isSpent || this.parts.isFull) return;
      this.#shelves.put(part);
      this.#joinWithAll(part);
    }
    this.isExhausted = true;
  }

  #laySingles(): void {
    const { sorts, prices, relaxed } = this.#ground;
    for (const [sort, { faces, value }] of sorts.entries()) {
      const worth = prices.worths[sort] ?? 0;
      for (const [face, { width, height }] of faces.entries()) {
        this.#tallies.writeOne(sort, this.parts.tally);
        const most = prices.back + worth + relaxed.around(width, height);
        const single = { width, height, value, worth, most, made: made.single, one: sort, other: face };
        this.#lay(Object.assign(this.#draft, single));
      }
    }
  }

  #lay(draft: Draft): void {
    if (draft.most < this.#wanted) return;
    const part = this.parts.lay(draft);
    if (part < 0) return;
    this.#frontier.put(part);
    const best = this.best < 0 ? 0 : (this.parts.value[this.best] ?? 0);
    if (draft.value <= best || !this.#fillsRegion(draft)) return;
    this.best = part;
    this.#wanted = Math.max(this.#wanted, draft.value + 1);
  }

  #fillsRegion({ width, height }: Draft): boolean {
    const region = this.#ground;
    return [region.width - width, region.height - height].every((gap) => gap === 0 || gap >= region.smallest);
  }

  #joinWithAll(part: number): void {
    const { width, height } = this.#ground;
    const [ownWidth, ownHeight] = [this.parts.width[part] ?? 0, this.parts.height[part] ?? 0];
    const shelves = this.#shelves.all;
    this.#budget.spent += stepsOfShelf * shelves.length;
    for (const shelf of shelves) {
      if (ownWidth + shelf.width <= width) this.#joinBeside(part, shelf, ownHeight);
      if (ownHeight + shelf.height <= height) this.#joinBelow(part, shelf, ownWidth);
    }
  }

  #joinBeside(part: number, shelf: Shelf, ownHeight: number): void {
    const width = (this.parts.width[part] ?? 0) + shelf.width;
    const [first, last] = commonSides(ownHeight, shelf.height, this.#ground.smallest);
    for (let height = first; height <= last && height <= this.#ground.height; height++)
      if (!this.#joinAs({ width, height, made: made.beside }, part, shelf)) return;
  }

  #joinBelow(part: number, shelf: Shelf, ownWidth: number): void {
    const height = (this.parts.height[part] ?? 0) + shelf.height;
    const [first, last] = commonSides(ownWidth, shelf.width, this.#ground.smallest);
    for (let width = first; width <= last && width <= this.#ground.width; width++)
      if (!this.#joinAs({ width, height, made: made.below }, part, shelf)) return;
  }

  /** False where no part of the shelf is worth it: it would be less for a larger size. */
  #joinAs(size: Joined, part: number, shelf: Shelf): boolean {
    const { parts } = this;
    const room = this.#ground.relaxed.around(size.width, size.height);
    const without = this.#ground.prices.back + (parts.worth[part] ?? 0) + room;
    const needed = this.#wanted - without;
    let looked = 0;
    for (const other of shelf.parts) {
      if ((parts.worth[other] ?? 0) < needed) break;
      looked += 1;
      this.#join(size, part, other, without);
    }
    this.#budget.spent += stepsOfJoin * looked;
    return looked > 0;
  }

  #join(size: Joined, one: number, other: number, without: number): void {
    const { parts } = this;
    // Of three in a row, the third is joined to the first two: two rows need not be joined to make one.
    const twoRows = parts.made[one] === size.made && parts.made[other] === size.made;
    if (twoRows || parts.beaten[other] === 1) return;
    if (!this.#tallies.writeSum(parts.tallies, one, other, parts.tally)) return;
    const draft = this.#draft;
    draft.width = size.width;
    draft.height = size.height;
    draft.made = size.made;
    draft.value = (parts.value[one] ?? 0) + (parts.value[other] ?? 0);
    draft.worth = (parts.worth[one] ?? 0) + (parts.worth[other] ?? 0);
    draft.most = without + (parts.worth[other] ?? 0);
    draft.one = one;
    draft.other = other;
    this.#lay(draft);
  }
}

/** Looking at a shelf, and a join, take about as long as so many cuts of the relaxed task. */
const stepsOfShelf = 16;
const stepsOfJoin = 8;

type Joined = { readonly width: number; readonly height: number; readonly made: Made };

/**
 * The sides two parts may be brought to with plain cloth so that they can be joined, first and last: one more `smallest`
 * is a strip sewn on afterwards. Where they differ by less than plain cloth may be wide, both need some.
 */
export function commonSides(one: number, other: number, smallest: number): readonly [number, number] {
  const longer = Math.max(one, other);
  const gap = longer - Math.min(one, other);
  if (gap === 0 || gap >= smallest) return [longer, longer];
  return [longer + smallest, longer + 2 * smallest - 1];
}
