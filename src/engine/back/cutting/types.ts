import type { Length } from "../../length/index.ts";

/** Cloth to cut from: one of `count` equal lengths. */
export type Sheet = {
  readonly id: string;
  /** Which of the equal lengths, from 1. */
  readonly copy: number;
  readonly width: Length;
  readonly height: Length;
  /** A print with an up: nothing cut from it is turned. */
  readonly directed?: boolean;
};

/** What is to be cut, in cut size. */
export type CutCell = {
  /** The caller's own number for it. */
  readonly key: number;
  readonly width: Length;
  readonly height: Length;
  readonly directed?: boolean;
};

/** Where a cell lies on its cloth; `width` and `height` as it lies there. */
export type CutPlace = {
  readonly key: number;
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  /** Width and height of the cell have changed places. */
  readonly turned: boolean;
};

export type SheetPlace = CutPlace & { readonly id: string; readonly copy: number };

/** A rectangle in 1/320 mm; inside the packing sizes are plain whole numbers, lengths again at its door. */
export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

export type Outline = { readonly width: number; readonly height: number; readonly directed?: boolean };

/** Where one outline lies: which sheet, where on it, turned or not. */
export type Spot = {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
};
