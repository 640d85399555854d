import type { Style } from "../back/index.ts";
import type { Fabric, Piece, Top } from "../cloth/index.ts";
import type { LayoutNode } from "../layout/index.ts";
import type { Area, DisplayUnit, Length, Size } from "../length/index.ts";
import type { Step } from "../sewing/index.ts";
import type { BuyRow } from "../supplies/index.ts";

/** What the engine exists to say. */
export type Plan = {
  readonly unit: DisplayUnit;
  readonly step: Length;
  readonly seam: Length;
  readonly plainSeam: Length;
  readonly floor: Length;
  readonly top: Top | null;
  readonly back: Size;
  readonly style: Style;
  readonly seed: number;
  readonly effort: number;
  /** She changed it since: style, seed and effort made what it was before. */
  readonly byHand?: boolean;
  readonly fabrics: readonly Fabric[];
  readonly pieces: readonly Piece[];
  readonly layout: LayoutNode;
  readonly unused: readonly { readonly piece: string; readonly count: number }[];
  readonly steps: readonly Step[];
  readonly buy: readonly BuyRow[];
  readonly figures: Figures;
};

export type Figures = {
  /** Share of the leftovers (or of the layout, if that is smaller) that shows, 0 to 1. */
  readonly covered: number;
  /** Finished area of the cells of plain cloth. */
  readonly plain: Area;
  readonly plainCells: number;
  /** Share of the used pieces that is trimmed away and too small to keep, 0 to 1. */
  readonly trimWaste: number;
  readonly joins: number;
  readonly cuts: number;
  readonly seamLength: Length;
  /** Mean difference in value (L*) across shared edges of two fabrics, weighted by length; null without colours. */
  readonly contrast: number | null;
  readonly minutes: readonly [number, number];
};
