import type { Camera } from "./camera.ts";
import { leastSquares } from "./solve.ts";
import type { Place } from "./types.ts";

/** A projective map of the plane, row by row; the last is 1. */
export type Homography = readonly number[];

/**
 * The map that brings the first places of `pairs` onto the second ones: the direct linear transform, in coordinates
 * about their middle and of size about 1 (Hartley 1997). Null of fewer than four pairs or where they lie in a line.
 */
export function homography(pairs: readonly (readonly [from: Place, to: Place])[]): Homography | null {
  if (pairs.length < 4) return null;
  const [from, to] = [scaleOf(pairs.map(([place]) => place)), scaleOf(pairs.map(([, place]) => place))];
  const rows: number[][] = [];
  const right: number[] = [];
  for (const [one, other] of pairs) {
    const [[x, y], [u, v]] = [from.inside(one), to.inside(other)];
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.push(u, v);
  }
  const inner = leastSquares(rows, right);
  return inner && product(product(to.back, [...inner, 1]), from.matrix);
}

/** Where a homography brings a place. */
export function onto(map: Homography, [x, y]: Place): Place {
  const depth = rowAt(map, 6, x, y);
  return [rowAt(map, 0, x, y) / depth, rowAt(map, 3, x, y) / depth];
}

function rowAt(map: Homography, row: number, x: number, y: number): number {
  return (map[row] ?? 0) * x + (map[row + 1] ?? 0) * y + (map[row + 2] ?? 0);
}

function scaleOf(places: readonly Place[]) {
  const [cx, cy] = [0, 1].map(
    (axis) => places.reduce((sum, place) => sum + (place[axis] ?? 0), 0) / places.length,
  );
  const [x, y] = [cx ?? 0, cy ?? 0];
  const far =
    places.reduce((sum, place) => sum + Math.hypot(place[0] - x, place[1] - y), 0) / places.length || 1;
  return {
    inside: (place: Place): Place => [(place[0] - x) / far, (place[1] - y) / far],
    matrix: [1 / far, 0, -x / far, 0, 1 / far, -y / far, 0, 0, 1],
    back: [far, 0, x, 0, far, y, 0, 0, 1],
  };
}

function product(one: readonly number[], other: readonly number[]): number[] {
  const made = Array.from({ length: 9 }, (_, at) => {
    const [row, column] = [3 * Math.floor(at / 3), at % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (one[row + k] ?? 0) * (other[3 * k + column] ?? 0), 0);
  });
  const last = made[8] || 1;
  return made.map((value) => value / last);
}

/**
 * How a camera of this focal length stands over the plane that `map` brings into its photo (Zhang 2000, 3.1). The two
 * columns of the rotation are made of one length and square to one another in the middle between them.
 */
export function turnAndShift(
  map: Homography,
  focal: number,
  middle: Place,
): Pick<Camera, "turn" | "shift"> | null {
  const column = (at: number): Triple => {
    const [x, y, z] = [map[at] ?? 0, map[at + 3] ?? 0, map[at + 6] ?? 0];
    return [(x - middle[0] * z) / focal, (y - middle[1] * z) / focal, z];
  };
  const [first, second, third] = [column(0), column(1), column(2)];
  const scale = 2 / (size(first) + size(second));
  const sign = third[2] < 0 ? -scale : scale;
  const [a, b] = [unit(times(first, sign)), unit(times(second, sign))];
  const [half, across] = [unit(plus(a, b)), unit(plus(a, times(b, -1)))];
  const [right, down] = [unit(plus(half, across)), unit(plus(half, times(across, -1)))];
  const turn = turnOf([right, down, cross(right, down)]);
  return turn && { turn, shift: times(third, sign) };
}

type Triple = readonly [number, number, number];

function times([x, y, z]: Triple, by: number): Triple {
  return [x * by, y * by, z * by];
}

function plus(one: Triple, other: Triple): Triple {
  return [one[0] + other[0], one[1] + other[1], one[2] + other[2]];
}

function size(one: Triple): number {
  return Math.hypot(...one);
}

function unit(one: Triple): Triple {
  return times(one, 1 / (size(one) || 1));
}

function cross(one: Triple, other: Triple): Triple {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}

/** The rotation vector of a rotation given by its columns. */
function turnOf([a, b, c]: readonly [Triple, Triple, Triple]): Triple | null {
  const cosine = Math.min(1, Math.max(-1, (a[0] + b[1] + c[2] - 1) / 2));
  const angle = Math.acos(cosine);
  const axis: Triple = [b[2] - c[1], c[0] - a[2], a[1] - b[0]];
  if (angle < 1e-9) return [0, 0, 0];
  // Near half a turn the axis is in the columns themselves.
  if (size(axis) < 1e-6) return halfTurn([a, b, c]);
  return times(unit(axis), angle);
}

function halfTurn(columns: readonly [Triple, Triple, Triple]): Triple | null {
  const shifted = columns.map((column, at) => column.map((value, row) => value + (row === at ? 1 : 0)));
  const largest = shifted.toSorted((one, other) => Math.hypot(...other) - Math.hypot(...one))[0];
  const [x, y, z] = largest ?? [];
  if (x === undefined || y === undefined || z === undefined) return null;
  return times(unit([x, y, z]), Math.PI);
}
