import type { LyingCloth } from "../../../engine/drawing/index.ts";
import type { KeptPicture } from "../pictures.ts";

/** Where a leftover's picture lies on it, as often as it takes, in lengths from the leftover's upper left corner. */
export type Tiles = {
  /** The picture shows it upright, and it lies across. */
  readonly isTurned: boolean;
  /** From the picture's own upper left corner, below one another. */
  readonly boxes: readonly { readonly y: number; readonly width: number; readonly height: number }[];
};

// Cloth is trimmed before it is typed, and typed before it is trimmed: so much of its length it may be off.
const nearlyWhole = 0.1;
// A strip so long for its picture was typed wrong, or its picture is of something else: the picture is stretched.
const mostTiles = 12;

/**
 * True to the leftover's width. Where its picture shows a part of its length alone (it lay folded, or she typed
 * another length), the picture is laid again below. Null where it is no picture of the whole shape.
 */
export function tilesOf({ kind, size }: LyingCloth, picture: KeptPicture): Tiles | null {
  if (kind === "triangle") return { isTurned: false, boxes: [{ y: 0, ...size }] };
  if (picture.isPartClear || kind === "odd") return null;
  const isSquare = Math.abs(size.width - size.height) <= nearlyWhole * size.width;
  const isTurned = !isSquare && picture.width > picture.height !== size.width > size.height;
  const width = isTurned ? size.height : size.width;
  const whole = isTurned ? size.width : size.height;
  const shown = (width * picture.height) / picture.width;
  if (Math.abs(shown - whole) <= nearlyWhole * whole)
    return { isTurned, boxes: [{ y: 0, width, height: whole }] };
  const height = Math.max(shown, whole / mostTiles);
  const count = Math.min(mostTiles, Math.ceil(whole / height));
  const boxes = Array.from({ length: count }, (_, index) => ({ y: index * height, width, height }));
  return { isTurned, boxes };
}
