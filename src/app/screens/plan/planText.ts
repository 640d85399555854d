import { type PlanDocument, writePlan } from "../../../files/index.ts";

const texts = new WeakMap<PlanDocument, string>();

/** The plan as its file; written once. */
export function textOf(plan: PlanDocument): string {
  const text = texts.get(plan) ?? writePlan(plan);
  texts.set(plan, text);
  return text;
}
