import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { backFor, extraFor, type Style } from "../../src/engine/back/index.ts";
import type { DraftPiece, Job, Piece } from "../../src/engine/cloth/index.ts";
import { drawStep } from "../../src/engine/drawing/index.ts";
import type { LayoutNode } from "../../src/engine/layout/index.ts";
import { areaOf, finished, inches } from "../../src/engine/length/index.ts";
import { makePlan, type Plan } from "../../src/engine/plan/index.ts";
import { type ChosenUnit, chooseUnits, joinsOf } from "../../src/engine/units/index.ts";
import { joinLimit } from "../../src/engine/work/index.ts";
import { wordsFor } from "../../src/words/index.ts";
import { jobFrom } from "./heaps.ts";
import { brokenLaws } from "./laws.ts";
import { randomCases } from "./randomJobs.ts";

// A heap made for each unit: the plan has it, proves it, tells how it is sewn and shows its seams.

type Row = Omit<DraftPiece, "row" | "width" | "height"> & { readonly size: readonly [number, number] };

const ink = { fabric: "Ink", colour: "#26324a" };
const straw = { fabric: "Straw", colour: "#e8d5a0" };
const rust = { fabric: "Rust", colour: "#a5472c" };

function heapOf(rows: readonly (Row | DraftPiece)[]): Job {
  const extra = extraFor("frame", "in");
  const top = { width: inches(40), height: inches(50), method: "frame" as const, extra };
  const pieces = rows.map(
    (row, at): DraftPiece => ("size" in row ? sized(row, at + 1) : { ...row, row: at + 1 }),
  );
  return jobFrom({
    unit: "in",
    top,
    back: backFor(top, extra),
    time: "weekend",
    plain: { name: "Plain" },
    pieces,
  });
}

function sized({ size: [width, height], ...row }: Row, number: number): DraftPiece {
  return { ...row, row: number, width: inches(width * 8, 8), height: inches(height * 8, 8) };
}

const triangles = (count: number, more: Partial<Row> = {}): Row[] =>
  [ink, straw].map((cloth) => ({ kind: "triangle", size: [4.875, 4.875], count, ...cloth, ...more }));

/** Something to stand beside the units. */
const others: readonly Row[] = [
  { kind: "strip", size: [3, 22], count: 5, keep: "cut", fabric: "Moss", colour: "#6f7f4f" },
  { kind: "rectangle", size: [6.5, 9], count: 4, fabric: "Plum", colour: "#5d2e55" },
];

/** `seams`: drawn inside it. `squared`: what it is trimmed to once sewn. */
type Case = {
  readonly pattern: string;
  readonly rows: readonly (Row | DraftPiece)[];
  readonly sewing: string;
  readonly squared: string;
  readonly patches: number;
  readonly seed?: number;
  readonly style?: Style;
};

const cases: readonly Case[] = [
  {
    pattern: "pinwheel",
    rows: triangles(4),
    sewing: "Sew a pinwheel, its parts turned as the drawing shows, from",
    squared: "8½ × 8½ in",
    patches: 8,
  },
  {
    pattern: "broken-dishes",
    rows: triangles(4),
    seed: 2,
    sewing: "Sew broken dishes, its parts turned as the drawing shows, from",
    squared: "8½ × 8½ in",
    patches: 8,
  },
  {
    pattern: "diamond",
    rows: triangles(4),
    seed: 3,
    sewing: "Sew a diamond, its parts turned as the drawing shows, from",
    squared: "8½ × 8½ in",
    patches: 8,
  },
  {
    pattern: "half-square-triangle",
    rows: triangles(1),
    sewing: "Sew a half-square triangle, its parts turned as the drawing shows, from",
    squared: "4½ × 4½ in",
    patches: 2,
  },
  {
    pattern: "hourglass",
    rows: triangles(2, { size: [6, 6], grain: "long-side" }),
    sewing: "Sew an hourglass, its parts turned as the drawing shows, from",
    squared: "7¾ × 7¾ in",
    patches: 4,
  },
  {
    pattern: "square-in-square",
    rows: [
      { kind: "square", size: [5, 5], count: 1, ...straw },
      { kind: "triangle", size: [4.25, 4.25], count: 4, ...ink },
    ],
    sewing: "Sew a square in a square, its parts turned as the drawing shows, from",
    squared: "6⅞ × 6⅞ in",
    patches: 5,
  },
  {
    pattern: "pinwheel",
    rows: [
      {
        kind: "half-square-triangle",
        size: [4, 4],
        count: 4,
        fabric: "Ink and straw",
        colour: "#26324a",
      },
    ],
    sewing: "Sew a pinwheel, its parts turned as the drawing shows, from",
    squared: "7½ × 7½ in",
    patches: 8,
  },
  {
    pattern: "four-patch",
    seed: 2,
    rows: [ink, straw].map((cloth): Row => ({ kind: "square", size: [3.5, 3.5], count: 2, ...cloth })),
    sewing: "Sew 2 parts together into a four-patch, one below the other from top to bottom:",
    squared: "6½ × 6½ in",
    patches: 4,
  },
  {
    pattern: "squares",
    seed: 2,
    rows: [ink, straw, rust]
      .map((cloth): Row => ({ kind: "square", size: [3.5, 3.5], count: 1, ...cloth }))
      .concat([
        { kind: "square", size: [3.5, 3.5], count: 1, fabric: "Moss", colour: "#6f7f4f" },
        { kind: "square", size: [3.5, 3.5], count: 1, fabric: "Plum", colour: "#5d2e55" },
      ]),
    sewing: "Sew 5 parts together into a set of squares",
    squared: "",
    patches: 5,
  },
  {
    pattern: "strip-set",
    rows: [ink, straw, rust].map((cloth): Row => ({ kind: "strip", size: [2.5, 12], count: 1, ...cloth })),
    sewing: "Sew 3 parts together into a strip set",
    squared: "",
    patches: 3,
  },
  {
    pattern: "rounds",
    rows: [
      { kind: "block", size: [5.5, 5.5], count: 1, ...straw },
      { kind: "strip", size: [2, 6], count: 2, ...ink },
      { kind: "strip", size: [2, 8.5], count: 2, ...ink },
    ],
    sewing: "Sew 3 parts together into rounds of strips",
    squared: "8½ × 8½ in",
    patches: 5,
  },
  {
    pattern: "slab",
    rows: [{ kind: "crumbs", row: 1, area: areaOf(130 * inches(1) ** 2), ...ink }],
    sewing: "Sew a slab by eye, bit to bit, and press as you go:",
    squared: "6½ × 6½ in",
    patches: 7,
  },
  {
    pattern: "on-point",
    rows: [{ kind: "block", size: [6.5, 6.5], count: 5, ...straw }],
    style: "block-line",
    seed: 2,
    // 6 in of a published chart: 9 3/4 cut twice, 5 1/8 cut once; a little more for what the ruler rounds.
    sewing:
      "Cut the 2 plain squares of 9¾ × 9¾ in corner to corner both ways for the sides and the 2 plain squares of 5¼ × 5¼ in corner to corner once for the ends, so that straight grain lies outside.",
    squared: "9 × 43 in",
    patches: 17,
  },
];

describe.each(cases)(
  "a heap for $pattern, $squared",
  ({ pattern, rows, sewing, squared, patches, seed = 1, style = "all-over" }) => {
    const job = heapOf([...rows, ...others]);
    const plan = makePlan(job, { style, seed, effort: 400 });
    const step = plan.steps.find((made) => (made.kind === "slab" ? "slab" : made.pattern) === pattern);

    it("gives a plan that has it and keeps every law", () => {
      expect(nodesIn(plan.layout).some((node) => patternOf(node) === pattern)).toBe(true);
      expect(brokenLaws(plan, job)).toEqual([]);
    });

    it("is told how it is sewn and to what it is squared up", () => {
      const said =
        step === undefined
          ? ""
          : wordsFor("en-US")
              .step(step, plan)
              .replaceAll(/[\u00a0\u202f\u2009]/gu, " ");
      expect(said).toContain(sewing);
      expect(said).toContain(`Square it up to ${squared}`);
    });

    it("shows its seams", () => {
      expect(step === undefined ? 0 : patchesIn(step.id, plan)).toBe(patches);
    });
  },
);

function nodesIn(node: LayoutNode): readonly LayoutNode[] {
  return node.kind === "join" ? [node, ...node.parts.flatMap(nodesIn)] : [node];
}

function patternOf(node: LayoutNode): string | undefined {
  if (node.kind === "slab") return "slab";
  return node.kind === "join" || node.kind === "unit" ? node.pattern : undefined;
}

function patchesIn(step: string, plan: Plan): number {
  return drawStep(plan, step).shapes.reduce((sum, { patches }) => sum + patches.length, 0);
}

describe("the units of any heap", () => {
  const room = { width: finished(inches(60)), height: finished(inches(12)) };

  const eachChoice = (law: (chosen: readonly ChosenUnit[], job: Job) => void) =>
    fc.assert(
      fc.property(randomCases, fc.integer({ min: 1, max: 3 }), ({ job }, seed) =>
        law(chooseUnits(job, { allOver: false, seed, rooms: [room] }), job),
      ),
      { seed: 1, numRuns: 150 },
    );

  it("take no more than it has, crumbs by what shows of them", () => {
    eachChoice((chosen, job) => {
      for (const piece of job.pieces) {
        const taken = chosen.map((unit) => unit.count * takenOf(piece, unit));
        const has = piece.kind === "crumbs" ? 0.4 * piece.area * piece.count : piece.count;
        expect(taken.reduce((sum, next) => sum + next, 0)).toBeLessThanOrEqual(has);
      }
    });
  });

  it("take no more time than she has, nor more room than there is", () => {
    eachChoice((chosen, job) => {
      const joins = chosen.reduce((sum, { ways: [offer], count }) => sum + count * joinsOf(offer), 0);
      const area = chosen.reduce(
        (sum, { ways: [offer], count }) => sum + count * offer.width * offer.height,
        0,
      );
      expect(joins).toBeLessThanOrEqual(joinLimit(job.time));
      expect(area).toBeLessThanOrEqual(room.width * room.height);
    });
  });

  it("leave alone what is kept back, given away, for the edge or for need", () => {
    eachChoice((chosen, job) => {
      const used = job.pieces.filter((piece) => chosen.some((unit) => takenOf(piece, unit) > 0));
      expect(used.filter(({ use }) => !["yes", "first", "must"].includes(use))).toEqual([]);
    });
  });

  it("take nothing apart that is sewn, and keep a block's points", () => {
    eachChoice((chosen, job) => {
      for (const { ways } of chosen)
        for (const node of ways.flatMap(({ made }) => nodesIn(made))) expect(spoiltIn(node, job)).toEqual([]);
    });
  });
});

function takenOf(piece: Piece, { ways: [{ made, pieces }] }: ChosenUnit): number {
  if (piece.kind !== "crumbs") return pieces.find((taken) => taken.piece === piece.id)?.count ?? 0;
  // A slab is sewn with its allowances and trimmed to them.
  return made.kind === "slab" && made.crumbs === piece.id ? made.width * made.height : 0;
}

const sewnBefore: readonly Piece["kind"][] = ["block", "part-block", "half-square-triangle"];

/** Sewn pieces cut up in a slab, or blocks kept whole in a cell of another size. */
function spoiltIn(node: LayoutNode, job: Job): readonly string[] {
  const rowOf = (id: string) => job.pieces.find((row) => row.id === id);
  if (node.kind === "slab") {
    const cutUp = (node.pieces ?? []).map(({ piece }) => rowOf(piece));
    return cutUp.flatMap((row) => (row !== undefined && sewnBefore.includes(row.kind) ? [row.id] : []));
  }
  const row = node.kind === "piece" ? rowOf(node.piece) : undefined;
  if (node.kind !== "piece" || row === undefined || row.kind === "crumbs" || row.keep !== "whole") return [];
  const [width, height] = node.turned ? [row.height, row.width] : [row.width, row.height];
  const isWhole = node.width === width - 2 * job.seam && node.height === height - 2 * job.seam;
  return isWhole ? [] : [row.id];
}
