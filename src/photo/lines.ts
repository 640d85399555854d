import type { Place } from "./types.ts";

/** A straight line through `at`, `along` of length 1. */
export type Line = { readonly at: Place; readonly along: Place };

export function lineThrough(from: Place, to: Place): Line {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const far = Math.hypot(x, y);
  return { at: from, along: [x / far, y / far] };
}

/** Where two lines cross; null where they are as good as parallel. */
export function crossing(one: Line, other: Line): Place | null {
  const turn = one.along[0] * other.along[1] - one.along[1] * other.along[0];
  if (Math.abs(turn) < 1e-6) return null;
  const [x, y] = [other.at[0] - one.at[0], other.at[1] - one.at[1]];
  const far = (x * other.along[1] - y * other.along[0]) / turn;
  return [one.at[0] + far * one.along[0], one.at[1] + far * one.along[1]];
}

/** A straight course through points (s, d), d = offset + slope · s, and the share of points that lie on it. */
export type Course = { readonly offset: number; readonly slope: number; readonly inliers: number };

const rounds = 12;

/**
 * The course most points agree on: least squares, weighed anew with Tukey's biweight (tuning 4.685 times the spread,
 * which is never taken for less than `least`). Null of fewer than three points.
 */
export function courseThrough(points: readonly Place[], least: number): Course | null {
  if (points.length < 3) return null;
  let course: Course = { offset: median(points.map(([, d]) => d)), slope: 0, inliers: 0 };
  for (let round = 0; round < rounds; round += 1) {
    const off = points.map(([s, d]) => d - course.offset - course.slope * s);
    const reach = 4.685 * Math.max(least, 1.4826 * median(off.map(Math.abs)));
    const weights = off.map((value) => (Math.abs(value) < reach ? (1 - (value / reach) ** 2) ** 2 : 0));
    course = weighted(points, weights) ?? course;
  }
  const near = points.filter(([s, d]) => Math.abs(d - course.offset - course.slope * s) < 3 * least);
  return { ...course, inliers: near.length / points.length };
}

function weighted(points: readonly Place[], weights: readonly number[]): Course | null {
  let [n, s, d, ss, sd] = [0, 0, 0, 0, 0];
  points.forEach(([along, off], at) => {
    const weight = weights[at] ?? 0;
    n += weight;
    s += weight * along;
    d += weight * off;
    ss += weight * along * along;
    sd += weight * along * off;
  });
  const turn = n * ss - s * s;
  if (turn <= 1e-12) return null;
  const slope = (n * sd - s * d) / turn;
  return { offset: (d - slope * s) / n, slope, inliers: 0 };
}

export function median(values: readonly number[]): number {
  // Arrays of numbers alone sort by size without being told how, and fast.
  const sorted = new Float64Array(values).sort();
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
}
