export * from "./batting.ts";
export * from "./binding.ts";
export { boltLength, buyRows, untrueEnd } from "./buy-rows.ts";
export { backToShelf, type CutCount, cutsFor, type ShelfRest } from "./cut-count.ts";
export { type ClothCell, type CutCloth, cuttingPlan } from "./cutting-plan.ts";
export * from "./put-aside.ts";
export * from "./sleeve.ts";
export { sourceCloth } from "./source-cloth.ts";
export * from "./types.ts";
