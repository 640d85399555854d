/** What every language asks of a step before it says it. */
import type { Step, StepPart } from "../engine/sewing/index.ts";

export function isPlainPart(part: StepPart): boolean {
  return "cloth" in part && part.role === "plain";
}

/** Plain cloth beside something sewn: what was sewn decides how long it is cut. */
export function isCutToMeasure({ kind, from }: Step): boolean {
  return kind === "join" && from.some(isPlainPart) && from.some((part) => "step" in part);
}

/** A back of one piece of cloth is only cut. */
export function seamless({ kind, from }: Step): boolean {
  return kind === "join" && from.length === 1 && from[0]?.count === 1;
}
