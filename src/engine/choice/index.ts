export { apart, leastApart, lookDifferent } from "./apart.ts";
export * from "./choose.ts";
export { dominates, hasLight, isLighter, type Merits, meritsOf, type Offered, smallUsed } from "./merits.ts";
export type { Reason } from "./reasons.ts";
export * from "./startChoice.ts";
