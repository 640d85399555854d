export type { SolveProgress } from "./messages.ts";
export { type Solved, type SolveWishes, solvePlan } from "./solvePlan.ts";
