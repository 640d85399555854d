export { type ClothRole, clothRoles, type JoinDirection, joinDirections } from "../back/index.ts";
export * from "./problems.ts";
export * from "./types.ts";
export * from "./walk.ts";
