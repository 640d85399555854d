import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeJob, madeLength } from "../../../test/made/cloth.ts";
import { randomCases } from "../../../test/plans/randomJobs.ts";
import type { Job } from "../cloth/index.ts";
import { inches } from "../length/index.ts";
import { mended } from "./mended.ts";
import { polish } from "./polish.ts";
import { poolOf } from "./pool.ts";
import { randomFrom } from "./random.ts";
import { type Search, startSearch } from "./search.ts";
import { type Lot, type Stock, stockOf } from "./stock.ts";
import { thinned } from "./thinned.ts";
import type { Leaf, Twig } from "./twig.ts";

const randomJobs = randomCases.map(({ job }) => job);
/** Many strips, and nothing beside them. */
const stripsAlone = fc
  .array(fc.tuple(fc.integer({ min: 16, max: 40 }), fc.integer({ min: 60, max: 140 })), {
    minLength: 60,
    maxLength: 90,
  })
  .map((sizes) =>
    madeJob(
      sizes.map(([wide, long], at) =>
        madeLength(`strip-${at}`, wide / 8, long / 8, { kind: "strip", fabric: `cloth-${at % 9}` }),
      ),
      { floor: inches(3, 2) },
    ),
  );
const anySeed = fc.integer({ min: 1, max: 1_000_000 });

function searched(job: Job, seed: number, moves: number): { stock: Stock; search: Search } {
  const stock = stockOf(job);
  const inch = stock.stepsPerInch;
  const spaces = [
    { width: Math.round(24 * inch), height: Math.round(18 * inch), allows: () => true },
    { width: Math.round(12 * inch), height: Math.round(30 * inch), allows: () => true },
  ];
  const search = startSearch(stock, spaces, { seed, effort: 200, mostLeaves: 60 });
  search.step(moves);
  return { stock, search };
}

function leavesOf(twig: Twig): Leaf[] {
  return twig.kind === "leaf" ? [twig] : twig.parts.flatMap(leavesOf);
}

function expectTiles(twig: Twig): void {
  if (twig.kind === "leaf") return;
  expect(twig.parts.length).toBeGreaterThan(1);
  const along = twig.parts.reduce((sum, part) => sum + (twig.beside ? part.width : part.height), 0);
  expect(along).toBe(twig.beside ? twig.width : twig.height);
  for (const part of twig.parts) {
    expect(twig.beside ? part.height : part.width).toBe(twig.beside ? twig.height : twig.width);
    expectTiles(part);
  }
}

/** How much of each lot the leaves take: pieces, or exact length of a strip that is cut up. */
function taken(leaves: readonly Leaf[], stock: Stock): Map<Lot, number> {
  const used = new Map<Lot, number>();
  for (const { face, width, height } of leaves) {
    if (face === null) continue;
    const along = face.along === "width" ? width : height;
    const amount = face.lot.roll ? along * stock.step + stock.allowances : 1;
    used.set(face.lot, (used.get(face.lot) ?? 0) + amount);
  }
  return used;
}

function expectWithinHeap(leaves: readonly Leaf[], stock: Stock): void {
  for (const [lot, amount] of taken(leaves, stock)) {
    const whole = lot.roll ? Math.max(lot.piece.width, lot.piece.height) : lot.count;
    expect(amount).toBeLessThanOrEqual(whole);
  }
}

describe("search", () => {
  it("tiles its spaces at every moment, and takes no more than there is", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, fc.integer({ min: 0, max: 60 }), (job, seed, moves) => {
        const { stock, search } = searched(job, seed, moves);
        for (const twig of search.best) expectTiles(twig);
        expect(search.best.every(({ holes }) => holes === 0)).toBe(true);
        expectWithinHeap(search.best.flatMap(leavesOf), stock);
        for (const leaf of search.best.flatMap(leavesOf))
          expect(Math.min(leaf.width, leaf.height)).toBeGreaterThanOrEqual(stock.smallest);
      }),
      { numRuns: 25 },
    );
  });

  it("cuts no cell from a strip's last end that is too short for one", () => {
    fc.assert(
      fc.property(stripsAlone, anySeed, (job, seed) => {
        const stock = stockOf(job);
        const spaces = [{ width: 560, height: 600, allows: () => true }];
        const search = startSearch(stock, spaces, { seed, effort: 60, mostLeaves: 500 });
        search.step(60);
        expectWithinHeap(search.best.flatMap(leavesOf), stock);
        for (const leaf of search.best.flatMap(leavesOf))
          expect(Math.min(leaf.width, leaf.height)).toBeGreaterThanOrEqual(stock.smallest);
      }),
      { numRuns: 15 },
    );
  });

  it("never gives up a better layout for a worse one", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const { search } = searched(job, seed, 0);
        let before = search.bestCost;
        for (let turn = 0; turn < 10; turn++) {
          search.step(8);
          expect(search.bestCost).toBeLessThanOrEqual(before);
          before = search.bestCost;
        }
      }),
      { numRuns: 10 },
    );
  });

  it("is, with fewer moves, the beginning of one with more", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const stock = stockOf(job);
        const spaces = [{ width: 300, height: 400, allows: () => true }];
        const [short, long] = [40, 4000].map((effort) => {
          const search = startSearch(stock, spaces, { seed, effort, mostLeaves: 60 });
          search.step(40);
          return search.best;
        });
        expect(short).toEqual(long);
      }),
      { numRuns: 8 },
    );
  });

  it("does the same in one go as in many", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const { search: whole } = searched(job, seed, 60);
        const { search: parts } = searched(job, seed, 0);
        for (let turn = 0; turn < 20; turn++) parts.step(3);
        expect(parts.bestCost).toBe(whole.bestCost);
        expect(parts.best.flatMap(leavesOf).map(({ width }) => width)).toEqual(
          whole.best.flatMap(leavesOf).map(({ width }) => width),
        );
      }),
      { numRuns: 6 },
    );
  });
});

describe("what comes after the search", () => {
  it("mends: one strip in one line is one cell, and nothing else changes", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const { stock, search } = searched(job, seed, 40);
        for (const twig of search.best) {
          const after = mended(twig, stock);
          expectTiles(after);
          expect([after.width, after.height]).toEqual([twig.width, twig.height]);
          expect(area(after)).toBe(area(twig));
        }
        expectWithinHeap(
          search.best.flatMap((twig) => leavesOf(mended(twig, stock))),
          stock,
        );
      }),
      { numRuns: 15 },
    );
  });

  it("thins: no more cells than her time allows, as far as plain cloth can do it", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, fc.integer({ min: 2, max: 30 }), (job, seed, most) => {
        const { stock, search } = searched(job, seed, 40);
        const after = thinned(search.best, stock, most);
        const cells = after.flatMap(leavesOf).reduce((sum, { face }) => sum + (face?.lot.cells ?? 1), 0);
        expect(cells).toBeLessThanOrEqual(most);
        for (const twig of after) expectTiles(twig);
      }),
      { numRuns: 15 },
    );
  });

  it("polishes: the same cells of the same pieces, arranged otherwise", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const { stock, search } = searched(job, seed, 40);
        const clash = (one: string, other: string) => (one === other ? 1 : 0);
        const outline = { left: 10, top: 10, right: 1000, bottom: 1000 };
        const rooms = search.best.map(() => ({ cloth: "plain", outline }));
        const after = polish(search.best, { stock, clash, rooms, random: randomFrom(seed), tries: 60 });
        expect(after.map(({ width, height }) => [width, height])).toEqual(
          search.best.map(({ width, height }) => [width, height]),
        );
        for (const twig of after) expectTiles(twig);
        expect(taken(after.flatMap(leavesOf), stock)).toEqual(taken(search.best.flatMap(leavesOf), stock));
      }),
      { numRuns: 15 },
    );
  });
});

describe("pool", () => {
  it("is as before once everything is taken back", () => {
    fc.assert(
      fc.property(randomJobs, anySeed, (job, seed) => {
        const stock = stockOf(job);
        const pool = poolOf(stock);
        const random = randomFrom(seed);
        const before = pool.cost;
        const mark = pool.mark();
        for (let turn = 0; turn < 30 && stock.faces.length > 0; turn++) {
          const face = stock.faces[random.below(stock.faces.length)];
          if (face === undefined || !pool.offers(face, face.minWidth, face.minHeight)) continue;
          pool.take(face, face.minWidth, face.minHeight);
        }
        pool.undo(mark);
        expect(pool.cost).toBeCloseTo(before, 3);
        for (const face of stock.faces) expect(pool.offers(face, face.minWidth, face.minHeight)).toBe(true);
      }),
      { numRuns: 20 },
    );
  });
});

function area(twig: Twig): number {
  return leavesOf(twig).reduce((sum, leaf) => sum + (leaf.face === null ? 0 : leaf.width * leaf.height), 0);
}
