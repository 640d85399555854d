import { adviseOn, openChoice } from "./judgePlans.ts";
import { solvePacked, solvePlan } from "./solvePlan.ts";

export type { PlanChoice } from "./judgePlans.ts";
export { type CandidatePlan, Choosing, type NamedChoice, nameOf } from "./judging.ts";
export type { SolveProgress } from "./messages.ts";
export { type PackedPlan, pack, unpack } from "./packed.ts";
export type { Solved, SolveWishes } from "./solvePlan.ts";

/** What runs beside the page. */
export const beside = { solvePlan, solvePacked, openChoice, adviseOn };
export type Beside = typeof beside;
