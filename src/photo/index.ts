export { cutOut } from "./cutOut.ts";
export { type MeasuredFile, type PiecesTableWords, writePieces, writePiecesTable } from "./document.ts";
export { type PhotoHeader, readPhotoHeader } from "./header.ts";
export { type MeasureOptions, measurePhoto, type Stage, stages } from "./measure.ts";
export { type OverlayRequest, writeOverlay } from "./overlay.ts";
export {
  type Doubt,
  doubts,
  type MeasuredPhoto,
  type MeasuredPiece,
  type Photo,
  type PhotoKind,
  type PhotoWarning,
  photoKinds,
  photoWarnings,
} from "./types.ts";
export type { Vision } from "./vision.ts";
export { fromWide } from "./wide.ts";
