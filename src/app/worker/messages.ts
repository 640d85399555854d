/** What the page and the solver say to each other. Plain values, so that they can be copied across. */
import type { Job } from "../../engine/cloth/index.ts";
import type { Plan, PlanRequest } from "../../engine/plan/index.ts";

export type ToSolver = {
  readonly kind: "start";
  readonly job: Job;
  readonly request: PlanRequest;
  /** Each better plan is told on the way, not the last alone. */
  readonly isWatched: boolean;
};

export type FromSolver =
  | { readonly kind: "progress"; readonly progress: SolveProgress }
  | { readonly kind: "better"; readonly plan: Plan }
  | { readonly kind: "done"; readonly plan: Plan }
  | { readonly kind: "failed"; readonly detail: string };

export type SolveProgress = {
  /** Of the search, 0 to 1. */
  readonly share: number;
  /** Share of the pieced parts that leftovers cover in the best so far, 0 to 1. */
  readonly covered: number;
};
