export { type Batch, batchFor, isRun, shortestBatch, stepMinutes } from "./batch.ts";
export { fittedIn, isMatchedAllAlong, sidesOf, takenSize, trimsAfter } from "./leftLong.ts";
export * from "./reassemble.ts";
export { type Sewn, type SewnJoin, type SewnLeaf, sectionsWithin, smallestFirst } from "./sewn.ts";
export * from "./steps.ts";
export * from "./types.ts";
