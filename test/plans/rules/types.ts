import type { Path } from "../../../src/engine/layout/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";

/** What would make her say "I'd never sew that". */
export const rules = [
  "lonely-bit",
  "caterpillar",
  "sliver",
  "near-miss",
  "heavy-crossing",
  "silly-cut",
  "direction",
  "long-seam",
  "giver",
  "contrast",
] as const;
export type Rule = (typeof rules)[number];

/** One thing in a plan that breaks a rule. Places in inches from the layout's upper left corner. */
export type RuleBreak = {
  readonly rule: Rule;
  readonly path: Path;
  readonly x: number;
  readonly y: number;
  readonly said: string;
};

export type RuleCheck = (plan: Plan) => RuleBreak[];
