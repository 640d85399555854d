export * from "./reassemble.ts";
export * from "./steps.ts";
export * from "./types.ts";
