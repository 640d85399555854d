export * from "./draft.ts";
export * from "./types.ts";
