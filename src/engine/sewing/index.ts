export * from "./reassemble.ts";
export type { Sewn, SewnJoin, SewnLeaf } from "./sewn.ts";
export * from "./steps.ts";
export * from "./types.ts";
