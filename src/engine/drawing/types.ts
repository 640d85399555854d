import type { Fabric, Lab } from "../cloth/index.ts";
import type { ClothRole, LeafNode } from "../layout/index.ts";
import type { Area, DisplayUnit, Length, Size } from "../length/index.ts";

/** A drawing is a value in exact lengths: screen, booklet, command line and golden tests take the same one. */
export type Point = { readonly x: Length; readonly y: Length };
export type Rect = Point & Size;

/**
 * What is seen: the cloth's right side, so that a back is shown as it will hang and as it is laid out to be sewn.
 * Under its top it lies flipped left to right, and so it is seen from the front.
 */
export type Drawing = {
  readonly seenFrom: "behind" | "front";
  readonly unit: DisplayUnit;
  /** All there is to see, from the upper left corner at 0, 0. */
  readonly size: Size;
  readonly shapes: readonly Shape[];
  readonly seams: readonly Seam[];
  /** Raw edges: round the back, or round each part of a step. */
  readonly edges: readonly Rect[];
  /** Where seam allowances end that are not sewn yet: round the back, or round each part of a step. */
  readonly allowances: readonly Rect[];
  /** What is cut off after quilting lies outside `outline`, the top's edge. null: the top isn't known. */
  readonly cutOff: { readonly outline: Rect } | null;
  readonly ruler: Ruler;
  /** Cloth in the drawing, most of it first. */
  readonly fabrics: readonly ShownFabric[];
};

/** A ruler of a length that fits into the drawing, with a mark every `every`. */
export type Ruler = { readonly length: Length; readonly every: Length };

export type ShownFabric = { readonly fabric: Fabric; readonly area: Area };

/** One cell: what lies there and how it looks. */
export type Shape = Rect & {
  readonly kind: LeafNode["kind"];
  readonly label: ShapeLabel;
  /** Of plain cloth: what it is there for. */
  readonly role?: ClothRole;
  /** One patch of cloth, or several where the seams run inside the cell. */
  readonly patches: readonly Patch[];
  /** Of a leftover that fills the cell: its height lies across. */
  readonly turned?: boolean;
  /** Which way a print runs as it is laid; absent where it has no direction. */
  readonly print?: { readonly direction: "one-way" | "stripe"; readonly along: "width" | "height" };
};

/** What a cell can be named by. */
export type ShapeLabel =
  | { readonly piece: string; readonly copy?: number }
  | { readonly cloth: string }
  | { readonly pattern: string }
  | { readonly slab: string | null };

/** A piece of cloth with straight sides. Its own colour; null where she gave none. */
export type Patch = {
  readonly outline: readonly Point[];
  readonly fabric: string;
  readonly lab: Lab | null;
  /** The leftover it is of; not there for cloth by the length and for what is sewn by eye. */
  readonly piece?: string;
};

export const seamKinds = ["piecing", "plain", "inside", "by-eye"] as const;
/** `inside` a unit; `by-eye` in a slab, where only she knows how the seams will run. */
export type SeamKind = (typeof seamKinds)[number];

export type Seam = {
  readonly kind: SeamKind;
  readonly x1: Length;
  readonly y1: Length;
  readonly x2: Length;
  readonly y2: Length;
};
