/** What the page and the worker that measures photos say to each other. */

import type { Lab } from "../../../engine/cloth/index.ts";
import type { Length } from "../../../engine/length/index.ts";
import type {
  Corners,
  Correction,
  MeasuredPiece,
  PhotoRefusal,
  PhotoWarning,
  Place,
  Stage,
} from "../../../photo/index.ts";

export type PhotoRequest = {
  readonly file: Blob;
  /** What a ruler said of the printed lines, as a share of what they were meant to be. */
  readonly printed: number;
  /** What sizes are rounded down to. */
  readonly step: Length;
  /** Where she said that the floor lies bare; null: the cards lie on it. */
  readonly floor?: Place | null;
};

/** What she says of a piece, or of the floor: it lies bare at this place. */
export type PhotoCorrection = Correction | { readonly kind: "floor"; readonly at: Place };

export type ToPhotoWorker =
  | ({ readonly kind: "measure" } & PhotoRequest)
  /** Of the photo that was measured before. */
  | { readonly kind: "correct"; readonly correction: PhotoCorrection }
  /** A photo of a finished top, to be looked at. */
  | { readonly kind: "open-top"; readonly file: Blob }
  /** That photo, straightened: `corners` in the pixels of what is looked at, `ratio` the top's width to its height. */
  | { readonly kind: "straighten"; readonly corners: Corners; readonly ratio: number };

/** How far a photo has come: unpacked, then as it is measured, then what is shown of it. */
export type PhotoStage = "opening" | Stage | "pictures";

/** A piece, and its picture cut out of the photo. */
export type FoundPiece = { readonly piece: MeasuredPiece; readonly cutOut: Blob };

export type FoundPhoto = {
  /** The photo without what its file says beside it, small enough to be looked at and kept. */
  readonly picture: Blob;
  /** Of the photo as it was measured: outlines are in its pixels. */
  readonly width: number;
  readonly height: number;
  readonly warnings: readonly PhotoWarning[];
  readonly pieces: readonly FoundPiece[];
};

/** A photo small enough to be looked at, and its size. */
export type SmallPhoto = { readonly picture: Blob; readonly width: number; readonly height: number };

/** A finished top, its corners those of the picture, and its few main colors, most first. */
export type StraightTop = {
  readonly picture: Blob;
  readonly palette: readonly { readonly lab: Lab; readonly share: number }[];
};

export type FromPhotoWorker =
  | { readonly kind: "stage"; readonly stage: PhotoStage }
  | { readonly kind: "measured"; readonly found: FoundPhoto }
  | { readonly kind: "corrected"; readonly pieces: readonly FoundPiece[] }
  | { readonly kind: "top-opened"; readonly photo: SmallPhoto }
  /** null: those are no corners of a top. */
  | { readonly kind: "straightened"; readonly top: StraightTop | null }
  | { readonly kind: "refused"; readonly why: PhotoRefusal }
  | { readonly kind: "failed"; readonly detail: string };
