import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomCases } from "../../../test/plans/randomJobs.ts";
import { leavesOf } from "../layout/index.ts";
import { makePlan, type Plan } from "../plan/index.ts";
import type { StepPart } from "../sewing/index.ts";
import { firstStepOfCells } from "./toGo.ts";

/** How much of each thing the plan's steps take: pieces and cloth by what they are, in cut sizes. */
function takenBySteps({ steps }: Plan): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  for (const step of steps) {
    // What a unit or a slab is made of is no cell of its own.
    if (step.kind !== "join") taken.set(`${step.id} itself`, 1);
    else for (const part of step.from) if (!("step" in part)) count(taken, nameOf(step.id, part), part.count);
  }
  return taken;
}

function nameOf(step: string, part: StepPart): string {
  const what = "piece" in part ? part.piece : "cloth" in part ? part.cloth : "";
  return `${step} takes ${what} ${part.width} ${part.height}`;
}

function count(counts: Map<string, number>, name: string, more: number): void {
  counts.set(name, (counts.get(name) ?? 0) + more);
}

describe("the step that sews a cell first", () => {
  it("is the one that takes it, and all that steps take are cells", () => {
    const law = fc.property(randomCases, ({ job, style, seed }) => {
      const plan = makePlan(job, { style, seed, effort: 3 });
      const cells = leavesOf(plan.layout, plan);
      const first = firstStepOfCells(plan);
      expect(first).toHaveLength(cells.length);
      if (plan.layout.kind !== "join") return;
      const found = new Map<string, number>();
      for (const [index, { node, cutWidth, cutHeight }] of cells.entries()) {
        const step = first[index] ?? "";
        if (node.kind === "unit" || node.kind === "slab") found.set(`${step} itself`, 1);
        else
          count(
            found,
            `${step} takes ${node.kind === "piece" ? node.piece : node.fabric} ${cutWidth} ${cutHeight}`,
            1,
          );
      }
      expect(found).toEqual(takenBySteps(plan));
    });
    fc.assert(law, { seed: 1, numRuns: 15 });
  });
});
