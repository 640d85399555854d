import type { Budget } from "./budget.ts";
import type { Relaxed } from "./relaxed.ts";
import type { Sort } from "./sorts.ts";

/**
 * What no arrangement can beat. Each copy has a price, which the relaxed task pays when it takes one and gets back for
 * every copy there is: with any prices its most is no less than the task's (Lagrange's relaxation; Held, Wolfe and
 * Crowder 1974). Without prices it would take a good piece over and over.
 */
export type Prices = {
  /** Of the whole region. */
  readonly bound: number;
  /** What one of each sort counts when its price is paid. */
  readonly worths: readonly number[];
  /** What is got back for all copies. */
  readonly back: number;
};

// Prices are whole 256ths, so that sums of them are exact.
const fractions = 256;
const mostRounds = 100;

/** What the search for prices takes at least, in solutions of the relaxed task. */
export const fewestSolutions = 4;

/**
 * Looks for the prices with the least bound, going down against what is taken too often. Afterwards the relaxed task
 * is solved with them. `cost`: of one solution.
 */
export function bestPrices(relaxed: Relaxed, sorts: readonly Sort[], cost: number, budget: Budget): Prices {
  const rounds = Math.min(mostRounds, Math.floor(budget.steps / fewestSolutions / cost));
  const descent = new Descent(relaxed, sorts);
  let goesOn = true;
  while (goesOn && descent.rounds < rounds) goesOn = descent.round();
  relaxed.solve(descent.best.worths);
  relaxed.look();
  // Looking around weighs every cut twice.
  budget.spent += (descent.rounds + 3) * cost;
  return descent.best;
}

class Descent {
  rounds = 0;
  best: Prices = { bound: Number.POSITIVE_INFINITY, worths: [], back: 0 };
  readonly #relaxed: Relaxed;
  readonly #sorts: readonly Sort[];
  #prices: readonly number[];
  #stride = 1;
  #idle = 0;

  constructor(relaxed: Relaxed, sorts: readonly Sort[]) {
    this.#relaxed = relaxed;
    this.#sorts = sorts;
    this.#prices = sorts.map(() => 0);
  }

  /** False: no step is left that could lower the bound. */
  round(): boolean {
    this.rounds += 1;
    const worths = this.#sorts.map(({ value }, sort) => value - (this.#prices[sort] ?? 0));
    const back = this.#sorts.reduce((sum, { copies }, sort) => sum + copies * (this.#prices[sort] ?? 0), 0);
    const bound = this.#relaxed.solve(worths) + back;
    this.#note({ bound, worths, back });
    return this.#step(bound);
  }

  #note(prices: Prices): void {
    const less = this.best.bound - prices.bound;
    if (less > 0) this.best = prices;
    // A bound that falls by less than a ten thousandth stands still: the strides are too long.
    this.#idle = less > prices.bound / 10_000 ? 0 : this.#idle + 1;
    if (this.#idle <= 5) return;
    this.#stride /= 2;
    this.#idle = 0;
  }

  #step(bound: number): boolean {
    const used = this.#relaxed.used();
    const over = this.#sorts.map(({ copies }, sort) => {
      const tooMany = (used[sort] ?? 0) - copies;
      return tooMany < 0 && this.#prices[sort] === 0 ? 0 : tooMany;
    });
    const square = over.reduce((sum, one) => sum + one * one, 0);
    if (square === 0) return false;
    // The least bound is not known; a little under the best one so far does as well.
    const stride = (this.#stride * (bound - 0.97 * this.best.bound)) / square;
    this.#prices = this.#sorts.map(({ value }, sort) => {
      const price = (this.#prices[sort] ?? 0) + stride * (over[sort] ?? 0);
      return Math.max(0, Math.min(value, Math.round(price * fractions) / fractions));
    });
    return true;
  }
}
