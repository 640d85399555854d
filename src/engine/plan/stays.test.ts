import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heaps, jobOf } from "../../../test/plans/heaps.ts";
import { randomCases } from "../../../test/plans/randomJobs.ts";
import { type Style, styles } from "../back/index.ts";
import { type Job, wishes } from "../cloth/index.ts";
import {
  checkLayout,
  heldStays,
  leavesOf,
  type Path,
  type PlacedLeaf,
  withoutGivers,
} from "../layout/index.ts";
import { makePlan, type Plan } from "./index.ts";

/** What must be the same of a cell that stays: place, size, what it is of, how it lies. Which copy of a row is no matter. */
function cellOf({ node, x, y }: PlacedLeaf): string {
  const place = [x, y, node.width, node.height].join(" ");
  switch (node.kind) {
    case "piece":
      return `${place} ${node.piece} ${node.turned} ${node.quarter ?? ""}`;
    case "cloth":
      return `${place} ${node.role} ${node.fabric}`;
    case "unit":
      return `${place} ${node.pattern} ${JSON.stringify(node.rotations)} ${JSON.stringify(node.pieces)}`;
    case "slab":
      return `${place} ${node.crumbs} ${JSON.stringify(node.pieces)}`;
  }
}

const cellsOf = (plan: Plan) => leavesOf(plan.layout, plan);
const pathsAt = (plan: Plan, places: readonly number[]): readonly Path[] => {
  const cells = cellsOf(plan);
  return [...new Set(places.map((place) => place % cells.length))].map((at) => cells[at]?.path ?? []);
};

function lost(before: Plan, after: Plan, paths: readonly Path[]): string[] {
  const there = new Set(cellsOf(after).map(cellOf));
  const kept = new Set(paths.map((path) => path.join(" ")));
  return cellsOf(before)
    .filter(({ path }) => kept.has(path.join(" ")))
    .map(cellOf)
    .filter((cell) => !there.has(cell));
}

const replans = fc.record({
  places: fc.array(fc.nat(500), { minLength: 1, maxLength: 6 }),
  seed: fc.integer({ min: 1, max: 9 }),
  effort: fc.integer({ min: 1, max: 60 }),
  wish: fc.option(fc.constantFrom(...wishes)),
});

describe("cells that stay", () => {
  it("survive any seed, effort and wish exactly, and the plan round them can be sewn", () => {
    const survive = fc.property(randomCases, replans, ({ job, style, seed }, again) => {
      const before = makePlan(job, { style, seed, effort: 30 });
      const paths = pathsAt(before, again.places);
      const wished: Job = { ...job, wishes: again.wish === null ? [] : [again.wish] };
      const stays = { layout: before.layout, paths };
      const after = makePlan(wished, { style, seed: again.seed, effort: again.effort, stays });
      expect(checkLayout(after)).toEqual([]);
      expect(lost(before, after, paths)).toEqual([]);
    });
    fc.assert(survive, { seed: 1, numRuns: 60 });
  });

  it.each(styles)("survive on a real heap, in %s", (style) => {
    const job = jobOf(heaps.find((name) => name.endsWith("r.15-s2")) ?? "", "weekend");
    const before = makePlan(job, { style, seed: 1, effort: 150 });
    const again = fc.property(replans, ({ places, seed, effort }) => {
      const paths = pathsAt(before, places);
      const after = makePlan(job, { style, seed, effort, stays: { layout: before.layout, paths } });
      expect(checkLayout(after)).toEqual([]);
      expect(lost(before, after, paths)).toEqual([]);
    });
    fc.assert(again, { seed: 1, numRuns: 8 });
  });

  it("stay again in the plan after that", () => {
    const job = jobOf(heaps.find((name) => name.endsWith("r.5-s1")) ?? "", "weekend");
    const first = makePlan(job, { style: "chunks", seed: 1, effort: 200 });
    const paths = pathsAt(first, [3, 11, 19]);
    const second = makePlan(job, {
      style: "chunks",
      seed: 2,
      effort: 100,
      stays: { layout: first.layout, paths },
    });
    const cells = new Set(
      cellsOf(first)
        .filter(({ path }) => paths.includes(path))
        .map(cellOf),
    );
    const pathsNow = cellsOf(second)
      .filter((cell) => cells.has(cellOf(cell)))
      .map(({ path }) => path);
    const third = makePlan(job, {
      style: "chunks",
      seed: 3,
      effort: 100,
      stays: { layout: second.layout, paths: pathsNow },
    });
    expect(lost(second, third, pathsNow)).toEqual([]);
  });
});

describe("what can't stay any more is let go", () => {
  const job = jobOf(heaps.find((name) => name.endsWith("r.3-s2")) ?? "", "weekend");
  const style: Style = "strippy";
  const plan = makePlan(job, { style, seed: 1, effort: 200 });
  const pieces = cellsOf(plan).filter(({ node }) => node.kind === "piece");
  const stays = { layout: plan.layout, paths: pieces.map(({ path }) => path) };
  const used = pieces[0]?.node.kind === "piece" ? pieces[0].node.piece : "";
  const changed = (change: object) => ({
    ...job,
    pieces: job.pieces.map((piece) => (piece.id === used ? { ...piece, ...change } : piece)),
  });

  it("nothing, where nothing changed", () =>
    expect(heldStays(stays, job)).toEqual({ ...stays, layout: withoutGivers(plan.layout) }));

  it.each([
    ["is left out", { use: "keep-back" as const }],
    ["is smaller than it was", { width: 4064, height: 4064 }],
    ["is none of hers any more", { id: "gone" }],
  ])("a piece that %s", (_, change) => {
    const held = heldStays(stays, changed(change));
    const kept = new Set(held.paths);
    const gone = pieces.filter(({ path }) => !kept.has(path));
    expect(gone.length).toBeGreaterThan(0);
    expect(gone.every(({ node }) => node.kind === "piece" && node.piece === used)).toBe(true);
    expect(checkLayout(makePlan(changed(change), { style, seed: 1, effort: 50, stays }))).toEqual([]);
  });

  it("all, on a back of another size", () => {
    const wider = { ...job, back: { ...job.back, width: job.back.height } };
    expect(heldStays(stays, wider).paths).toEqual([]);
    expect(checkLayout(makePlan(wider, { style, seed: 1, effort: 50, stays }))).toEqual([]);
  });
});
