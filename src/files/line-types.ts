import type { DraftPiece, Kind } from "../engine/cloth/index.ts";
import type { Length, LengthProblem } from "../engine/length/index.ts";

/** From one character to another in the line as it was typed; `end` is the first one after. */
export type Span = { readonly start: number; readonly end: number };

/** Why a line cannot enter the heap as it stands. The span is what to look at. */
export type LineProblem = Span &
  (
    | {
        readonly kind: "not-a-size";
        readonly field: "width" | "height" | "area" | "weight";
        readonly problem: LengthProblem;
      }
    /** Nothing in it reads as a size. `pieceKind`: what it is, where she said so. */
    | { readonly kind: "no-size"; readonly pieceKind: Kind | null }
    /** One measure, and such a piece has two. */
    | { readonly kind: "one-side"; readonly pieceKind: Kind | null }
    /** Crumbs without area or weight. */
    | { readonly kind: "no-amount" }
    /** Squares with two different sides: `10 x 5 squares` may be ten of 5, or one piece 10 × 5. */
    | { readonly kind: "not-square"; readonly text: string }
    /** `5 x 5 x 4`: four of 5 × 5, or five of 5 × 4. */
    | { readonly kind: "three-numbers"; readonly text: string }
    /** A number of pieces that is no whole number above 0. */
    | { readonly kind: "not-a-count"; readonly text: string }
    /** A number or measure that has no place in the line. */
    | { readonly kind: "extra-number"; readonly text: string }
    /** `6 finished`: a size without its seams, where sizes as cut are listed. */
    | { readonly kind: "finished-size"; readonly text: string }
    | { readonly kind: "too-long"; readonly length: number; readonly most: number }
  );

export const linePartNames = [
  "count",
  "kind",
  "width",
  "height",
  /** One measure for both sides. */
  "sides",
  /** As wide as the cloth is: `x wof`. */
  "cloth-width",
  /** A size by its name: `fat quarter`. */
  "named-size",
  "area",
  "weight",
  /** Length of strips, all together. */
  "total",
  "fabric",
  "colour",
  "use",
] as const;
export type LinePartName = (typeof linePartNames)[number];

/** What a stretch of the line was taken for. */
export type LinePart = Span & { readonly is: LinePartName; readonly text: string };

export type LinePiece = Omit<DraftPiece, "row">;

export type LineReading = {
  /** What was understood so far, whatever the problems. */
  readonly piece: LinePiece;
  /** Instead of a piece: about so much of strips of one width. */
  readonly rough: { readonly width: Length; readonly total: Length } | null;
  /** A CSS colour that the fabric's name speaks of: a likeness to draw with, not what she said. */
  readonly look: string | null;
  /** In the order of the line. They never overlap. */
  readonly parts: readonly LinePart[];
  readonly problems: readonly LineProblem[];
};
