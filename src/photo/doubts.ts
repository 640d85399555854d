import { colourDifference, type Lab } from "../engine/cloth/index.ts";
import type { Outline } from "./outline.ts";
import { gapBetween } from "./polygon.ts";
import type { Doubt } from "./types.ts";

// In ΔE00: nearer to the floor's colour, an outline is not to be trusted.
const nearFloor = 6;
const wellFilled = 0.94;
// In inches. She is asked for half an inch.
const laidApart = 0.3;
// Of a side's places, those that agree on where it is; of an outline, what differs from the floor.
const clearEnough = 0.55;
const wellCovered = 0.75;
// Under all of these it is a stain, a shadow or a board of another tone.
const faint = { contrast: 5, solid: 0.88, clear: 0.3 };

/** What was seen of a piece. */
export type Seen = {
  readonly outline: Outline;
  readonly sides: number;
  /** Of the side that is seen worst, the share of places that agree on where it is. */
  readonly clear: number;
  readonly mean: Lab;
  readonly floor: Lab;
};

/** Whether it is cloth at all. */
export function isPiece({ outline, clear, mean, floor }: Seen): boolean {
  const contrast = colourDifference(mean, floor);
  // At the photo's edge the floor itself darkens, and no side can be looked at.
  if (outline.cutOff) return contrast >= nearFloor;
  return contrast >= faint.contrast || (outline.solid >= faint.solid && clear >= faint.clear);
}

export function doubtsOf({ outline, sides, clear, mean, floor }: Seen): readonly Doubt[] {
  const { cutOff, solid, parts, split, filled } = outline;
  return [
    ...when(colourDifference(mean, floor) < nearFloor, "near-floor"),
    ...when(cutOff, "cut-off"),
    ...when(solid < wellFilled || sides > 4 || parts > 1, "may-be-two"),
    ...when(split, "may-be-one"),
    ...when((clear < clearEnough || (filled < wellCovered && parts === 1)) && !cutOff, "faint-side"),
  ];
}

/** What lies nearer to another than she is asked to lay it is a patch of the same block, or touches it. */
export function besideDoubts(outline: Outline, outlines: readonly Outline[]): readonly Doubt[] {
  const isNear = outlines.some(
    (other) => other !== outline && gapBetween(outline.polygon, other.polygon) < laidApart,
  );
  return when(isNear && !outline.split, "may-be-one");
}

function when(holds: boolean, doubt: Doubt): readonly Doubt[] {
  return holds ? [doubt] : [];
}
