// The ten rules that keep her from saying no, each a function of its own, made apart from the solver.
import type { Plan } from "../../src/engine/plan/index.ts";
import { caterpillars } from "./rules/caterpillar.ts";
import { wrongContrast } from "./rules/contrast.ts";
import { brokenDirections } from "./rules/direction.ts";
import { joinsWithoutGiver } from "./rules/giver.ts";
import { heavyCrossings } from "./rules/heavyCrossing.ts";
import { lonelyBits } from "./rules/lonelyBit.ts";
import { wrongLongSeams } from "./rules/longSeam.ts";
import { nearMisses } from "./rules/nearMiss.ts";
import { sillyCuts } from "./rules/sillyCut.ts";
import { slivers } from "./rules/sliver.ts";
import type { Rule, RuleBreak, RuleCheck } from "./rules/types.ts";

export { type Contrast, contrasts } from "./rules/contrast.ts";
export { type Rule, type RuleBreak, type RuleCheck, rules } from "./rules/types.ts";
export {
  brokenDirections,
  caterpillars,
  heavyCrossings,
  joinsWithoutGiver,
  lonelyBits,
  nearMisses,
  sillyCuts,
  slivers,
  wrongContrast,
  wrongLongSeams,
};

export const checkOf: Readonly<Record<Rule, RuleCheck>> = {
  "lonely-bit": lonelyBits,
  caterpillar: caterpillars,
  sliver: slivers,
  "near-miss": nearMisses,
  "heavy-crossing": heavyCrossings,
  "silly-cut": sillyCuts,
  direction: brokenDirections,
  "long-seam": wrongLongSeams,
  giver: joinsWithoutGiver,
  contrast: (plan) => wrongContrast(plan),
};

/** What a plan for a top must not break. With a back's size alone the first six are costs, not refusals. */
export function rulesBroken(plan: Plan): RuleBreak[] {
  const refused: readonly Rule[] = ["direction", "long-seam", "giver", "contrast"];
  const all = Object.entries(checkOf) as [Rule, RuleCheck][];
  return all
    .filter(([rule]) => plan.top !== null || refused.includes(rule))
    .flatMap(([, check]) => check(plan));
}
