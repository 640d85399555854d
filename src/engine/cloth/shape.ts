import { type Area, areaOf, inches, type Length, length, type Size } from "../length/index.ts";
import type { Keep, Kind, SizedKind, SizedPiece } from "./types.ts";

/** Names a shape she gave no kind for. Limits: within 4 % or 1/8 in is square; a strip is 3.5 times as long as wide. */
export function kindFromSides(width: Length, height: Length): SizedKind {
  const long = Math.max(width, height);
  const short = Math.min(width, height);
  if (isLength(long, short)) return "length";
  if (long - short <= Math.max(inches(1, 8), long * 0.04)) return "square";
  return long >= 3.5 * short ? "strip" : "rectangle";
}

// A yard or more of something a fat quarter wide. Anything smaller might be a block, and a length may be cut up.
function isLength(long: number, short: number): boolean {
  return long >= inches(36) && short >= inches(18);
}

/** What may be done to a piece of this kind when she did not say. */
export function keepOf(kind: Kind): Keep {
  switch (kind) {
    case "block":
    case "part-block":
    case "half-square-triangle":
      return "whole";
    case "strip":
    case "length":
      return "cut";
    case "square":
    case "rectangle":
    case "triangle":
    case "crumbs":
    case "odd":
      return "trim";
  }
}

type Shape = Pick<SizedPiece, "kind" | "width" | "height">;

/** The area of one piece as it is cut, no seams taken. */
export function cutArea(piece: Shape): Area {
  const box = piece.width * piece.height;
  return areaOf(piece.kind === "triangle" ? Math.floor(box / 2) : box);
}

/**
 * The area of ONE piece that shows once all its sides are sewn with `seam`; 0 when nothing would.
 * A triangle keeps its shape: each side moves in by the seam, so that it shrinks by (r − seam) / r about its incircle,
 * r = (a + b − c) / 2. Rounded down to a whole unit.
 */
export function finishedArea(piece: Shape, seam: Length): Area {
  if (piece.kind === "triangle") return finishedTriangle(piece, seam);
  const width = piece.width - 2 * seam;
  const height = piece.height - 2 * seam;
  return areaOf(width > 0 && height > 0 ? width * height : 0);
}

function finishedTriangle(legs: Size, seam: Length): Area {
  const incircle = (legs.width + legs.height - Math.hypot(legs.width, legs.height)) / 2;
  if (incircle <= seam) return areaOf(0);
  const scale = (incircle - seam) / incircle;
  return areaOf(Math.floor(((legs.width * legs.height) / 2) * scale * scale));
}

/** The largest rectangle in a right triangle, at its right angle: half of each leg, rounded down. */
export function largestRectangle(legs: Size): Size {
  return { width: length(Math.floor(legs.width / 2)), height: length(Math.floor(legs.height / 2)) };
}

/**
 * Whether a rectangle set into the right angle fits: width / leg + height / leg ≤ 1, exactly.
 * The products of long legs pass 2^53, so they are compared as big integers.
 */
export function fitsInTriangle(rectangle: Size, legs: Size): boolean {
  const [width, height] = [BigInt(legs.width), BigInt(legs.height)];
  return BigInt(rectangle.width) * height + BigInt(rectangle.height) * width <= width * height;
}

/** How many squares a cloth gives by full crosscuts, edges as they are: floor × floor. */
export function squaresFrom(cloth: Size, side: Length): number {
  return Math.floor(cloth.width / side) * Math.floor(cloth.height / side);
}
