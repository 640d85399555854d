import type { Area, Cut, DisplayUnit, Length, Size } from "../length/index.ts";

/** What a leftover is. A kind in a table is kept as given; without one it is told from its sides. */
export const kinds = [
  "strip",
  "square",
  "rectangle",
  "block",
  "part-block",
  "triangle",
  "half-square-triangle",
  "length",
  "crumbs",
  "odd",
] as const;
export type Kind = (typeof kinds)[number];

/** What may be done to a piece: trimmed a little, left whole, or cut into several across its longer side. */
export const keeps = ["trim", "whole", "cut"] as const;
export type Keep = (typeof keeps)[number];

/** Her mark on a piece. `edge` may go where it is cut away; `must` is in every plan; the last two stay out. */
export const uses = ["first", "yes", "if-needed", "edge", "must", "keep-back", "give-away"] as const;
export type Use = (typeof uses)[number];

/** A print that has an up, or stripes; either runs along the piece's height. */
export const directions = ["none", "one-way", "stripe"] as const;
export type Direction = (typeof directions)[number];

/** Grain of the outer edges; for a triangle, which edges lie on the straight grain. */
export const grains = ["straight", "bias", "unknown", "legs", "long-side"] as const;
export type Grain = (typeof grains)[number];

/** CIELAB under D65. `l` is what quilters call value. */
export type Lab = { readonly l: number; readonly a: number; readonly b: number };

export type Fabric = {
  readonly id: string;
  readonly name: string;
  /** As she wrote it: a CSS colour. */
  readonly colour: string;
  /** The main colour first; shares add up to 1. */
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[];
};

type PieceFacts = {
  /** Kind and number within that kind, such as `strip-4`. */
  readonly id: string;
  readonly count: number;
  /** A fabric's id. */
  readonly fabric: string;
  readonly keep: Keep;
  readonly use: Use;
  readonly direction: Direction;
  readonly grain: Grain;
  /** null: she did not say. */
  readonly washed: boolean | null;
  /** Kind of cloth, in her words; empty: quilting cotton. */
  readonly cloth: string;
  readonly name: string;
};

export type SizedKind = Exclude<Kind, "crumbs">;

/** One line of the heap: `count` pieces of one cut size. For a triangle width and height are its legs. */
export type SizedPiece = PieceFacts & {
  readonly kind: SizedKind;
  readonly width: Cut;
  readonly height: Cut;
};

/** Small bits known by their area alone. */
export type Crumbs = PieceFacts & { readonly kind: "crumbs"; readonly area: Area };

export type Piece = SizedPiece | Crumbs;

export const methods = ["frame", "machine", "hand"] as const;
export type Method = (typeof methods)[number];

export const times = ["afternoon", "weekend", "any"] as const;
export type Time = (typeof times)[number];

/** How fabrics meet: each flows into the next, as they come, or every piece told apart from those beside it. */
export const contrasts = ["blend", "mixed", "strong"] as const;
export type Contrast = (typeof contrasts)[number];

/** What she would like of a plan, beside what it must keep. */
export const wishes = ["sew-less", "use-small", "buy-nothing"] as const;
export type Wish = (typeof wishes)[number];

/** What she may ask for; more contrast is in short for strong contrast. */
export const wishesAsked = [...wishes, "more-contrast"] as const;
export type WishAsked = (typeof wishesAsked)[number];

/** How much there is to sew in a plan: as her time and wishes have it, less, or what an afternoon gives. */
export const amounts = ["usual", "less", "afternoon"] as const;
export type Amount = (typeof amounts)[number];

export type Top = Size & {
  readonly method: Method;
  /** How much larger the back must be on each side. */
  readonly extra: Length;
};

/** A checked job: every number in it can be worked with, nothing below checks again. */
export type Job = {
  readonly unit: DisplayUnit;
  /** The ruler's smallest mark: cells lie on it. */
  readonly step: Length;
  /** Allowance of a seam where piecing meets. */
  readonly seam: Length;
  /** Allowance of a seam with plain cloth on both sides. */
  readonly plainSeam: Length;
  /** null: she gave the back's size alone. */
  readonly top: Top | null;
  /** Edge to edge, raw. */
  readonly back: Size;
  readonly time: Time;
  /** Each at most once. */
  readonly wishes: readonly Wish[];
  readonly contrast: Contrast;
  /** Pieces narrower than this when cut are not placed one by one. */
  readonly floor: Length;
  /** Usable width of bought cloth after selvages. */
  readonly clothWidth: Length;
  /** The plain cloth she would buy; one of `fabrics`. */
  readonly plain: string;
  readonly fabrics: readonly Fabric[];
  readonly pieces: readonly Piece[];
};
