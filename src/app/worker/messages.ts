/** What the page and its workers say to each other. Plain values, so that they can be copied across. */
import type { Advice, AdvisedPlan } from "../../engine/advice/index.ts";
import type { Job } from "../../engine/cloth/index.ts";
import type { PlanRequest } from "../../engine/plan/index.ts";
import type { CandidatePlan, NamedChoice } from "./judging.ts";
import type { PackedPlan } from "./packed.ts";

export type ToSolver = {
  readonly kind: "start";
  readonly job: Job;
  readonly request: PlanRequest;
  /** Each better plan is told on the way, not the last alone. */
  readonly isWatched: boolean;
};

export type FromSolver =
  | { readonly kind: "progress"; readonly progress: SolveProgress }
  | { readonly kind: "better"; readonly plan: PackedPlan }
  | { readonly kind: "done"; readonly plan: PackedPlan }
  | { readonly kind: "failed"; readonly detail: string };

export type SolveProgress = {
  /** Of the search, 0 to 1. */
  readonly share: number;
  /** Share of the pieced parts that leftovers cover in the best so far, 0 to 1. */
  readonly covered: number;
};

export type ToJudge =
  | { readonly kind: "job"; readonly job: Job }
  /** One of those to choose from; a later one of the same candidate takes its place. */
  | { readonly kind: "lay"; readonly plan: CandidatePlan<PackedPlan> }
  | { readonly kind: "choose" }
  | { readonly kind: "advise"; readonly plan: AdvisedPlan };

/** Questions are answered in the order in which they were asked. */
export type FromJudge =
  | { readonly kind: "chosen"; readonly choice: NamedChoice }
  | { readonly kind: "advice"; readonly advice: readonly Advice[] }
  | { readonly kind: "failed"; readonly detail: string };
