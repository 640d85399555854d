import { kindFromSides } from "../engine/cloth/index.ts";
import {
  inches,
  type Length,
  larger,
  length,
  roundDownTo,
  subtract,
  toNumber,
  unitsPerInch,
} from "../engine/length/index.ts";
import { anglesOf, isRightAngled, type Polygon, rectangleInside, sideLengths } from "./polygon.ts";
import type { Doubt, MeasuredPiece, PhotoKind } from "./types.ts";

/** What a piece is, and its size; measured in inches, unrounded. */
export type Shape = Pick<MeasuredPiece, "kind" | "width" | "height" | "measured"> & {
  readonly doubts: readonly Doubt[];
};

// What is taken off before a size is rounded down, so that the cloth is never promised larger than it is: this, and at
// least a pixel at each side, for cameras keep color at half the fineness of light.
const leastMargin = inches(1, 32);
const marginPixels = 2;

// In degrees. Cut by hand, a corner may be off by this much.
const rightAngle = 6;
const nearlySquare = 10;

/**
 * Names a polygon on the floor and gives its size; of what is neither rectangle nor right triangle, the
 * largest straight rectangle inside. `pixel`: how many inches one of the photo shows; `step`: the ruler's.
 */
export function shapeOf(polygon: Polygon, { pixel, step }: { pixel: number; step: Length }): Shape {
  const promise: Promising = { margin: larger(leastMargin, lengthOf(marginPixels * pixel)), step };
  if (polygon.length === 3) return triangleOf(polygon, promise) ?? oddOf(polygon, promise);
  if (polygon.length === 4) return rectangleOf(polygon, promise) ?? oddOf(polygon, promise);
  return oddOf(polygon, promise);
}

type Promising = { readonly margin: Length; readonly step: Length };

function rectangleOf(polygon: Polygon, promise: Promising): Shape | null {
  const [a = 0, b = 0, c = 0, d = 0] = sideLengths(polygon);
  const differ = (one: number, other: number) =>
    Math.abs(one - other) > Math.max(0.12, 0.035 * Math.max(one, other));
  if (!isRightAngled(polygon) || differ(a, c) || differ(b, d)) return null;
  const [one, other] = [
    { mean: (a + c) / 2, least: Math.min(a, c) },
    { mean: (b + d) / 2, least: Math.min(b, d) },
  ];
  const [short, long] = one.mean <= other.mean ? [one, other] : [other, one];
  const kind = kindNamed(short.mean, long.mean);
  return sized(kind, [short.mean, long.mean], { least: [short.least, long.least], promise });
}

function kindNamed(width: number, height: number): PhotoKind {
  const kind = kindFromSides(lengthOf(width), lengthOf(height));
  return kind === "square" || kind === "strip" || kind === "length" ? kind : "rectangle";
}

function triangleOf(polygon: Polygon, promise: Promising): Shape | null {
  const angles = anglesOf(polygon);
  const at = angles.findIndex((angle) => Math.abs(angle - 90) < rightAngle);
  if (at < 0) return null;
  const sides = sideLengths(polygon);
  const legs = [sides[at] ?? 0, sides[(at + 2) % 3] ?? 0].toSorted((one, other) => one - other);
  const [short = 0, long = 0] = legs;
  return sized("triangle", [short, long], { least: [short, long], promise });
}

function oddOf(polygon: Polygon, promise: Promising): Shape {
  const { width, height } = rectangleInside(polygon);
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  const odd = sized("odd", [short, long], { least: [short, long], promise });
  return { ...odd, doubts: mayBeSquare(polygon) ? ["not-square"] : [] };
}

/** Four corners that miss a right angle by little: cut so, or seen wrongly. Where they miss it by much it was meant. */
function mayBeSquare(polygon: Polygon): boolean {
  return polygon.length !== 4 || anglesOf(polygon).every((angle) => Math.abs(angle - 90) < nearlySquare);
}

type Pair = readonly [width: number, height: number];

type Sure = { readonly least: Pair; readonly promise: Promising };

function sized(kind: PhotoKind, [width, height]: Pair, { least, promise }: Sure): Shape {
  const [across, down] = [promised(least[0], promise), promised(least[1], promise)];
  return { kind, width: across, height: down, measured: { width, height }, doubts: [] };
}

/** Down to the ruler's step, after the margin. */
function promised(size: number, { margin, step }: Promising): number {
  const kept = subtract(lengthOf(size), margin);
  return Math.max(0, toNumber(roundDownTo(kept, step), "in"));
}

function lengthOf(size: number) {
  return length(Math.floor(size * unitsPerInch));
}
