export { drawPlainBack, type PlainBack } from "./back.ts";
export { type DrawnPlan, drawPlan } from "./draw.ts";
export { type LyingCloth, lyingCloth, type Turn } from "./lying.ts";
export * from "./marks.ts";
export { drawStep, placeOfStep } from "./step.ts";
export { firstStepOfCells } from "./toGo.ts";
export * from "./types.ts";
export { drawingInView, greyOf, mirroredRect, type View, views } from "./views.ts";
