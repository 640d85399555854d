import { colourDifference, type Lab } from "../engine/cloth/index.ts";
import { type FloorPicture, pixelOn } from "./floorPicture.ts";
import { centreOf, isInside, type Polygon } from "./polygon.ts";
import type { MeasuredPiece, Place } from "./types.ts";

export type Cloth = Pick<MeasuredPiece, "colours" | "busyness"> & { readonly mean: Lab };

// Of the outline: nearer to it the floor shines in.
const inner = 0.85;
const mostSamples = 600;
const mostColours = 4;
const rounds = 8;
// Nearer than this two colours are one; of less than this share it is a speck.
const one = 9;
const leastShare = 0.06;

/** What a piece is made of: a few colours with their shares, and how busy it is. Null of what is too small to tell. */
export function clothOf(picture: FloorPicture, polygon: Polygon, unshaded: (lab: Lab) => Lab): Cloth | null {
  const labs = labsInside(picture, polygon);
  if (labs.length < 12) return null;
  const mean = meanOf(labs);
  const square = labs.reduce((sum, lab) => sum + apart(lab, mean) ** 2, 0) / labs.length;
  return { mean, busyness: Math.sqrt(square), colours: coloursAmong(labs.map(unshaded), mostColours) };
}

function labsInside(picture: FloorPicture, polygon: Polygon): readonly Lab[] {
  const [cx, cy] = centreOf(polygon);
  const shrunk = polygon.map(
    ([x, y]): Place => pixelOn(picture, [cx + inner * (x - cx), cy + inner * (y - cy)]),
  );
  const [xs, ys] = [shrunk.map(([x]) => x), shrunk.map(([, y]) => y)];
  const [left, top] = [Math.max(0, Math.ceil(Math.min(...xs))), Math.max(0, Math.ceil(Math.min(...ys)))];
  const [right, bottom] = [
    Math.min(picture.width, Math.max(...xs)),
    Math.min(picture.height, Math.max(...ys)),
  ];
  const every = Math.max(1, Math.floor(Math.sqrt(((right - left) * (bottom - top)) / mostSamples)));
  const labs: Lab[] = [];
  for (let y = top; y < bottom; y += every)
    for (let x = left; x < right; x += every) {
      const at = y * picture.width + x;
      if (picture.seen[at] === 1 && isInside(shrunk, [x, y])) labs.push(labAt(picture, at));
    }
  return labs;
}

function labAt({ channels: [l, a, b] }: FloorPicture, at: number): Lab {
  return { l: l[at] ?? 0, a: a[at] ?? 0, b: b[at] ?? 0 };
}

/**
 * A few colours that stand for many, the largest share first: groups round their means (Lloyd 1982), begun from
 * colours far from one another (Gonzalez 1985).
 */
export function coloursAmong(labs: readonly Lab[], most: number): Cloth["colours"] {
  let middles = farApart(labs, most);
  for (let round = 0; round < rounds; round += 1)
    middles = grouped(labs, middles).map((group, at) =>
      group.length > 0 ? meanOf(group) : (middles[at] ?? meanOf(labs)),
    );
  const groups = merged(grouped(labs, middles).filter((group) => group.length > 0));
  const large = groups.filter((group) => group.length >= leastShare * labs.length);
  // Specks go to what they are most like, so that the whole keeps its light.
  const wholes = grouped(labs, large.map(meanOf));
  return wholes
    .filter((group) => group.length > 0)
    .map((group) => ({ lab: mixedOf(group), share: group.length / labs.length }))
    .toSorted((first, second) => second.share - first.share);
}

function farApart(labs: readonly Lab[], most: number): readonly Lab[] {
  const middles: Lab[] = [];
  const far = Float64Array.from(labs, () => Number.POSITIVE_INFINITY);
  let last = meanOf(labs);
  while (middles.length < most) {
    labs.forEach((lab, at) => {
      far[at] = Math.min(far[at] ?? 0, apart(lab, last));
    });
    const furthest = labs[far.indexOf(Math.max(...far))];
    if (furthest === undefined) break;
    middles.push(furthest);
    last = furthest;
  }
  return middles;
}

function grouped(labs: readonly Lab[], middles: readonly Lab[]): readonly Lab[][] {
  const groups: Lab[][] = middles.map(() => []);
  for (const lab of labs) groups[nearest(lab, middles)]?.push(lab);
  return groups;
}

function nearest(lab: Lab, middles: readonly Lab[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < middles.length; at += 1) {
    const far = apart(lab, middles[at] ?? lab);
    if (far >= least) continue;
    least = far;
    best = at;
  }
  return best;
}

function merged(groups: readonly Lab[][]): readonly Lab[][] {
  for (const [at, group] of groups.entries()) {
    const like = groups.findIndex(
      (other, n) => n > at && colourDifference(meanOf(group), meanOf(other)) < one,
    );
    if (like < 0) continue;
    const joined = [...group, ...(groups[like] ?? [])];
    return merged([...groups.filter((_, n) => n !== at && n !== like), joined]);
  }
  return groups;
}

function meanOf(labs: readonly Lab[]): Lab {
  let [l, a, b] = [0, 0, 0];
  for (const lab of labs) {
    l += lab.l;
    a += lab.a;
    b += lab.b;
  }
  return { l: l / labs.length, a: a / labs.length, b: b / labs.length };
}

/** As the eye mixes them from afar: the mean of their light (CIE 15:2018, D65). */
function mixedOf(labs: readonly Lab[]): Lab {
  let [x, y, z] = [0, 0, 0];
  for (const { l, a, b } of labs) {
    const root = (l + 16) / 116;
    x += cubed(root + a / 500);
    y += cubed(root);
    z += cubed(root - b / 200);
  }
  const [u, v, w] = [rooted(x / labs.length), rooted(y / labs.length), rooted(z / labs.length)];
  return { l: 116 * v - 16, a: 500 * (u - v), b: 200 * (v - w) };
}

const bend = 6 / 29;

function cubed(root: number): number {
  return root > bend ? root ** 3 : 3 * bend ** 2 * (root - 4 / 29);
}

function rooted(value: number): number {
  return value > bend ** 3 ? Math.cbrt(value) : value / (3 * bend ** 2) + 4 / 29;
}

function apart(first: Lab, second: Lab): number {
  const l = first.l - second.l;
  const a = first.a - second.a;
  const b = first.b - second.b;
  return Math.sqrt(l * l + a * a + b * b);
}
