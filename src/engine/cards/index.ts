export { cellsAlongMarker, isBlack, markerIds } from "./codes.ts";
export * from "./pages.ts";
export { type Target, type TargetMarker, targets } from "./targets.ts";
