export * from "./arithmetic.ts";
export * from "./types.ts";
