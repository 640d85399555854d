import { type FloorPicture, floorOf } from "./floorPicture.ts";
import type { Ground } from "./ground.ts";
import { joined } from "./join.ts";
import type { Outline } from "./outline.ts";
import { centreOf, hullOf, isInside, type Polygon, signedArea, withFewerSides } from "./polygon.ts";
import { splitAtCorners } from "./split.ts";
import type { Place } from "./types.ts";
import { greyMatrix, holding, type Matrix, type Vision } from "./vision.ts";

const differs = 1;
/** In square inches: less is lint, or a thread. */
const leastArea = 0.7;
// In inches: thinner than the first is no cloth; gaps narrower than the second are a print's.
const thin = 0.16;
const gap = 0.18;
// What encloses more floor than cloth is no cloth: lines of a mat, a thread.
const leastFilled = 0.5;
// How much larger than the hull a triangle, or a figure of four sides, may be to stand for it.
const fitsTriangle = 1.08;
const fitsFour = 1.09;
const sidesOfOdd = 8;

// In inches: how deep a corner must be to be where two pieces meet.
const deepCorner = 0.2;
// In inches: no piece that is cut off by the photo's end is that wide there.
const longestCut = 9;

/** What lies on the floor. */
export function outlinesOn(picture: FloorPicture, ground: Ground, vision: Vision): readonly Outline[] {
  const mask = new Uint8Array(ground.off.length);
  for (let at = 0; at < mask.length; at += 1) mask[at] = (ground.off[at] ?? 0) > differs ? 255 : 0;
  const splitting = { deep: deepCorner * picture.perInch, leastArea: leastArea * picture.perInch ** 2 };
  const found = contoursOf(mask, picture, vision)
    .filter(({ places }) => Math.abs(signedArea(places)) >= splitting.leastArea)
    .filter(({ places }) => !runsAlongEnd(places, picture))
    .map(({ places, isNested }) => {
      const cut = splitAtCorners(places, splitting);
      // A piece whose edge is ragged, as a print may leave it, does not come apart in whole figures.
      const parts = cut.every((part) => (figureOf(hullOf(part))?.length ?? 9) <= 4) ? cut : [places];
      const split = parts.length > 1;
      const outlines = parts.map((part) => outlineOf(part, { picture, ground, split }));
      return { isNested, outlines: outlines.filter((outline) => outline !== null) };
    });
  const whole = found.filter(({ isNested }) => !isNested).flatMap(({ outlines }) => outlines);
  const nested = found.filter(({ isNested }) => isNested).flatMap(({ outlines }) => outlines);
  return joined([...whole, ...nested.filter((one) => !liesIn(one, [...whole, ...nested]))]);
}

/** What lies in a gap of a piece is a part of its print; in a gap of what is no piece, it is one by itself. */
function liesIn({ polygon }: Outline, others: readonly Outline[]): boolean {
  const [middle, area] = [centreOf(polygon), signedArea(polygon)];
  return others.some((other) => signedArea(other.polygon) > area && isInside(other.polygon, middle));
}

/** What is cut off along so much of the photo's end is what the mat or the paper under the pieces lies on. */
function runsAlongEnd(contour: readonly Place[], { width, height, seen, perInch }: FloorPicture): boolean {
  const reach = 3;
  const along = contour.filter(([x, y]) => {
    if (x < reach || y < reach || x >= width - reach || y >= height - reach) return true;
    const at = y * width + x;
    return [at - reach, at + reach, at - reach * width, at + reach * width].some((near) => seen[near] === 0);
  });
  return along.length > longestCut * perInch;
}

// How much of the floor's own spread something must differ by to be looked at where she says that a piece lies; and
// how far in Lab its colour may go from what lies right there.
const differsThere = [1, 0.7, 0.5];
const likeThere = [16, 10, 6];
const largestShare = 0.4;
const solidThere = 0.8;

/** The outline of what lies at a place of the floor picture, on the floor in inches; null where nothing can be made out. */
export function outlineAround(at: Place, { picture, ground }: Looked, vision: Vision): Polygon | null {
  const masks = [
    ...differsThere.map((least) => () => maskOf(ground.off, (off) => off > least)),
    ...likeThere.map((most) => () => maskOf(differenceFrom(picture, at), (far) => far < most)),
  ];
  for (const mask of masks) {
    const hull = contoursOf(mask(), picture, vision)
      .filter(({ places }) => isWhole(places, picture))
      .map(({ places }) => hullOf(places))
      .find((contour) => isInside(contour, at));
    const figure = hull && figureOf(hull);
    if (figure) return figure.map((place) => floorOf(picture, place));
  }
  return null;
}

type Looked = { readonly picture: FloorPicture; readonly ground: Ground };

function isWhole(contour: readonly Place[], { width, height, perInch }: FloorPicture): boolean {
  const area = Math.abs(signedArea(contour));
  const solid = area / Math.max(1, Math.abs(signedArea(hullOf(contour))));
  return area >= leastArea * perInch ** 2 && area < largestShare * width * height && solid >= solidThere;
}

function maskOf(values: Float32Array, holds: (value: number) => boolean): Uint8Array {
  return Uint8Array.from(values, (value) => (holds(value) ? 255 : 0));
}

const seedReach = 3;

/** How far each pixel's colour is from the mean round one of them, in Lab; where the photo shows nothing, very far. */
function differenceFrom({ width, height, channels, seen }: FloorPicture, [column, row]: Place): Float32Array {
  const seeds = Array.from({ length: (2 * seedReach + 1) ** 2 }, (_, n) => {
    const x = Math.round(column) - seedReach + (n % (2 * seedReach + 1));
    const y = Math.round(row) - seedReach + Math.floor(n / (2 * seedReach + 1));
    return x < 0 || y < 0 || x >= width || y >= height ? -1 : y * width + x;
  }).filter((at) => at >= 0 && seen[at] === 1);
  const mean = channels.map(
    (channel) => seeds.reduce((sum, at) => sum + (channel[at] ?? 0), 0) / seeds.length,
  );
  return Float32Array.from(seen, (isSeen, at) =>
    isSeen === 1
      ? Math.hypot(
          ...channels.map((channel, n) => (channel[at] ?? 0) - (mean[n] ?? Number.POSITIVE_INFINITY)),
        )
      : Number.POSITIVE_INFINITY,
  );
}

/** Round what is set in a mask; `isNested`: it lies in a gap of something else. */
type Contour = { readonly places: readonly Place[]; readonly isNested: boolean };

function contoursOf(mask: Uint8Array, { width, perInch }: FloorPicture, vision: Vision): readonly Contour[] {
  return holding((keep) => {
    const image = keep(greyMatrix(vision, mask, width));
    const round = (inches: number) => {
      const size = 2 * Math.round((inches * perInch) / 2) + 1;
      return keep(vision.getStructuringElement(vision.MORPH_ELLIPSE, new vision.Size(size, size)));
    };
    vision.morphologyEx(image, image, vision.MORPH_OPEN, round(thin));
    vision.morphologyEx(image, image, vision.MORPH_CLOSE, round(gap));
    vision.morphologyEx(image, image, vision.MORPH_OPEN, round(2 * thin));
    const [contours, hierarchy] = [keep(new vision.MatVector()), keep(new vision.Mat())];
    vision.findContours(image, contours, hierarchy, vision.RETR_TREE, vision.CHAIN_APPROX_NONE);
    const parents = Array.from({ length: contours.size() }, (_, at) => hierarchy.data32S[4 * at + 3] ?? -1);
    return parents.flatMap((parent, at) => {
      const depth = depthOf(parent, parents);
      // At odd depths they go round gaps.
      if (depth % 2 === 1) return [];
      return [{ places: placesOf(keep(contours.get(at))), isNested: depth > 0 }];
    });
  });
}

function depthOf(parent: number, parents: readonly number[]): number {
  return parent < 0 ? 0 : 1 + depthOf(parents[parent] ?? -1, parents);
}

function placesOf({ data32S }: Matrix): Place[] {
  return Array.from({ length: data32S.length / 2 }, (_, at) => [
    data32S[2 * at] ?? 0,
    data32S[2 * at + 1] ?? 0,
  ]);
}

type On = { readonly picture: FloorPicture; readonly ground: Ground; readonly split: boolean };

function outlineOf(contour: readonly Place[], { picture, ground, split }: On): Outline | null {
  if (contour.length < 8) return null;
  const hull = hullOf(contour);
  const area = Math.abs(signedArea(contour));
  const figure = figureOf(hull) ?? hull;
  const filled = shareFilled(figure, picture, ground);
  if (filled < leastFilled) return null;
  const polygon = figure.map((place) => floorOf(picture, place));
  return {
    polygon,
    filled,
    solid: area / Math.abs(signedArea(hull)),
    split,
    parts: 1,
    cutOff: contour.some((place) => touchesEnd(place, picture, ground)),
  };
}

/** Counted on every other pixel, both ways. */
function shareFilled(figure: Polygon, { width, height }: FloorPicture, { off }: Ground): number {
  const [xs, ys] = [figure.map(([x]) => x), figure.map(([, y]) => y)];
  const [right, bottom] = [Math.min(width - 1, Math.max(...xs)), Math.min(height - 1, Math.max(...ys))];
  let [all, cloth] = [0, 0];
  for (let y = Math.max(0, Math.floor(Math.min(...ys))); y <= bottom; y += 2)
    for (let x = Math.max(0, Math.floor(Math.min(...xs))); x <= right; x += 2) {
      if (!isInside(figure, [x, y])) continue;
      all += 1;
      cloth += Number((off[y * width + x] ?? 0) > differs);
    }
  return cloth / Math.max(1, all);
}

export function figureOf(hull: Polygon): Polygon | null {
  const size = signedArea(hull);
  const odd = withFewerSides(hull, sidesOfOdd);
  const four = odd && withFewerSides(odd, 4);
  const three = four && withFewerSides(four, 3);
  if (three && signedArea(three) < fitsTriangle * size) return three;
  return four && signedArea(four) < fitsFour * size ? four : odd;
}

function touchesEnd([x, y]: Place, { width, height }: FloorPicture, { covered }: Ground): boolean {
  const reach = 3;
  if (x < reach || y < reach || x >= width - reach || y >= height - reach) return true;
  return [
    [-reach, 0],
    [reach, 0],
    [0, -reach],
    [0, reach],
  ].some(([dx = 0, dy = 0]) => covered[(y + dy) * width + x + dx] === 1);
}
