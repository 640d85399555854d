import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Job } from "../../src/engine/cloth/index.ts";
import {
  checkLayout,
  type Edit,
  type LeafNode,
  leavesOf,
  type Placed,
  placedAt,
  type Shift,
  type Shiftable,
  shiftableAt,
} from "../../src/engine/layout/index.ts";
import { inches, length, times } from "../../src/engine/length/index.ts";
import { changePlan, makePlan, type Plan } from "../../src/engine/plan/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { randomCases } from "./randomJobs.ts";

/** Everything that can be moved or resized anywhere in a plan, each once. */
function shiftablesIn(plan: Plan, job: Job): readonly Shiftable[] {
  const all = leavesOf(plan.layout, plan).flatMap(({ path }) => shiftableAt(plan.layout, path, job));
  return [...new Map(all.map((one) => [`${one.path.join(" ")} ${one.along}`, one])).values()];
}

function partAt(plan: Plan, { at }: Pick<Edit, "at">): Placed {
  const placed = placedAt(plan.layout, at, plan);
  if (placed === undefined) throw new Error("a part that is changed by hand is still there");
  return placed;
}

/** What lies in the plan, whatever its sizes and the cloth it is cut from. */
function heapIn({ layout, unused, seam }: Plan): unknown {
  return { cells: leavesOf(layout, { seam }).map(({ node }) => whatIs(node)), unused };
}

function whatIs(node: LeafNode): readonly unknown[] {
  switch (node.kind) {
    case "piece":
      return [node.piece, node.turned, node.quarter];
    case "cloth":
      return [node.fabric];
    case "unit":
      return [node.pattern, node.rotations, node.pieces];
    case "slab":
      return [node.crumbs, node.pieces];
  }
}

function hasShifted(before: Plan, { kind, at, along, by }: Shift, after: Plan): void {
  expect(checkLayout(after)).toEqual([]);
  expect(heapIn(after)).toEqual(heapIn(before));
  const [then, now] = [partAt(before, { at }), partAt(after, { at })];
  const across = along === "width" ? "height" : "width";
  expect(now.node[along] - then.node[along]).toBe(kind === "resize" ? by : 0);
  expect(now.node[across]).toBe(then.node[across]);
  if (kind === "move") {
    const start = along === "width" ? "x" : "y";
    expect(now[start] - then[start]).toBe(by);
    const inside = (plan: Plan) =>
      leavesOf(plan.layout, plan)
        .filter(({ path }) => at.every((index, depth) => path[depth] === index))
        .map(({ node: { width, height } }) => [width, height]);
    expect(inside(after)).toEqual(inside(before));
  }
  const row = at.slice(0, -1).join(" ");
  const elsewhere = (plan: Plan) =>
    leavesOf(plan.layout, plan)
      .filter(({ path }) => !`${path.join(" ")} `.startsWith(row === "" ? "" : `${row} `))
      .map(({ x, y, node: { width, height } }) => [x, y, width, height]);
  expect(elsewhere(after)).toEqual(elsewhere(before));
}

const picks = fc.record({
  which: fc.nat(500),
  kind: fc.constantFrom<Shift["kind"]>("move", "resize"),
  steps: fc.oneof(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -120, max: 120 })),
});

describe("a part moved or resized by hand", () => {
  it("gives a plan that can be sewn, the part where and as large as was asked, or says why it can't be", () => {
    const done = new Map<string, number>();
    const law = fc.property(randomCases, fc.array(picks, { minLength: 6, maxLength: 12 }), (given, some) => {
      const { job, style, seed } = given;
      let plan = makePlan(job, { style, seed, effort: 4 });
      for (const { which, kind, steps } of some) {
        const all = shiftablesIn(plan, job).filter(({ canMove }) => canMove || kind === "resize");
        const one = all[which % Math.max(1, all.length)];
        if (one === undefined) continue;
        const shift: Shift = { kind, at: one.path, along: one.along, by: times(job.step, steps) };
        const after = changePlan(plan, shift, job);
        const name = `${kind} ${after.ok ? "made" : after.error.kind}`;
        done.set(name, (done.get(name) ?? 0) + 1);
        if (!after.ok) continue;
        hasShifted(plan, shift, after.value);
        plan = after.value;
      }
    });
    fc.assert(law, { seed: 1, numRuns: 20 });
    for (const kind of ["move made", "resize made", "move no-room", "resize no-room"])
      expect(done.get(kind) ?? 0, `${kind} now and then`).toBeGreaterThan(0);
  });

  const heap = heaps.find((name) => name.endsWith("r.3-s1")) ?? "";
  const job = jobOf(heap, "weekend");
  const plan = makePlan(job, { style: "insert-across", seed: 1, effort: 40 });
  const insert = shiftablesIn(plan, job).find(({ path, canMove }) => path.length === 1 && canMove);
  const shiftBy = (by: Shift["by"], kind: Shift["kind"] = "move"): Shift => ({
    kind,
    at: insert?.path ?? [],
    along: "height",
    by,
  });

  it("moves the insert by trading what is above it for what is below it", () => {
    const once = changePlan(plan, shiftBy(inches(1)), job);
    const back = once.ok ? changePlan(once.value, shiftBy(length(-inches(1))), job) : once;
    expect(once.ok && partAt(once.value, shiftBy(inches(1))).y).toBe(
      partAt(plan, shiftBy(inches(1))).y + inches(1),
    );
    expect(back.ok && back.value.layout).toEqual(plan.layout);
  });

  it("goes by the ruler's step, and no further than what lies beside gives", () => {
    expect(changePlan(plan, shiftBy(inches(1, 64)), job)).toEqual({
      ok: false,
      error: { kind: "off-ruler", step: job.step },
    });
    const far = changePlan(plan, shiftBy(inches(500)), job);
    if (far.ok || far.error.kind !== "no-room") throw new Error("a back is not as long as that");
    const { most } = far.error;
    expect(changePlan(plan, shiftBy(length(most + job.step)), job)).toEqual(far);
    const { layout } = plan;
    const above = layout.kind === "join" ? layout.parts[(insert?.path[0] ?? 0) + 1] : undefined;
    expect(most).toBeLessThan(above?.height ?? 0);
  });
});
