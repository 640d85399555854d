import type { Lab } from "../cloth/index.ts";
import type { Area, Length, Size } from "../length/index.ts";
import type { Plan } from "../plan/index.ts";

/** What advice needs of a plan; its file tells as much. */
export type AdvisedPlan = Pick<Plan, "layout" | "buy"> & {
  /** The few main colours of its top as a photo shows them, each with its share; none where there is no photo. */
  readonly topColours?: readonly { readonly lab: Lab; readonly share: number }[];
};

/** A cell as the drawing of the back has it: from the raw upper left corner. */
export type PlaceOfCell = Size & { readonly x: Length; readonly y: Length };

/** Where it matters, each named once. */
export type Where = {
  readonly cells: readonly PlaceOfCell[];
  /** Leftovers, in the order of the heap. */
  readonly pieces: readonly string[];
  /** The steps at which it is met, in the order of sewing. */
  readonly steps: readonly string[];
};

export const values = ["light", "medium", "dark"] as const;
export type Value = (typeof values)[number];

export const hues = ["grey", "red", "orange", "yellow", "green", "teal", "blue", "violet", "pink"] as const;
export type Hue = (typeof hues)[number];

/** One fabric more, and what it would do. */
export type Mend = {
  /** Another cloth for the plain parts that are bought anyway, or cloth for some of the cells. */
  readonly instead: "plain" | "pieces";
  readonly value: Value;
  readonly hue: Hue;
  readonly lab: Lab;
  /** Share of the shared edges that would then be told apart, 0 to 1. */
  readonly reach: number;
  readonly cells: number;
  /** Cut area of those cells. */
  readonly area: Area;
  /** Off a bolt `width` wide, the untrue end in it; as a shop cuts it. */
  readonly length: Length;
  readonly width: Length;
};

/** Cloth to buy and how much of it once shrinkage is allowed for. */
export type BeforeWashing = { readonly fabric: string; readonly length: Length };

/** What is worth knowing before the first seam. Each kind comes at most once. */
export type Advice = { readonly where: Where } & (
  | {
      readonly kind: "contrast";
      /** Share of the shared edges that are told apart, 0 to 1: now; after swaps of equal pieces; at the very most. */
      readonly now: number;
      readonly swapped: number;
      readonly most: number;
      readonly mend: Mend | null;
    }
  | { readonly kind: "dark-beside-light" }
  /** `pale`: share of the top that is pale in its photo, 0 to 1; null where there is none. */
  | { readonly kind: "dark-under-top"; readonly pale: number | null }
  /** `small`: none of them is worth washing before it is sewn. */
  | { readonly kind: "bleeding"; readonly small: boolean }
  | { readonly kind: "unwashed"; readonly bought: readonly BeforeWashing[] }
  /** In her words. */
  | { readonly kind: "weights"; readonly cloths: readonly string[] }
  | { readonly kind: "not-upright" }
  | { readonly kind: "stripes-sideways" }
  | { readonly kind: "print-cut-off" }
  | { readonly kind: "load-sideways" }
);

export type AdviceKind = Advice["kind"];
