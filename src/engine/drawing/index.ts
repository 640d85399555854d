export { type DrawnPlan, drawPlan } from "./draw.ts";
export { drawStep } from "./step.ts";
export * from "./types.ts";
