import type { Job } from "../cloth/index.ts";
import { length, subtract } from "../length/index.ts";
import type { PlaceOfCell } from "./types.ts";

/** The top lies in the middle of its back; without a top all of the back stays. */
export function outlineIn({ top, back }: Pick<Job, "top" | "back">): PlaceOfCell {
  if (top === null) return { x: length(0), y: length(0), ...back };
  const { width, height } = top;
  return {
    x: length(Math.round(subtract(back.width, width) / 2)),
    y: length(Math.round(subtract(back.height, height) / 2)),
    width,
    height,
  };
}

export function overlaps(one: PlaceOfCell, other: PlaceOfCell): boolean {
  return shareInside(one, other) > 0;
}

/** Share of a cell's area that lies within the outline, 0 to 1. */
export function shareInside(cell: PlaceOfCell, outline: PlaceOfCell): number {
  const width = Math.min(cell.x + cell.width, outline.x + outline.width) - Math.max(cell.x, outline.x);
  const height = Math.min(cell.y + cell.height, outline.y + outline.height) - Math.max(cell.y, outline.y);
  if (width <= 0 || height <= 0) return 0;
  return (width * height) / (cell.width * cell.height);
}
