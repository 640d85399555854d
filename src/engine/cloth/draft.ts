import type { Area, DisplayUnit, Length, Size } from "../length/index.ts";
import type { Contrast, Direction, Grain, Keep, Kind, Method, Time, Use, WishAsked } from "./types.ts";

/** One row as she gave it: whatever is missing or wrong is still in it. Lengths are cut sizes. */
export type DraftPiece = {
  /** Row of the table or line of the list, from 1, to tie a problem to. */
  readonly row: number;
  readonly kind?: Kind;
  readonly width?: Length;
  readonly height?: Length;
  readonly count?: number;
  readonly fabric?: string;
  /** A CSS colour. */
  readonly colour?: string;
  readonly name?: string;
  readonly keep?: Keep;
  readonly use?: Use;
  readonly direction?: Direction;
  readonly grain?: Grain;
  readonly washed?: boolean;
  readonly cloth?: string;
  readonly area?: Area;
  /** Grams. */
  readonly weight?: number;
};

/** A job that may be wrong or unfinished. `checkDraft` makes a `Job` of it or names all its problems. */
export type Draft = {
  readonly unit: DisplayUnit;
  readonly step?: Length;
  readonly seam?: Length;
  readonly plainSeam?: Length;
  readonly top?: Size & { readonly method: Method; readonly extra: Length };
  readonly back: Size;
  readonly time?: Time;
  readonly wishes?: readonly WishAsked[];
  /** Missing: mixed, or strong where she wishes for more contrast. */
  readonly contrast?: Contrast;
  readonly floor?: Length;
  readonly clothWidth?: Length;
  /** The plain cloth she would buy. */
  readonly plain: { readonly name: string; readonly colour?: string };
  readonly pieces: readonly DraftPiece[];
};
