export * from "./draft.ts";
export * from "./problems.ts";
export * from "./types.ts";
