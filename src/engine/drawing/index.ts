export { drawPlainBack, type PlainBack } from "./back.ts";
export { type DrawnPlan, drawPlan } from "./draw.ts";
export * from "./marks.ts";
export { drawStep, placeOfStep } from "./step.ts";
export * from "./types.ts";
