export * from "./changePlan.ts";
export * from "./effort.ts";
export { heapArea } from "./figures.ts";
export { makePlan, type PlanRequest, type PlanSearch, startPlan } from "./makePlan.ts";
export { mostUsable, type Usable, usableOf } from "./mostUsable.ts";
export { calmOf, rankStyles } from "./rankStyles.ts";
export * from "./types.ts";
