import { leavesOf } from "../layout/index.ts";
import { type Sewn, sewnByStep } from "../sewing/index.ts";
import type { DrawnPlan } from "./draw.ts";

/**
 * For each cell of a plan, in the order in which a drawing of it shows them, the step that sews it first: a unit or
 * slab its own, all else the step that joins it to others. `null`: a back of one cell is not sewn.
 */
export function firstStepOfCells(plan: Pick<DrawnPlan, "layout" | "seam">): readonly (string | null)[] {
  const steps = sewnByStep(plan.layout, plan);
  const ids = new Map([...steps].map(([id, made]) => [made, id]));
  // Everything stands behind what it is made of, so the back is the last.
  const back = [...steps.values()].at(-1);
  return back === undefined
    ? leavesOf(plan.layout, plan).map(() => null)
    : firstSteps(back, null, (part) => ids.get(part));
}

function firstSteps(
  part: Sewn,
  around: string | null,
  idOf: (part: Sewn) => string | undefined,
): readonly (string | null)[] {
  const own = idOf(part) ?? around;
  return "parts" in part ? part.parts.flatMap((inner) => firstSteps(inner, own, idOf)) : [own];
}
