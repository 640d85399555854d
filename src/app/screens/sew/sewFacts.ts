import { type Drawing, drawStep, placeOfStep, type Rect } from "../../../engine/drawing/index.ts";
import type { Step } from "../../../engine/sewing/index.ts";
import { checkProject, type PlanDocument, type Project } from "../../../files/index.ts";
import type { Caution } from "../../../words/index.ts";
import { drawnPlan } from "../../parts/drawing/drawnPlan.ts";
import { isCurrent, planIn } from "../../parts/keptPlan.ts";

export type Sewing =
  | { readonly kind: "no-plan" }
  | { readonly kind: "unreadable" }
  | {
      readonly kind: "ready";
      readonly plan: PlanDocument;
      /** Her leftovers or the size are no longer what the plan was kept for. */
      readonly isOld: boolean;
    };

export function sewingFor(project: Project): Sewing {
  if (project.plan === null) return { kind: "no-plan" };
  const plan = planIn(project.plan);
  if (plan === null) return { kind: "unreadable" };
  return { kind: "ready", plan, isOld: !isCurrent(project.plan, checkProject(project).job) };
}

/** The step she is at, counted from 0, and how many are done. */
export type Place = {
  readonly step: Step;
  readonly index: number;
  readonly done: number;
  readonly before: Step | null;
  readonly after: Step | null;
  /** The first step that is not done; null when all are. */
  readonly open: Step | null;
};

/** `at`: the step she turned to; without one the first that isn't done, or the last of all. */
export function placeIn(
  { steps }: PlanDocument,
  ticked: ReadonlySet<string>,
  at: string | null,
): Place | null {
  const open = steps.find(({ id }) => !ticked.has(id)) ?? null;
  const step = steps.find(({ id }) => id === at) ?? open ?? steps.at(-1);
  if (step === undefined) return null;
  const index = steps.indexOf(step);
  return {
    step,
    index,
    done: steps.filter(({ id }) => ticked.has(id)).length,
    before: steps[index - 1] ?? null,
    after: steps[index + 1] ?? null,
    open,
  };
}

/** The next step that isn't done after this one has been, round from the beginning; null: none is left. */
export function nextOpen({ steps }: PlanDocument, ticked: ReadonlySet<string>, done: string): Step | null {
  const index = steps.findIndex(({ id }) => id === done);
  const inOrder = [...steps.slice(index + 1), ...steps.slice(0, Math.max(0, index))];
  return inOrder.find(({ id }) => !ticked.has(id)) ?? null;
}

/** What is said once, where the tool is picked up: the cutter with the first step, the iron with the first seam. */
export function cautionsAt({ steps }: PlanDocument, step: Step): readonly Caution[] {
  const firstCut = steps[0];
  const firstSeam = steps.find(({ from }) => from.length > 1 || (from[0]?.count ?? 1) > 1);
  return [
    ...(step === firstCut ? (["cutter"] as const) : []),
    ...(step === firstSeam ? (["iron"] as const) : []),
  ];
}

/** Where in the back it goes; null for a back of one piece of cloth. */
export function placeOf(plan: PlanDocument, step: Step): Rect | null {
  if (plan.layout.kind !== "join") return null;
  return placeOfStep(drawnPlan(plan), step.id);
}

/** Its parts as they are laid out; null for a back of one piece of cloth, which has nothing laid together. */
export function drawingOfStep(plan: PlanDocument, step: Step): Drawing | null {
  if (plan.layout.kind === "piece" || plan.layout.kind === "cloth") return null;
  return drawStep(drawnPlan(plan), step.id);
}
