import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomCases } from "../../../test/plans/randomJobs.ts";
import { checkDraft, type Draft, type DraftPiece, type Job, type Piece } from "../cloth/index.ts";
import { areaOf, areaToNumber, inches } from "../length/index.ts";
import { type Made, type Taken, unitsFrom } from "../units/index.ts";
import { mostUsable, usableOf } from "./index.ts";

type Row = Omit<DraftPiece, "row">;

function jobOf(rows: readonly Row[], rest: Partial<Draft> = {}): Job {
  const draft: Draft = {
    unit: "in",
    back: { width: inches(61, 2), height: inches(81, 2) },
    time: "any",
    plain: { name: "Unbleached cotton" },
    pieces: rows.map((row, index) => ({ fabric: "Oat", ...row, row: index + 1 })),
    ...rest,
  };
  const checked = checkDraft(draft);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}

function squareInches(rows: readonly Row[], rest: Partial<Draft> = {}): number {
  return areaToNumber(mostUsable(jobOf(rows, rest)), "in");
}

function square(side: number, rest: Partial<Row> = {}): Row {
  return { kind: "square", width: inches(2 * side + 1, 2), height: inches(2 * side + 1, 2), ...rest };
}

// By hand. The layout is 30 x 40; a piece is named by its finished side, half an inch less than it is cut.
describe("no plan can use more than", () => {
  it.each<[string, readonly Row[], number]>([
    ["what her leftovers show once they are sewn", [square(5, { count: 3 }), square(4)], 91],
    ["the back", [square(10, { count: 40 })], 1200],
    [
      "what she does not keep back or give away",
      [square(5), square(8, { use: "keep-back" }), square(8, { use: "give-away" })],
      25,
    ],
    [
      "what is no cloth by the length",
      [square(5), { kind: "length", width: inches(42), height: inches(60) }],
      25,
    ],
    ["what has room", [square(5), square(32, { keep: "whole" })], 25],
    [
      "what has room the right way up",
      [{ kind: "rectangle", width: inches(71, 2), height: inches(20), keep: "whole", direction: "one-way" }],
      0,
    ],
    [
      "what has room on its side",
      [{ kind: "rectangle", width: inches(71, 2), height: inches(41, 2), keep: "whole" }],
      700,
    ],
    [
      "all of a strip that is longer than the back",
      [{ kind: "strip", width: inches(5, 2), height: inches(121, 2) }],
      120,
    ],
    ["two fifths of crumbs", [square(5), { kind: "crumbs", area: areaOf(inches(10) ** 2) }], 65],
    [
      "two fifths of bits under the floor, where that is more than shows of them",
      [square(0.5, { count: 10, keep: "trim" })],
      4,
    ],
  ])("%s", (_, rows, most) => {
    expect(squareInches(rows)).toBeCloseTo(most, 6);
  });

  it("the largest pieces that there is time to sew together", () => {
    const rows = [square(2, { count: 100 }), square(3, { count: 30 })];
    // An afternoon: 40 joins, so 41 pieces.
    expect(squareInches(rows, { time: "afternoon" })).toBeCloseTo(30 * 9 + 11 * 4, 6);
    expect(squareInches(rows, { time: "weekend" })).toBeCloseTo(30 * 9 + 91 * 4, 6);
    expect(squareInches(rows)).toBeCloseTo(30 * 9 + 100 * 4, 6);
  });
});

describe("a unit", () => {
  it("shows no more than is said of the pieces it is made of", () => {
    const sound = fc.property(randomCases, ({ job }) => {
      // As large a back as any unit needs, and as much time.
      const roomy: Job = { ...job, time: "any", back: { width: inches(900), height: inches(900) } };
      for (const { pieces, made } of unitsFrom(roomy)) {
        const most = mostUsable({ ...roomy, pieces: roomy.pieces.flatMap(onlyThese(pieces, made)) });
        expect(shownIn(made)).toBeLessThanOrEqual(most + roundedOff);
      }
    });
    fc.assert(sound, { seed: 1, numRuns: 150 });
  });
});

// A triangle's finished area is rounded down, and there are up to eight in a unit.
const roundedOff = 8;

/** The rows of a unit, with as many as it takes. */
function onlyThese(taken: readonly Taken[], made: Made) {
  return (row: Piece): Piece[] => {
    if (made.kind === "slab" && made.crumbs === row.id) return [row];
    const count = taken.find(({ piece }) => piece === row.id)?.count;
    return count === undefined ? [] : [{ ...row, count }];
  };
}

function shownIn(made: Made): number {
  if (made.kind === "join") return made.parts.reduce((sum, part) => sum + shownIn(part), 0);
  return made.kind === "cloth" ? 0 : made.width * made.height;
}

describe("what a plan uses", () => {
  it("is its share of what could be covered, as an area", () => {
    const job = jobOf([square(5, { count: 4 })]);
    const figures = {
      ...{ covered: 0.75, plain: areaOf(0), plainCells: 0, trimWaste: 0, joins: 0, cuts: 0 },
      ...{ seamLength: inches(0), contrast: null, minutes: [0, 0] as const },
    };
    const { used, most, time } = usableOf(figures, job);
    expect([areaToNumber(used, "in"), areaToNumber(most, "in"), time]).toEqual([75, 100, "any"]);
  });
});
