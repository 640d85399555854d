export * from "./arithmetic.ts";
export * from "./problems.ts";
export * from "./result.ts";
export * from "./types.ts";
