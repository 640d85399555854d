import { crossing, lineThrough } from "./lines.ts";
import type { Place } from "./types.ts";

export type Polygon = readonly Place[];

/** Positive where the corners run clockwise as seen, y down. */
export function signedArea(polygon: Polygon): number {
  return polygon.reduce((sum, [x, y], at) => {
    const [u, v] = polygon[(at + 1) % polygon.length] ?? [x, y];
    return sum + (x * v - u * y) / 2;
  }, 0);
}

/** The convex hull, clockwise as seen (Andrew's monotone chain, 1979). */
export function hullOf(places: readonly Place[]): Polygon {
  const sorted = places.toSorted((one, other) => one[0] - other[0] || one[1] - other[1]);
  const half = (run: readonly Place[]) => {
    const kept: Place[] = [];
    for (const place of run) {
      while (kept.length > 1 && turnAt(kept.at(-2) ?? place, kept.at(-1) ?? place, place) <= 0) kept.pop();
      kept.push(place);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

function turnAt(from: Place, at: Place, to: Place): number {
  return (at[0] - from[0]) * (to[1] - from[1]) - (at[1] - from[1]) * (to[0] - from[0]);
}

/**
 * A convex polygon of `sides` sides round another: sides are left out one by one, always the one whose neighbours meet
 * with the least area added. Null where that can't be.
 */
export function withFewerSides(hull: Polygon, sides: number): Polygon | null {
  const polygon = [...hull];
  const meetings = polygon.map((_, at) => withoutSide(polygon, at));
  while (polygon.length > sides) {
    const at = leastAdded(meetings);
    const meeting = meetings[at];
    if (!meeting) return null;
    const next = (at + 1) % polygon.length;
    polygon[at] = meeting.meets;
    polygon.splice(next, 1);
    meetings.splice(next, 1);
    // Two sides on both hands have a corner that is another now.
    const from = next === 0 ? at - 1 : at;
    for (let off = -2; off <= 1; off += 1) {
      const beside = (from + off + 2 * polygon.length) % polygon.length;
      meetings[beside] = withoutSide(polygon, beside);
    }
  }
  return polygon;
}

function leastAdded(meetings: readonly (Meeting | null)[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < meetings.length; at += 1) {
    const added = meetings[at]?.added ?? Number.POSITIVE_INFINITY;
    if (added >= least) continue;
    least = added;
    best = at;
  }
  return best;
}

type Meeting = { readonly meets: Place; readonly added: number };

/** The side from corner `at` to the next is left out, and its neighbours run on until they meet. */
function withoutSide(polygon: Polygon, at: number): Meeting | null {
  const [from, to] = [cornerOf(polygon, at), cornerOf(polygon, at + 1)];
  const before = lineThrough(cornerOf(polygon, at - 1), from);
  const meets = crossing(before, lineThrough(cornerOf(polygon, at + 2), to));
  if (meets === null) return null;
  // They must meet outside the side, not behind the polygon.
  const added = signedArea([from, meets, to]);
  return added < 0 ? null : { meets, added };
}

function cornerOf(polygon: Polygon, which: number): Place {
  return polygon[(which + polygon.length) % polygon.length] ?? [0, 0];
}

export function centreOf(polygon: Polygon): Place {
  const sum = polygon.reduce<Place>((total, place) => [total[0] + place[0], total[1] + place[1]], [0, 0]);
  return [sum[0] / polygon.length, sum[1] / polygon.length];
}

export function isInside(polygon: Polygon, [x, y]: Place): boolean {
  let inside = false;
  let [ax, ay] = polygon.at(-1) ?? [x, y];
  for (const [bx, by] of polygon) {
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    [ax, ay] = [bx, by];
  }
  return inside;
}

export function sideLengths(polygon: Polygon): number[] {
  return polygon.map(([x, y], at) => {
    const [u, v] = polygon[(at + 1) % polygon.length] ?? [x, y];
    return Math.hypot(u - x, v - y);
  });
}

/** In degrees, at each corner. */
export function anglesOf(polygon: Polygon): number[] {
  return polygon.map(([x, y], at) => {
    const [ax, ay] = polygon[(at + polygon.length - 1) % polygon.length] ?? [x, y];
    const [bx, by] = polygon[(at + 1) % polygon.length] ?? [x, y];
    const one = Math.atan2(ay - y, ax - x);
    const other = Math.atan2(by - y, bx - x);
    const turn = Math.abs(one - other) * (180 / Math.PI);
    return turn > 180 ? 360 - turn : turn;
  });
}

// In degrees. Cut by hand, a corner may be off by this much.
const square = 4;

/** Four corners, each as good as a right angle. */
export function isRightAngled(polygon: Polygon): boolean {
  return polygon.length === 4 && anglesOf(polygon).every((angle) => Math.abs(angle - 90) < square);
}

/** The largest rectangle inside a convex polygon with a side along one of its sides, among those of a fine grid. */
export function rectangleInside(polygon: Polygon): { readonly width: number; readonly height: number } {
  const found = polygon.map((from, at) => {
    const to = polygon[(at + 1) % polygon.length] ?? from;
    const turn = -Math.atan2(to[1] - from[1], to[0] - from[0]);
    const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
    return straightInside(polygon.map(([x, y]) => [cosine * x - sine * y, sine * x + cosine * y]));
  });
  return (
    found.toSorted((one, other) => other.width * other.height - one.width * one.height)[0] ?? {
      width: 0,
      height: 0,
    }
  );
}

const grid = 40;

/** In a convex polygon a rectangle's two upright sides alone say how high it can be. */
function straightInside(polygon: Polygon): { width: number; height: number } {
  const xs = polygon.map(([x]) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const columns = Array.from({ length: grid + 1 }, (_, at) => left + (at / grid) * (right - left));
  const spans = columns.map((x) => spanAt(polygon, x));
  let best = { width: 0, height: 0 };
  for (let from = 0; from < grid; from += 1)
    for (let to = from + 1; to <= grid; to += 1) {
      const [one, other] = [spans[from], spans[to]];
      if (!one || !other) continue;
      const height = Math.min(one[1], other[1]) - Math.max(one[0], other[0]);
      const width = (columns[to] ?? 0) - (columns[from] ?? 0);
      if (height > 0 && width * height > best.width * best.height) best = { width, height };
    }
  return best;
}

function spanAt(polygon: Polygon, x: number): Place | null {
  const ys = polygon.flatMap(([ax, ay], at) => {
    const [bx, by] = polygon[(at + 1) % polygon.length] ?? [ax, ay];
    if (Math.min(ax, bx) > x + 1e-9 || Math.max(ax, bx) < x - 1e-9) return [];
    return Math.abs(bx - ax) < 1e-9 ? [ay, by] : [ay + ((x - ax) / (bx - ax)) * (by - ay)];
  });
  return ys.length < 2 ? null : [Math.min(...ys), Math.max(...ys)];
}

/** How far two polygons that do not overlap are apart: the least from a corner of one to a side of the other. */
export function gapBetween(one: Polygon, other: Polygon): number {
  return Math.min(...one.map((place) => farFrom(other, place)), ...other.map((place) => farFrom(one, place)));
}

function farFrom(polygon: Polygon, [x, y]: Place): number {
  if (isInside(polygon, [x, y])) return 0;
  const far = polygon.map(([ax, ay], at) => {
    const [bx, by] = polygon[(at + 1) % polygon.length] ?? [ax, ay];
    const [dx, dy] = [bx - ax, by - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / Math.max(1e-12, dx * dx + dy * dy);
    const share = Math.max(0, Math.min(1, along));
    return Math.hypot(x - ax - share * dx, y - ay - share * dy);
  });
  return Math.min(...far);
}
