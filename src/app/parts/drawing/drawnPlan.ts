import { type Fabric, fabricOf, undyed } from "../../../engine/cloth/index.ts";
import { type Drawing, type DrawnPlan, drawPlan } from "../../../engine/drawing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";

/** A plan as its file tells it, ready to be drawn: its fabrics have their colours again. */
export function drawnPlan(plan: PlanDocument): DrawnPlan {
  return { ...plan, fabrics: plan.fabrics.flatMap(({ id, name, colour }) => coloured(id, name, colour)) };
}

function coloured(id: string, name: string, colour: string): readonly Fabric[] {
  const fabric = fabricOf(id, name, colour) ?? fabricOf(id, name, undyed);
  return fabric === null ? [] : [fabric];
}

const drawn = new WeakMap<PlanDocument, Drawing>();

/** The same plan is the same drawing, so that nothing is drawn anew that did not change. */
export function drawingOfPlan(plan: PlanDocument): Drawing {
  const drawing = drawn.get(plan) ?? drawPlan(drawnPlan(plan));
  drawn.set(plan, drawing);
  return drawing;
}
