import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomCases } from "../../../test/plans/randomJobs.ts";
import { type Pool, poolOf } from "./pool.ts";
import { type Face, type Lot, type Stock, stockOf } from "./stock.ts";

const anyStock = randomCases.map(({ job }) => stockOf(job)).filter(({ faces }) => faces.length > 0);
const anyChoices = fc.array(fc.nat(), { maxLength: 80 });

/** The cell that a face gives when nothing is trimmed, a strip's as short as may be. */
function sizeOf(face: Face): [number, number] {
  return [
    face.along === "width" ? face.minWidth : face.maxWidth,
    face.along === "height" ? face.minHeight : face.maxHeight,
  ];
}

/** Takes cells, as the choices have it, until nothing is offered; each odd choice puts the last one back. */
function played(stock: Stock, pool: Pool, choices: readonly number[]): void {
  const taken: Face[] = [];
  for (const choice of choices) {
    const last = choice % 2 === 1 ? taken.pop() : undefined;
    if (last !== undefined) pool.putBack(last, ...sizeOf(last));
    const face = stock.faces[choice % stock.faces.length];
    if (face === undefined || !pool.offers(face, ...sizeOf(face))) continue;
    pool.take(face, ...sizeOf(face));
    taken.push(face);
  }
}

/** Counted anew, lot by lot: which of them can still give their smallest cell. */
function stillGiving(stock: Stock, pool: Pool): Set<Lot> {
  return new Set(stock.faces.filter((face) => pool.offers(face, ...sizeOf(face))).map(({ lot }) => lot));
}

describe("the pool", () => {
  it("holds open just what can still give a cell", () => {
    fc.assert(
      fc.property(anyStock, anyChoices, (stock, choices) => {
        const pool = poolOf(stock);
        played(stock, pool, choices);
        expect(new Set(pool.open)).toEqual(stillGiving(stock, pool));
        expect(pool.open.length).toBe(new Set(pool.open).size);
      }),
      { numRuns: 60 },
    );
  });

  it("is as it was once all is taken back", () => {
    fc.assert(
      fc.property(anyStock, anyChoices, (stock, choices) => {
        const pool = poolOf(stock);
        const before = { cost: pool.cost, open: new Set(pool.open) };
        const mark = pool.mark();
        played(stock, pool, choices);
        pool.undo(mark);
        expect(pool.cost).toBeCloseTo(before.cost, 3);
        expect(new Set(pool.open)).toEqual(before.open);
      }),
      { numRuns: 60 },
    );
  });

  it("goes the same way each time", () => {
    fc.assert(
      fc.property(anyStock, anyChoices, (stock, choices) => {
        const [one, other] = [poolOf(stock), poolOf(stock)];
        for (const pool of [one, other]) played(stock, pool, choices);
        expect(one.open.map(({ index }) => index)).toEqual(other.open.map(({ index }) => index));
      }),
      { numRuns: 20 },
    );
  });
});
