import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillingProblems, mostBySlicing } from "../../../../test/laws/slicings.ts";
import { fillExactly } from "./fillExactly.ts";
import type { Item, Task } from "./types.ts";

describe("small heaps", () => {
  it("are filled as well as by trying every cut, and the tree shows it", () => {
    const exact = fc.property(tasks(), (task) => {
      const filled = fillExactly(task);
      expect(fillingProblems(task, filled)).toEqual([]);
      expect({ value: filled.value, bound: filled.bound }).toEqual(both(mostBySlicing(task)));
      expect(filled.proved).toBe(true);
    });
    fc.assert(exact, { seed: 1, numRuns: 600 });
  });

  it("have a bound that holds wherever the search is stopped", () => {
    const sound = fc.property(tasks(), fc.integer({ min: 0, max: 4000 }), (task, steps) => {
      const filled = fillExactly(task, steps);
      const most = mostBySlicing(task);
      expect(fillingProblems(task, filled)).toEqual([]);
      expect(filled.value).toBeLessThanOrEqual(most);
      expect(filled.bound).toBeGreaterThanOrEqual(most);
      expect(filled.proved).toBe(filled.value === filled.bound);
    });
    fc.assert(sound, { seed: 2, numRuns: 400 });
  });

  it("are filled the same way twice, in as many steps", () => {
    const same = fc.property(tasks(), fc.integer({ min: 0, max: 4000 }), (task, steps) => {
      expect(fillExactly(task, steps)).toEqual(fillExactly(task, steps));
    });
    fc.assert(same, { seed: 3, numRuns: 50 });
  });

  it("hold as much on their side", () => {
    const lying = fc.property(tasks(), (task) => {
      const turned = { ...swapped(task), items: task.items.map(swapped) };
      expect(fillExactly(turned).value).toBe(fillExactly(task).value);
    });
    fc.assert(lying, { seed: 4, numRuns: 50 });
  });
});

describe("what leaves nothing to look for", () => {
  const item: Item = { width: 3, height: 2, copies: 1, value: 6, turns: false };

  it.each([
    ["no items", []],
    ["an item that counts nothing", [{ ...item, value: 0 }]],
    ["an item of which there is none", [{ ...item, copies: 0 }]],
    ["an item that does not fit as it lies", [{ ...item, width: 2, height: 5 }]],
  ])("is plain: %s", (_, items) => {
    const filled = fillExactly({ width: 5, height: 3, items });
    expect(filled).toMatchObject({
      value: 0,
      bound: 0,
      proved: true,
      tree: { kind: "plain", width: 5, height: 3 },
    });
  });

  it("is the item itself where it fills the region", () => {
    const filled = fillExactly({ width: 3, height: 2, items: [item] });
    expect(filled.tree).toEqual({ kind: "item", item: 0, turned: false, width: 3, height: 2 });
  });
});

describe("plain cloth that would be too narrow", () => {
  // By hand: 4 × 4 and 4 × 3 side by side leave 1 × 4 under the second; at 2 both need 2 more, 6 in all.
  const items = [4, 3].map(
    (height): Item => ({ width: 4, height, copies: 1, value: 4 * height, turns: false }),
  );

  it.each([
    [1, 4, 28],
    [2, 4, 16],
    [2, 5, 12],
    [2, 6, 28],
  ])("is not sewn: at %d, %d high", (smallest, height, value) => {
    expect(fillExactly({ width: 8, height, smallest, items }).value).toBe(value);
  });
});

describe("published problems", () => {
  const { instances } = read<{ instances: readonly Published[] }>("data/guillotine-knapsack-published.json");

  // The optimum of each, and where problem and proof were published, stand beside it in the data.
  it.each(instances)("$name: $optimal, of $source", ({ optimal, ...problem }) => {
    expect(fillExactly(taskOf(problem, false))).toMatchObject({
      value: optimal,
      bound: optimal,
      proved: true,
    });
  });
});

describe("small heaps that were proved by looking at everything", () => {
  const { instances } = read<{ instances: readonly Published[] }>("data/leftovers-small-proved.json");

  // Our own computation, with an exact search of another make.
  it.each(instances)("$name: $optimal", ({ optimal, ...problem }) => {
    expect(fillExactly(taskOf(problem, true))).toMatchObject({ value: optimal, proved: true });
  });
});

describe("small heaps with no cell narrower than can be sewn", () => {
  const { instances } = read<{ instances: readonly Published[] }>("data/leftovers-small-proved.json");
  const { rows } = read<{ rows: readonly Sewable[] }>("raw/sewable.json");
  // Those of twelve pieces take seconds.
  const small = rows.filter(({ name }) => !name.startsWith("small-n12"));

  // Found by looking at everything, in code that shares nothing with this; eighths of an inch, so 8 is 1 in.
  it.each(small)("$name: $sewable", ({ name, sewable }) => {
    const heap = instances.find((one) => one.name === name);
    if (heap === undefined) throw new Error(`${name} is not in the data`);
    expect(fillExactly({ ...taskOf(heap, true), smallest: 8 })).toMatchObject({
      value: sewable,
      proved: true,
    });
  });
});

type Sewable = { readonly name: string; readonly sewable: number };

type Published = {
  readonly name: string;
  readonly source: string;
  readonly W: number;
  readonly H: number;
  readonly items: readonly { w: number; h: number; copies: number; profit?: number }[];
  readonly optimal: number;
};

function read<T>(name: string): T {
  return JSON.parse(readFileSync(join(import.meta.dirname, "../../../../bench", name), "utf8"));
}

function taskOf({ W, H, items }: Pick<Published, "W" | "H" | "items">, turns: boolean): Task {
  const asItem = ({ w, h, copies, profit = w * h }: Published["items"][number]): Item => ({
    ...{ width: w, height: h, copies, turns },
    value: profit,
  });
  return { width: W, height: H, items: items.map(asItem) };
}

function both(number: number) {
  return { value: number, bound: number };
}

function swapped<T extends { readonly width: number; readonly height: number }>(one: T): T {
  return { ...one, width: one.height, height: one.width };
}

/** Up to six pieces; counted by area or otherwise; some may be turned; plain cloth of any width, or of 2 or 3 at least. */
function tasks(): fc.Arbitrary<Task> {
  const side = fc.integer({ min: 1, max: 7 });
  const item = fc.record({
    width: side,
    height: side,
    copies: fc.integer({ min: 1, max: 3 }),
    value: fc.option(fc.integer({ min: 1, max: 30 }), { nil: null }),
    turns: fc.boolean(),
  });
  const region = fc.integer({ min: 1, max: 11 });
  return fc
    .record({
      width: region,
      height: region,
      smallest: fc.constantFrom(1, 1, 2, 3),
      items: fc.array(item, { minLength: 1, maxLength: 5 }),
    })
    .map(({ items, ...rest }) => ({ ...rest, items: atMostSix(items.map(valued)) }));
}

function valued({ value, ...item }: Omit<Item, "value"> & { readonly value: number | null }): Item {
  return { ...item, value: value ?? item.width * item.height };
}

function atMostSix(items: readonly Item[]): Item[] {
  let left = 6;
  return items.map((item) => {
    const copies = Math.min(item.copies, left);
    left -= copies;
    return { ...item, copies };
  });
}
