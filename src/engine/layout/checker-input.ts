import type { Crumbs, Piece, SizedPiece } from "../cloth/index.ts";
import type { Length, Size } from "../length/index.ts";
import type { LayoutNode } from "./types.ts";

type FactsChecked = "id" | "kind" | "count" | "fabric" | "keep" | "use" | "direction";

/** As much of a leftover as a plan's file tells. */
export type CheckedSized = Pick<SizedPiece, FactsChecked | "width" | "height">;
export type CheckedCrumbs = Pick<Crumbs, FactsChecked | "area">;
export type CheckedPiece = CheckedSized | CheckedCrumbs;

/** A row of what is to buy; only rows of `plain` cloth feed the layout. */
export type BoughtCloth = {
  readonly use: string;
  readonly fabric: string;
  readonly width: Length;
  readonly length: Length;
};

/** All that a layout must be held against. A `Plan` is one. */
export type CheckInput = {
  readonly layout: LayoutNode;
  /** Edge to edge, raw. */
  readonly back: Size;
  readonly step: Length;
  readonly seam: Length;
  readonly plainSeam: Length;
  readonly floor: Length;
  /** The table's rows as read. */
  readonly pieces: readonly CheckedPiece[];
  readonly fabrics: readonly { readonly id: string }[];
  readonly buy: readonly BoughtCloth[];
  readonly unused?: readonly { readonly piece: string; readonly count: number }[];
  /** With it, what lies outside the top's outline counts as the outer ring too. */
  readonly top?: Size | null;
};

/** The heap by id; of two rows of one id the first counts. */
export type Heap = ReadonlyMap<string, CheckedPiece>;

export function heapOf(pieces: readonly Piece[] | readonly CheckedPiece[]): Heap {
  const heap = new Map<string, CheckedPiece>();
  for (const piece of pieces) if (!heap.has(piece.id)) heap.set(piece.id, piece);
  return heap;
}

export function isSized(piece: CheckedPiece): piece is CheckedSized {
  return piece.kind !== "crumbs";
}
