export * from "./region.ts";
export { type CutOffEdge, type Style, styles } from "./types.ts";
