import { assert } from "../../length/index.ts";
import { Budget } from "./budget.ts";
import { type Grid, gridOf } from "./marks.ts";
import { bestPrices, fewestSolutions } from "./multipliers.ts";
import { Relaxed } from "./relaxed.ts";
import { type Ground, PartSearch } from "./search.ts";
import { type Sort, sortsOf } from "./sorts.ts";
import { plain, treeOf } from "./tree.ts";
import type { Branch, Filled, Task } from "./types.ts";

/** Some seconds. */
const usualSteps = 2e9;

/**
 * The most that can be cut from, or sewn into, a region by straight full-length seams, with no limit to how often the
 * direction changes, and proof that it is the most: the constrained two-dimensional guillotine knapsack. Searches in
 * rounds, each asking for less than the one before, so that the last does not weigh much that can't be had.
 *
 * `steps`: how much may be weighed, about one for each cut. Where that does not suffice, the best so far and a bound
 * that holds.
 * Sides and values are whole numbers.
 */
export function fillExactly(task: Task, steps = usualSteps): Filled {
  assert(areWhole(task), "sides, copies and values are whole numbers");
  const sorts = sortsOf(task);
  const grid = gridOf(sorts, task.width, task.height);
  const budget = new Budget(steps);
  const found =
    fewestSolutions * grid.cost > steps
      ? { value: 0, bound: roughBound(task, sorts) }
      : searched(groundFor(task, { sorts, grid, budget }), budget);
  const tree = plain(task.width, task.height);
  return { tree, ...found, proved: found.value === found.bound, steps: budget.spent };
}

function areWhole({ width, height, items, smallest = 1 }: Task): boolean {
  const numbers = items.flatMap((item) => [item.width, item.height, item.copies, item.value]);
  return [width, height, smallest, ...numbers].every((number) => Number.isSafeInteger(number) && number >= 0);
}

/** All there is, or the best of it all over the region. */
function roughBound({ width, height }: Pick<Task, "width" | "height">, sorts: readonly Sort[]): number {
  const all = sorts.reduce((sum, { value, copies }) => sum + value * copies, 0);
  const densest = sorts.map(({ value, faces }) => {
    const [face] = faces;
    return face === undefined ? 0 : (value * width * height) / (face.width * face.height);
  });
  return Math.min(all, Math.floor(Math.max(0, ...densest)));
}

type Means = { readonly sorts: readonly Sort[]; readonly grid: Grid; readonly budget: Budget };

function groundFor(task: Task, { sorts, grid, budget }: Means): Ground {
  const relaxed = new Relaxed(sorts, grid);
  const prices = bestPrices(relaxed, sorts, grid.cost, budget);
  return { smallest: 1, ...task, sorts, relaxed, prices };
}

type Found = { readonly value: number; readonly tree?: Branch; readonly bound: number };

function searched(ground: Ground, budget: Budget): Found {
  const most = Math.min(Math.floor(ground.prices.bound), roughBound(ground, ground.sorts));
  let found: Found = { value: 0, bound: most };
  for (let gap = Math.max(1, Math.round(most / 500)); found.value < found.bound; gap *= 2) {
    const least = Math.max(found.value + 1, most - gap);
    const search = new PartSearch(ground, least, budget);
    search.run();
    found = withFound(found, search, { ground, least });
    if (!search.isExhausted) break;
  }
  return found;
}

type Asked = { readonly ground: Ground; readonly least: number };

function withFound(before: Found, search: PartSearch, { ground, least }: Asked): Found {
  const { best, parts, isExhausted, open } = search;
  const counts = best < 0 ? 0 : (parts.value[best] ?? 0);
  const { value, ...tree } =
    counts > before.value ? { value: counts, tree: treeOf(best, ground, parts, ground.sorts) } : before;
  // Whatever counts at least `least` is weighed; what is not may still count one less.
  const unseen = isExhausted ? least - 1 : Math.max(least - 1, Math.floor(open));
  const bound = isExhausted && value >= least ? value : Math.max(value, Math.min(before.bound, unseen));
  return { ...tree, value, bound };
}
