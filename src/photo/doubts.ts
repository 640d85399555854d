import { colourDifference, type Lab } from "../engine/cloth/index.ts";
import type { Outline } from "./outline.ts";
import { gapBetween, type Polygon } from "./polygon.ts";
import type { Doubt } from "./types.ts";

// In ΔE00: nearer to the floor's colour, an outline is not to be trusted; a little further off, where its sides are clear.
const nearFloor = 6;
const hardlyDiffers = 4;
const wellFilled = 0.94;
// In inches. She is asked for half an inch.
const laidApart = 0.3;
// Of a side's places, those that agree on where it is; of an outline, what differs from the floor.
const clearEnough = 0.6;
// So many agree nowhere but along an edge: then gaps in what is covered are a print's. Lines that run over the floor hide
// some of an edge.
const seenAlong = { bare: 0.9, lined: 0.75 };
// So many agree only where the floor's color misled none.
const seenWell = 0.97;
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
  /** Thin lines run over the floor. */
  readonly isLined: boolean;
};

/** Whether it is cloth at all. */
export function isPiece({ outline, clear, mean, floor }: Seen): boolean {
  const contrast = colourDifference(mean, floor);
  // At the photo's edge the floor itself darkens, and no side can be looked at.
  if (outline.cutOff) return contrast >= nearFloor;
  return contrast >= faint.contrast || (outline.solid >= faint.solid && clear >= faint.clear);
}

export function doubtsOf({ outline, sides, clear, mean, floor, isLined }: Seen): readonly Doubt[] {
  const { cutOff, solid, parts, split, filled } = outline;
  const hasGaps = solid < wellFilled && clear < (isLined ? seenAlong.lined : seenAlong.bare);
  return [
    ...when(colourDifference(mean, floor) < (clear < seenWell ? nearFloor : hardlyDiffers), "near-floor"),
    ...when(cutOff, "cut-off"),
    ...when(hasGaps || sides > 4 || parts > 1, "may-be-two"),
    ...when(split, "may-be-one"),
    ...when((clear < clearEnough || (filled < wellCovered && parts === 1)) && !cutOff, "faint-side"),
  ];
}

/** What lies nearer to another than she is asked to lay it is a patch of the same block, or touches it. */
export function besideDoubts(polygon: Polygon, others: readonly Polygon[]): readonly Doubt[] {
  return when(
    others.some((other) => other !== polygon && gapBetween(polygon, other) < laidApart),
    "may-be-one",
  );
}

function when(holds: boolean, doubt: Doubt): readonly Doubt[] {
  return holds ? [doubt] : [];
}
