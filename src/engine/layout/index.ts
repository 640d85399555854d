export { type ClothRole, clothRoles, type JoinDirection, joinDirections } from "../back/index.ts";
export { clothsOf, type Edit, type NoWay, partnersOf, waysTo } from "./byHand.ts";
export {
  type BoughtCloth,
  type CheckedPiece,
  type CheckInput,
  checkLayout,
  deepestJoin,
  mostCells,
} from "./checker.ts";
export { leastLeftLong } from "./checker-cells.ts";
export { canBeCut, provedUpTo, type ToCut } from "./checker-cutting.ts";
export { type CheckedFigures, figuresOf } from "./checker-figures.ts";
export { fillExactly } from "./exact/fillExactly.ts";
export type {
  Branch as ExactBranch,
  Filled as ExactFill,
  Item as ExactItem,
  Task as ExactTask,
} from "./exact/types.ts";
export { fillRegions, type RegionSearch } from "./fillRegions.ts";
export type { Ground } from "./ground.ts";
export { heldStays, nodeAt } from "./heldStays.ts";
export { choicesFor, withPieceAt } from "./here.ts";
export { type NoShift, type Shift, type Shiftable, shiftableAt } from "./moveByHand.ts";
export * from "./problems.ts";
export { groundFrom, type Stays } from "./stays.ts";
export * from "./types.ts";
export * from "./walk.ts";
