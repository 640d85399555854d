import type { Views } from "./camera.ts";
import { density, type FloorPicture, pixelOn } from "./floorPicture.ts";
import { type Ground, offGround } from "./ground.ts";
import { labNear, lightAt } from "./light.ts";
import { courseThrough, crossing, type Line, lineThrough, median } from "./lines.ts";
import type { EvenLight } from "./paper.ts";
import type { Polygon } from "./polygon.ts";
import type { Light, Photo, Place } from "./types.ts";

/** All that a place on the floor can be looked up in. */
export type Scene = {
  readonly photo: Photo;
  readonly views: Views;
  readonly light: EvenLight;
  readonly picture: FloorPicture;
  readonly ground: Ground;
};

export type SharpOutline = {
  readonly polygon: Polygon;
  /** Of the side that is seen worst, the share of places that agree on where it is. */
  readonly clear: number;
};

/** In inches: how far a side is looked for to both sides, first and then; and the steps of that look. */
const looks = [0.25, 0.12];
const step = 0.012;
const spared = 0.12;
const between = 0.11;
const agree = 0.02;

/** The outline with its sides where the full photo shows them. Null where a side is not to be found. */
export function sharpOutline(scene: Scene, polygon: Polygon): SharpOutline | null {
  let found: SharpOutline | null = { polygon, clear: 1 };
  for (const look of looks) found = found && withSides(scene, found.polygon, look);
  return found;
}

function withSides(scene: Scene, polygon: Polygon, look: number): SharpOutline | null {
  const sides = polygon.map((from, at) =>
    sideAt(scene, [from, polygon[(at + 1) % polygon.length] ?? from], look),
  );
  const corners = sides.map((side, at) => {
    const before = sides[(at + sides.length - 1) % sides.length];
    return side && before ? crossing(before.line, side.line) : null;
  });
  const places = corners.filter((corner) => corner !== null);
  if (places.length < polygon.length) return null;
  return { polygon: places, clear: Math.min(...sides.map(({ clear }) => clear)) };
}

// In pixels: what a lens makes of an edge.
const blur = 1.2;

type SharpSide = { readonly line: Line; readonly clear: number };

/** Where a side can't be made out it stays where it was, and is not clear at all. */
function sideAt(scene: Scene, [from, to]: readonly [Place, Place], look: number): SharpSide {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const line = lineThrough(from, to);
  const outwards: Place = [line.along[1], -line.along[0]];
  const inset = Math.min(spared + look / 2, far / 4);
  const stations = Math.max(6, Math.round((far - 2 * inset) / between));
  const profiles = Array.from({ length: stations }, (_, n) => {
    const s = inset + ((n + 0.5) / stations) * (far - 2 * inset);
    const at: Place = [from[0] + s * line.along[0], from[1] + s * line.along[1]];
    return { s, samples: profileAt(scene, at, { outwards, along: line.along, look }) };
  });
  const telling = {
    like: clothLikeness(profiles.map(({ samples }) => samples)),
    hasLines: scene.ground.hasLines,
    spare: Math.max(2, Math.round(blur / density(scene.views, [from, to]) / step)),
  };
  const points = profiles.flatMap(({ s, samples }): Place[] => {
    const far = samples === null ? null : edgeIn(samples, telling);
    return far === null ? [] : [[s, far]];
  });
  const course = points.length < stations / 3 ? null : courseThrough(points, agree);
  if (course === null) return { line, clear: 0 };
  const at: Place = [from[0] + course.offset * outwards[0], from[1] + course.offset * outwards[1]];
  const along: Place = [
    at[0] + line.along[0] + course.slope * outwards[0],
    at[1] + line.along[1] + course.slope * outwards[1],
  ];
  return { line: lineThrough(at, along), clear: (course.inliers * points.length) / stations };
}

type Look = { readonly outwards: Place; readonly along: Place; readonly look: number };
type Sample = { readonly light: Light; readonly off: number };

// In spreads: what is further off is surely cloth; cloth near the floor's colour is as far off as half of its inside.
const surelyCloth = 3;
const leastCloth = 0.5;

/** How far off the floor counts as cloth along this side. */
function clothLikeness(profiles: readonly (readonly Sample[] | null)[]): number {
  const inside = profiles.flatMap((samples) =>
    samples === null ? [] : samples.slice(0, samples.length / 3).map(({ off }) => off),
  );
  return Math.max(leastCloth, Math.min(surelyCloth, 0.5 * median(inside)));
}

/** `spare`: how many steps the light takes from one side of an edge to the other. */
type Telling = { readonly like: number; readonly hasLines: boolean; readonly spare: number };

/**
 * How far outwards of the middle the cloth ends, in inches: where what lies inside looks least like floor and what lies
 * outside most, and near there where the light passes the middle between both. Null where all looks alike.
 */
function edgeIn(samples: readonly Sample[], { like, hasLines, spare }: Telling): number | null {
  const scores = samples.map(({ off }) => Math.min(1, off / like - 1));
  const place = bestCut(hasLines ? withoutThin(scores, 3 * spare) : scores);
  if (place === null) return null;
  return (halfWay(samples, place, spare) ?? place) * step - (samples.length * step) / 2;
}

// In inches, beside one another along the side: samples are the mean of so many.
const beside = [-0.04, -0.013, 0.013, 0.04];

/** From inside to outside. On so short a way the photo's pixels lie as good as straight. */
function profileAt(scene: Scene, at: Place, { outwards, along, look }: Look): readonly Sample[] | null {
  const { photo, views, ground, picture, light: even } = scene;
  const count = 2 * Math.round(look / step);
  const half = (count * step) / 2;
  const inner = views.toPhoto([at[0] - half * outwards[0], at[1] - half * outwards[1]]);
  const outer = views.toPhoto([at[0] + half * outwards[0], at[1] + half * outwards[1]]);
  const aside = views.toPhoto([at[0] + half * along[0], at[1] + half * along[1]]);
  const middle = views.toPhoto(at);
  const [sideX, sideY] = [(aside[0] - middle[0]) / half, (aside[1] - middle[1]) / half];
  const gains = even.evened([1, 1, 1], at);
  const cell = pixelOn(picture, at);
  const samples: Sample[] = [];
  for (let n = 0; n < count; n += 1) {
    const share = (n + 0.5) / count;
    const x = inner[0] + share * (outer[0] - inner[0]);
    const y = inner[1] + share * (outer[1] - inner[1]);
    const light = meanLight(
      photo,
      beside.map((far): Place => [x + far * sideX, y + far * sideY]),
    );
    if (light === null) return null;
    const evened: Light = [light[0] * gains[0], light[1] * gains[1], light[2] * gains[2]];
    samples.push({ light, off: offGround(ground, labNear(evened), cell) });
  }
  return samples;
}

function meanLight(photo: Photo, places: readonly Place[]): Light | null {
  let red = 0;
  let green = 0;
  let blue = 0;
  for (const place of places) {
    const light = lightAt(photo, place);
    if (light === null) return null;
    red += light[0] / places.length;
    green += light[1] / places.length;
    blue += light[2] / places.length;
  }
  return [red, green, blue];
}

/** Scores in which a run of at most `thin` steps like cloth, with floor to both sides, counts as a line on the floor. */
function withoutThin(scores: readonly number[], thin: number): readonly number[] {
  const kept = [...scores];
  let start = 0;
  for (let at = 1; at <= kept.length; at += 1) {
    const was = (scores[at - 1] ?? 0) > 0;
    if (at < kept.length && was === (scores[at] ?? 0) > 0) continue;
    if (was && start > 0 && at - start <= thin) kept.fill(-1, start, at);
    start = at;
  }
  return kept;
}

/** Where to cut so that the sum before less the sum behind is largest; null where the cut is at an end. */
function bestCut(likeCloth: readonly number[]): number | null {
  let [best, place, running] = [Number.NEGATIVE_INFINITY, 0, 0];
  likeCloth.forEach((value, at) => {
    running += value;
    if (running > best) [best, place] = [running, at + 1];
  });
  return place <= 1 || place >= likeCloth.length - 1 ? null : place;
}

const window = 5;

/** In steps, where the light passes half way from what is inside to what is outside; null where both are much alike. */
function halfWay(samples: readonly Sample[], place: number, spare: number): number | null {
  const inside = meanOf(samples.slice(Math.max(0, place - spare - window), Math.max(1, place - spare)));
  const outside = meanOf(samples.slice(place + spare, place + spare + window));
  const way = [0, 1, 2].map((channel) => (outside[channel] ?? 0) - (inside[channel] ?? 0));
  const size = way.reduce((sum, value) => sum + value * value, 0);
  if (size < 4e-4) return null;
  const shares = samples.map(
    ({ light }) =>
      way.reduce((sum, value, channel) => sum + value * ((light[channel] ?? 0) - (inside[channel] ?? 0)), 0) /
      size,
  );
  const reach = Math.max(5, 2 * spare);
  let best: number | null = null;
  for (let at = Math.max(1, place - reach); at < Math.min(samples.length, place + reach); at += 1) {
    const [before, behind] = [shares[at - 1] ?? 0, shares[at] ?? 0];
    if (before >= 0.5 || behind < 0.5) continue;
    // Samples stand in the middle of their steps.
    const passed = at - 0.5 + (0.5 - before) / (behind - before);
    if (best === null || Math.abs(passed - place) < Math.abs(best - place)) best = passed;
  }
  return best;
}

function meanOf(samples: readonly Sample[]): readonly number[] {
  return [0, 1, 2].map(
    (channel) =>
      samples.reduce((sum, { light }) => sum + (light[channel] ?? 0), 0) / Math.max(1, samples.length),
  );
}
