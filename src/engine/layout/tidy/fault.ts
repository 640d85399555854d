import type { Job, SizedPiece } from "../../cloth/index.ts";
import { inches } from "../../length/index.ts";
import type { Way } from "./bough.ts";
import type { Box } from "./scene.ts";

export type FaultKind =
  | "lonely"
  | "caterpillar"
  | "sliver"
  | "near miss"
  | "crossing"
  | "silly cut"
  | "direction"
  | "long seam"
  | "no giver"
  | "like";

/** Something in a layout that she would say no to. */
export type Fault = {
  readonly kind: FaultKind;
  /** Leaves, or forks, that have a part in it. */
  readonly ways: readonly Way[];
  /** Leaves to make plain instead, where that isn't those. */
  readonly cells?: readonly Way[];
  /** By how much something would have to move to mend it, as far as that is known. */
  readonly by: readonly number[];
  /** Along this axis: left to right, or top to bottom; null: either. */
  readonly wide: boolean | null;
};

/** What is looked at beside the layout. */
export type Eye = {
  readonly job: Job;
  readonly pieces: ReadonlyMap<string, SizedPiece>;
  readonly outline: Box | null;
  /** The regions above and under a row across, whose pieces nobody should have to match; null: there is no such pair. */
  readonly halves: readonly [number, number] | null;
  readonly areLike: (one: string, other: string) => boolean;
};

export const inch: number = inches(1);

/** Wholly where it is cut away after quilting. */
export function isCutOff(box: Box, outline: Box | null): boolean {
  if (outline === null) return false;
  return (
    box.right <= outline.x || box.x >= outline.right || box.bottom <= outline.y || box.y >= outline.bottom
  );
}
