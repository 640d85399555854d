import type { Use } from "../cloth/index.ts";
import type { Area, Finished, Length, Size } from "../length/index.ts";
import type { JoinNode } from "./types.ts";

/** Where in the tree: from the root, the number of the part at each join, counted from 0. Empty: the whole layout. */
export type TreePath = readonly number[];

/** Which side of a cell, as it lies in the layout. */
export type Side = "width" | "height";

type At = { readonly path: TreePath };
type OfPiece = At & { readonly piece: string };

/**
 * Why a layout cannot be sewn as it is, or is not what it says. Every problem names its place; lengths are given so
 * that a sentence can say what is so and what would be right.
 */
export type LayoutProblem =
  | TreeProblem
  | CellProblem
  | PieceProblem
  | CountProblem
  | ClothProblem
  | UnitProblem
  | SlabProblem;

/** The joins themselves. */
export type TreeProblem =
  /** The tree is deeper than any back can be; its inside was not looked at. */
  | (At & { readonly kind: "too-deep"; readonly most: number })
  | (At & { readonly kind: "too-many-cells"; readonly most: number })
  /** The layout must be the back less the outer allowance on both sides. */
  | (At & { readonly kind: "layout-not-the-back"; readonly expected: Size; readonly actual: Size })
  | (At & { readonly kind: "too-few-parts"; readonly parts: number })
  /** Widths (`beside`) or heights (`below`) of the parts. */
  | (At & {
      readonly kind: "parts-do-not-add-up";
      readonly direction: JoinNode["direction"];
      readonly expected: Length;
      readonly actual: Length;
    })
  /** Sides that are sewn together must be equally long; `path` is the part's. */
  | (At & {
      readonly kind: "edges-not-equal";
      readonly side: Side;
      readonly expected: Length;
      readonly actual: Length;
    })
  /** A join in a join of the same direction, with the same seam and no pattern: it is one join. */
  | (At & { readonly kind: "join-not-flattened"; readonly direction: JoinNode["direction"] })
  | (At & { readonly kind: "wrong-seam"; readonly expected: Length; readonly actual: Length });

/** Any cell, whatever fills it. `piece` where it is a leftover. */
export type CellProblem =
  | (At & { readonly kind: "size-not-positive"; readonly actual: Size })
  | (At & {
      readonly kind: "off-step";
      readonly piece?: string;
      readonly side: Side;
      readonly size: Finished;
      readonly step: Length;
    })
  | (At & {
      readonly kind: "under-smallest";
      readonly piece?: string;
      readonly side: Side;
      readonly size: Finished;
      readonly smallest: Length;
    })
  /** Left long beside a long join, but by less than sewing may go astray. */
  | (At & {
      readonly kind: "left-too-short";
      readonly piece?: string;
      readonly side: Side;
      readonly left: Length;
      readonly least: Length;
    });

/** One leftover in one cell. */
export type PieceProblem =
  | (OfPiece & { readonly kind: "unknown-piece" })
  /** She keeps it back or gives it away. */
  | (OfPiece & { readonly kind: "not-to-be-used"; readonly use: Use })
  /** Cells of a length are cloth, never a piece. */
  | (OfPiece & { readonly kind: "length-as-piece" })
  | (OfPiece & { readonly kind: "crumbs-as-piece" })
  /** `needed` is the cell's cut size, `has` the piece's, along that side of the cell. */
  | (OfPiece & {
      readonly kind: "piece-too-small";
      readonly side: Side;
      readonly needed: Length;
      readonly has: Length;
    })
  /** The rectangle does not fit between the legs. */
  | (OfPiece & { readonly kind: "triangle-too-small"; readonly needed: Size; readonly legs: Size })
  | (OfPiece & { readonly kind: "one-way-turned" })
  | (OfPiece & {
      readonly kind: "trimmed-too-much";
      readonly side: Side;
      readonly trimmed: Length;
      readonly most: Length;
    })
  /** A piece to be left whole, or a block or half-square triangle, does not fill its cell exactly. */
  | (OfPiece & {
      readonly kind: "not-whole";
      readonly side: Side;
      readonly needed: Length;
      readonly has: Length;
    })
  | (OfPiece & { readonly kind: "half-square-triangle-not-square"; readonly actual: Size })
  /** Quarter turns belong to half-square triangles and are 0 to 3. */
  | (OfPiece & { readonly kind: "wrong-quarter" });

/** How often a row is used, and what is cut from one copy of it. */
export type CountProblem =
  | (OfPiece & { readonly kind: "used-too-often"; readonly used: number; readonly count: number })
  /** `expected` are left over; `actual` is what the plan says. */
  | (OfPiece & { readonly kind: "wrong-unused"; readonly expected: number; readonly actual: number })
  /** A copy is named, yet the piece may not be cut into several. */
  | (OfPiece & { readonly kind: "copy-of-uncut-piece"; readonly copy: number })
  /** A copy is named, yet it gives this cell alone. */
  | (OfPiece & { readonly kind: "copy-gives-one-cell"; readonly copy: number })
  | (OfPiece & { readonly kind: "copy-out-of-range"; readonly copy: number; readonly count: number })
  /** The cells' cut lengths together are longer than the piece. */
  | (OfPiece & {
      readonly kind: "copy-too-short";
      readonly copy: number;
      readonly needed: Length;
      readonly has: Length;
    });

/** Plain cloth, from her lengths or to buy. */
export type ClothProblem =
  | (At & { readonly kind: "unknown-fabric"; readonly fabric: string })
  | (OfPiece & { readonly kind: "cloth-not-from-a-length" })
  | (OfPiece & { readonly kind: "cloth-of-another-fabric"; readonly fabric: string; readonly has: string })
  /** It could not be shown that these cells can be cut from this copy of the length by straight cuts. */
  | (OfPiece & {
      readonly kind: "cannot-be-shown-to-fit";
      readonly copy: number;
      readonly cells: number;
      readonly needed: Area;
      readonly has: Area;
    })
  | (At & { readonly kind: "cloth-not-bought"; readonly fabric: string })
  /** The shorter cut side is wider than the cloth to buy. */
  | (At & {
      readonly kind: "cloth-too-wide";
      readonly fabric: string;
      readonly needed: Length;
      readonly has: Length;
    })
  /** It could not be shown that all cells to buy of this fabric can be cut from what is bought. */
  | (At & {
      readonly kind: "bought-too-little";
      readonly fabric: string;
      readonly cells: number;
      readonly needed: Area;
      readonly has: Area;
    });

/** Units with a diagonal inside. */
export type UnitProblem =
  | (At & { readonly kind: "unknown-pattern"; readonly pattern: string })
  /** Not the pieces, cloth or turns that this pattern is made of. */
  | (At & { readonly kind: "wrong-unit-parts"; readonly pattern: string; readonly piece?: string })
  /** `largest` is what the pattern's formula gives from its pieces, `smallest` that less the trim allowed. */
  | (At & {
      readonly kind: "wrong-unit-size";
      readonly pattern: string;
      readonly actual: Size;
      readonly smallest: Size;
      readonly largest: Size;
    });

export type SlabProblem =
  /** Neither crumbs nor pieces are named. */
  | (At & { readonly kind: "slab-of-nothing" })
  | (OfPiece & { readonly kind: "slab-not-from-crumbs" })
  /** Slabs together are larger than what they are made of. */
  | (At & { readonly kind: "slab-too-large"; readonly needed: Area; readonly has: Area });
