export { type Correction, corrected } from "./corrections.ts";
export { cutOut } from "./cutOut.ts";
export { type MeasuredFile, type PiecesTableWords, writePieces, writePiecesTable } from "./document.ts";
export {
  checkPhotoFile,
  mostMegapixels,
  type PhotoHeader,
  type PhotoRefusal,
  readPhotoHeader,
} from "./header.ts";
export { clothDifference, isOneCloth } from "./likeness.ts";
export {
  type MeasureOptions,
  measurePhoto,
  type OpenPhoto,
  openPhoto,
  type Stage,
  stages,
  withFloorAt,
} from "./measure.ts";
export { type OverlayRequest, writeOverlay } from "./overlay.ts";
export { isInside } from "./polygon.ts";
export { areInOrder, type Corners, paletteOf, straightened } from "./straighten.ts";
export {
  type Doubt,
  doubts,
  type MeasuredPhoto,
  type MeasuredPiece,
  type Photo,
  type PhotoKind,
  type PhotoWarning,
  type Place,
  photoKinds,
  photoWarnings,
} from "./types.ts";
export type { Vision } from "./vision.ts";
export { fromWide } from "./wide.ts";
