export * from "./adviceFor.ts";
export { chromaOf, hueOf } from "./palette.ts";
export * from "./types.ts";
