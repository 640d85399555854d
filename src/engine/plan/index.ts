export * from "./effort.ts";
export { heapArea } from "./figures.ts";
export * from "./makePlan.ts";
export { rankStyles } from "./rankStyles.ts";
export * from "./types.ts";
