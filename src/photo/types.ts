import type { Lab } from "../engine/cloth/index.ts";

/** A decoded photo, upright, in sRGB: four bytes a pixel, row by row. A pixel's centre is at whole numbers. */
export type Photo = {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array | Uint8ClampedArray;
};

/** A place in the photo in pixels, or on the floor in inches: right and down. */
export type Place = readonly [x: number, y: number];

/** Colour in linear light, each from 0 to about 1. */
export type Light = readonly [red: number, green: number, blue: number];

/** L, a and b, or what is known of each, at many places. */
export type Triple = readonly [Float32Array, Float32Array, Float32Array];

/** A card or sheet that was found: which of the known ones, and its markers' corners in the photo. */
export type SeenTarget = {
  readonly target: number;
  readonly markers: readonly SeenMarker[];
};

/** Corners clockwise from the marker's own upper left. */
export type SeenMarker = { readonly id: number; readonly corners: readonly Place[] };

export const photoKinds = ["square", "rectangle", "strip", "length", "triangle", "odd"] as const;
export type PhotoKind = (typeof photoKinds)[number];

/** Why a piece must be looked at before its size is believed. */
export const doubts = [
  "near-floor",
  "cut-off",
  "may-be-two",
  "may-be-one",
  "not-square",
  "faint-side",
  "curled-card",
  "one-sheet",
] as const;
export type Doubt = (typeof doubts)[number];

export const photoWarnings = ["curled-card", "one-sheet", "few-cards"] as const;
export type PhotoWarning = (typeof photoWarnings)[number];

/** Sizes in inches. `width` and `height` are rounded down to the ruler's step; for a triangle they are its legs. */
export type MeasuredPiece = {
  readonly kind: PhotoKind;
  readonly width: number;
  readonly height: number;
  readonly measured: { readonly width: number; readonly height: number };
  /** The outline in the photo, clockwise. */
  readonly pixels: readonly Place[];
  /** The few colours it is made of, the largest share first. */
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[];
  /** How far its colours lie from their mean: the root of the mean square, in Lab. 0 is plain. */
  readonly busyness: number;
  readonly check: readonly Doubt[];
};

export type MeasuredPhoto = {
  /** Numbers of the markers found. */
  readonly cards: readonly number[];
  /** Root of the mean square distance of marker corners from where the camera puts them, in pixels; null where no card was found. */
  readonly residual: number | null;
  readonly warnings: readonly PhotoWarning[];
  readonly pieces: readonly MeasuredPiece[];
};
