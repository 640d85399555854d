import type { Finished, Length, Size } from "../length/index.ts";
import type { JoinDirection } from "./region.ts";

/** How a back is composed; proportions in `styles/`. */
export const styles = [
  "insert-across",
  "insert-down",
  "cross",
  "chunks",
  "strippy",
  "block-line",
  "centred",
  "squares",
  "all-over",
] as const;
export type Style = (typeof styles)[number];

/** How far in from each raw edge of the back things begin. */
export type CutOffEdge = {
  /** From the raw edge to the top's outline, each side: what is cut away after quilting. */
  readonly width: Length;
  readonly height: Length;
};

export type { Finished, JoinDirection, Size };
