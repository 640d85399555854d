import type { Drawing } from "../../../engine/drawing/index.ts";
import { toNumber } from "../../../engine/length/index.ts";
import { type Project, sizeOfProject } from "../../../files/index.ts";
import type { ProjectStage } from "../../../words/index.ts";
import type { StepName } from "../../frame/index.ts";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { outlineOf, plainBackOf } from "../../parts/drawing/plainBack.ts";
import { planIn } from "../../parts/keptPlan.ts";

/** What the list of her backs shows of one. */
export type Picture = { readonly stage: ProjectStage; readonly drawing: Drawing | null };

export function pictureOf(project: Project): Picture {
  const plan = project.plan === null ? null : planIn(project.plan);
  return {
    stage: stageOf(project),
    drawing: plan === null ? outlineOf(plainBackOf(project)) : drawingOfPlan(plan),
  };
}

/** How tall a drawing is in life, in inches, so that all of them hang there to one scale. */
export function tallnessOf(drawing: Drawing | null): number {
  return drawing === null ? 0 : toNumber(drawing.size.height, "in");
}

/** How far a back has come. */
export function stageOf(project: Project): ProjectStage {
  const { plan: kept, ticked, leftovers, rough } = project;
  const plan = kept === null ? null : planIn(kept);
  if (plan !== null) {
    const done = plan.steps.filter(({ id }) => ticked.has(id)).length;
    if (done === 0) return { kind: "planned", style: plan.style };
    return done === plan.steps.length ? { kind: "sewn" } : { kind: "sewing", done, steps: plan.steps.length };
  }
  const { back } = sizeOfProject(project);
  const rows = leftovers.length + rough.length;
  if (rows > 0) return { kind: "listed", leftovers: rows, back };
  return back === null ? { kind: "empty" } : { kind: "sized", back };
}

/** The page on which she goes on. */
export function nextPage(stage: ProjectStage): StepName {
  switch (stage.kind) {
    case "empty":
      return "size";
    case "sized":
      return "leftovers";
    case "listed":
      return stage.back === null ? "size" : "plan";
    case "planned":
      return "plan";
    case "sewing":
    case "sewn":
      return "sew";
  }
}
