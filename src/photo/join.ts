import type { Outline } from "./outline.ts";
import {
  centreOf,
  gapBetween,
  hullOf,
  isRightAngled,
  type Polygon,
  sideLengths,
  signedArea,
  withFewerSides,
} from "./polygon.ts";
import type { Place } from "./types.ts";

// In inches. She is asked to lay pieces half an inch apart: what lies nearer is one, where it makes a rectangle.
const apart = 0.3;
const alike = 0.1;
// Of the rectangle two outlines make: what they cover of it, and how much larger it is than their hull.
const covers = 0.75;
const fits = 1.04;

/** Parts of one block, between which some cloth is like the floor, become one outline again. */
export function joined(outlines: readonly Outline[]): readonly Outline[] {
  for (const [at, one] of outlines.entries())
    for (const other of outlines.slice(at + 1)) {
      const polygon = oneOf(one, other);
      if (polygon === null) continue;
      const rest = outlines.filter((outline) => outline !== one && outline !== other);
      return joined([
        ...rest,
        { ...one, polygon, parts: one.parts + other.parts, cutOff: one.cutOff || other.cutOff },
      ]);
    }
  return outlines;
}

function oneOf(one: Outline, other: Outline): Polygon | null {
  if (gapBetween(one.polygon, other.polygon) > apart) return null;
  return (
    acrossCorners(one.polygon, other.polygon) ??
    (one.split || other.split ? null : besideOneAnother(one.polygon, other.polygon))
  );
}

/** Two like squares that meet in a corner are half of a block of four. */
function acrossCorners(one: Polygon, other: Polygon): Polygon | null {
  const [side, otherSide] = [squareSide(one), squareSide(other)];
  if (side === null || otherSide === null || Math.abs(side - otherSide) > alike * side) return null;
  const [from, to] = [centreOf(one), centreOf(other)];
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (Math.abs(far / (Math.SQRT2 * side) - 1) > 0.08) return null;
  const middle: Place = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const meets = [one, other].every((polygon) =>
    polygon.some(([x, y]) => Math.hypot(x - middle[0], y - middle[1]) < apart),
  );
  if (!meets) return null;
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  return [
    [middle[0] - x, middle[1] - y],
    [middle[0] + y, middle[1] - x],
    [middle[0] + x, middle[1] + y],
    [middle[0] - y, middle[1] + x],
  ];
}

function squareSide(polygon: Polygon): number | null {
  if (!isRightAngled(polygon)) return null;
  const sides = sideLengths(polygon);
  const [least, most] = [Math.min(...sides), Math.max(...sides)];
  return most - least < alike * most ? (least + most) / 2 : null;
}

function besideOneAnother(one: Polygon, other: Polygon): Polygon | null {
  const hull = hullOf([...one, ...other]);
  const four = withFewerSides(hull, 4);
  if (four === null || !isRightAngled(four)) return null;
  const area = signedArea(four);
  const isOne = area < fits * signedArea(hull) && signedArea(one) + signedArea(other) > covers * area;
  return isOne ? four : null;
}
