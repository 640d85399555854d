export * from "./region.ts";
export * from "./size.ts";
export { type CutOffEdge, type Style, styles } from "./types.ts";
export * from "./yardage.ts";
