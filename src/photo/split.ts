import { hullOf, type Polygon, signedArea } from "./polygon.ts";
import type { Place } from "./types.ts";

// A contour that fills less of its hull may be of two pieces that touch; both must then fill theirs.
const wellFilled = 0.94;
// Of the perimeter: how many places are tried as the other end of a cut.
const tries = 48;
// In pixels of the contour: how deep a corner must be to be where two pieces meet.
type Splitting = { readonly deep: number; readonly leastArea: number };

/**
 * A contour cut at a concave corner where both parts then are as good as convex, again and again; the contour itself
 * where no such cut is found. Clockwise, a pixel a place.
 */
export function splitAtCorners(contour: Polygon, splitting: Splitting): readonly Polygon[] {
  if (solidity(contour) >= wellFilled) return [contour];
  const parts = bestCut(contour, splitting);
  if (parts === null) return [contour];
  const all = parts.flatMap((part) => splitAtCorners(part, splitting));
  return all.every((part) => solidity(part) >= wellFilled) ? all : [contour];
}

export function solidity(contour: Polygon): number {
  const hull = Math.abs(signedArea(hullOf(contour)));
  return hull === 0 ? 0 : Math.abs(signedArea(contour)) / hull;
}

/** The cut that leaves the least of the hulls bare, from a concave corner to anywhere. */
function bestCut(contour: Polygon, splitting: Splitting): readonly [Polygon, Polygon] | null {
  const corners = concaveCorners(contour, splitting.deep);
  const every = Math.max(1, Math.floor(contour.length / tries));
  const around = Array.from({ length: Math.floor(contour.length / every) }, (_, n) => n * every);
  const ends = [...corners, ...around];
  let [best, least]: [readonly [Polygon, Polygon] | null, number] = [null, Number.POSITIVE_INFINITY];
  for (const from of corners)
    for (const to of ends) {
      const parts = cutBetween(contour, Math.min(from, to), Math.max(from, to));
      if (parts.some((part) => Math.abs(signedArea(part)) < splitting.leastArea)) continue;
      const bare = parts.reduce((sum, part) => sum + bareOf(part), 0);
      if (bare < least) [best, least] = [parts, bare];
    }
  return best !== null && least < 0.6 * bareOf(contour) ? best : null;
}

function cutBetween(contour: Polygon, from: number, to: number): readonly [Polygon, Polygon] {
  return [contour.slice(from, to + 1), [...contour.slice(to), ...contour.slice(0, from + 1)]];
}

/** How much of the hull it leaves bare. */
function bareOf(contour: Polygon): number {
  return Math.abs(signedArea(hullOf(contour))) - Math.abs(signedArea(contour));
}

/** Between each two corners of the hull, where the contour lies deepest in it. */
function concaveCorners(contour: Polygon, deep: number): readonly number[] {
  const keys = new Map(contour.map(([x, y], at) => [`${x} ${y}`, at]));
  const onHull = hullOf(contour)
    .map(([x, y]) => keys.get(`${x} ${y}`) ?? 0)
    .toSorted((one, other) => one - other);
  return onHull.flatMap((from, at) => {
    const next = onHull[(at + 1) % onHull.length] ?? from;
    const to = next > from ? next : next + contour.length;
    const deepest = deepestBetween(contour, from, to);
    return deepest !== null && deepest.depth >= deep ? [deepest.at] : [];
  });
}

function deepestBetween(contour: Polygon, from: number, to: number): { at: number; depth: number } | null {
  const place = (at: number): Place => contour[at % contour.length] ?? [0, 0];
  const [[ax, ay], [bx, by]] = [place(from), place(to)];
  const far = Math.hypot(bx - ax, by - ay);
  if (far < 1) return null;
  let deepest = { at: from, depth: 0 };
  for (let at = from + 1; at < to; at += 1) {
    const [x, y] = place(at);
    const depth = Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / far;
    if (depth > deepest.depth) deepest = { at: at % contour.length, depth };
  }
  return deepest;
}
