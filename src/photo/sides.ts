import type { Views } from "./camera.ts";
import { density, type FloorPicture, pixelOn } from "./floorPicture.ts";
import { type Ground, offGroundAt } from "./ground.ts";
import { addLightAt, labNear } from "./light.ts";
import { courseThrough, crossing, type Line, lineThrough, median } from "./lines.ts";
import type { EvenLight } from "./paper.ts";
import type { Polygon } from "./polygon.ts";
import type { Unshaded } from "./shade.ts";
import { type Across, look as shadowLook, underShadow } from "./shadows.ts";
import type { Photo, Place } from "./types.ts";

/** All that a place on the floor can be looked up in. */
export type Scene = {
  readonly photo: Photo;
  readonly views: Views;
  readonly light: EvenLight;
  readonly picture: FloorPicture;
  readonly ground: Ground;
  readonly unshaded: Unshaded;
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
  return found && { ...found, polygon: withoutShadows(scene, found.polygon) };
}

function withSides(scene: Scene, polygon: Polygon, look: number): SharpOutline | null {
  const sides = sidesOf(polygon).map((side) => sideAt(scene, side, look));
  const places = whereMeet(sides.map(({ line }) => line));
  return places && { polygon: places, clear: Math.min(...sides.map(({ clear }) => clear)) };
}

type Side = readonly [from: Place, to: Place];

function sidesOf(polygon: Polygon): readonly Side[] {
  return polygon.map((from, at) => [from, polygon[(at + 1) % polygon.length] ?? from]);
}

/** Each with the one before it; null where two of them don't meet. */
function whereMeet(lines: readonly Line[]): Polygon | null {
  const corners = lines.map((line, at) => crossing(lines.at(at - 1) ?? line, line));
  const places = corners.filter((corner) => corner !== null);
  return places.length < lines.length ? null : places;
}

/** Sides that were seen where their shadow ends lie further in. */
function withoutShadows(scene: Scene, polygon: Polygon): Polygon {
  const lines = sidesOf(polygon).map(([from, to]) => {
    const { at, along } = lineThrough(from, to);
    const far = underShadow(acrossSide(scene, [from, to]));
    return { at: [at[0] - far * along[1], at[1] + far * along[0]] as const, along };
  });
  return whereMeet(lines) ?? polygon;
}

const mostStations = 40;
// In inches: what fraying alone makes of an edge.
const frayed = 0.012;

function acrossSide(scene: Scene, [from, to]: Side): Across {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const { along } = lineThrough(from, to);
  const inset = Math.min(spared + shadowLook / 2, far / 4);
  const stations = Math.min(mostStations, Math.max(6, Math.round((far - 2 * inset) / between)));
  const course = { outwards: [along[1], -along[0]] as const, along, look: shadowLook };
  const lights = Array.from({ length: stations }, (_, n) => {
    const s = inset + ((n + 0.5) / stations) * (far - 2 * inset);
    return lightAcross(scene, [from[0] + s * along[0], from[1] + s * along[1]], course);
  });
  const blurred = Math.max(frayed, (0.75 * blur) / density(scene.views, [from, to]));
  return { lights: lights.filter((light) => light !== null), step, blur: blurred };
}

// In pixels: what a lens makes of an edge.
const blur = 1.2;

type SharpSide = { readonly line: Line; readonly clear: number };

/** Where a side can't be made out it stays where it was, and is not clear at all. */
function sideAt(scene: Scene, [from, to]: Side, look: number): SharpSide {
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
/** From inside to outside: linear light, three numbers each, and how far that is off the floor. */
type Samples = { readonly light: Float64Array; readonly off: Float64Array };

// In spreads: what is further off is surely cloth; cloth near the floor's colour is as far off as half of its inside.
const surelyCloth = 3;
const leastCloth = 0.5;

/** How far off the floor counts as cloth along this side. */
function clothLikeness(profiles: readonly (Samples | null)[]): number {
  const inside = profiles.flatMap((samples) =>
    samples === null ? [] : [...samples.off.subarray(0, samples.off.length / 3)],
  );
  return Math.max(leastCloth, Math.min(surelyCloth, 0.5 * median(inside)));
}

// In inches: a mat's boldest lines, with what the lens adds.
const boldLine = 0.14;

/** `spare`: how many steps the light takes from one side of an edge to the other. */
type Telling = { readonly like: number; readonly hasLines: boolean; readonly spare: number };

/**
 * How far outwards of the middle the cloth ends, in inches: where what lies inside looks least like floor and what lies
 * outside most, and near there where the light passes the middle between both. Null where all looks alike.
 */
function edgeIn(samples: Samples, { like, hasLines, spare }: Telling): number | null {
  const scores = samples.off.map((off) => Math.min(1, off / like - 1));
  const place = bestCut(hasLines ? withoutThin(scores, Math.max(3 * spare, boldLine / step)) : scores);
  if (place === null) return null;
  return (halfWay(samples.light, place, spare) ?? place) * step - (samples.off.length * step) / 2;
}

// In inches, beside one another along the side: samples are the mean of so many.
const beside = [-0.04, -0.013, 0.013, 0.04];

function profileAt(scene: Scene, at: Place, course: Look): Samples | null {
  const light = lightAcross(scene, at, course);
  if (light === null) return null;
  const gains = scene.light.evened([1, 1, 1], at);
  const offAt = offGroundAt(scene.ground, pixelOn(scene.picture, at));
  const off = Float64Array.from({ length: light.length / 3 }, (_, n) => {
    const [red, green, blue] = [light[3 * n] ?? 0, light[3 * n + 1] ?? 0, light[3 * n + 2] ?? 0];
    return offAt(labNear([red * gains[0], green * gains[1], blue * gains[2]]));
  });
  return { light, off };
}

/** On so short a way the photo's pixels lie as good as straight. */
function lightAcross(
  { photo, views }: Scene,
  at: Place,
  { outwards, along, look }: Look,
): Float64Array | null {
  const count = 2 * Math.round(look / step);
  const half = (count * step) / 2;
  const inner = views.toPhoto([at[0] - half * outwards[0], at[1] - half * outwards[1]]);
  const outer = views.toPhoto([at[0] + half * outwards[0], at[1] + half * outwards[1]]);
  const aside = views.toPhoto([at[0] + half * along[0], at[1] + half * along[1]]);
  const middle = views.toPhoto(at);
  const beside: Place = [(aside[0] - middle[0]) / half, (aside[1] - middle[1]) / half];
  const light = new Float64Array(3 * count);
  for (let n = 0; n < count; n += 1) {
    const share = (n + 0.5) / count;
    const x = inner[0] + share * (outer[0] - inner[0]);
    const y = inner[1] + share * (outer[1] - inner[1]);
    if (!putMean(photo, [x, y], beside, light.subarray(3 * n, 3 * n + 3))) return null;
  }
  return light;
}

/** The mean light of some places beside one another; false where one lies outside the photo. */
function putMean(photo: Photo, [x, y]: Place, [sideX, sideY]: Place, light: Float64Array): boolean {
  for (const far of beside) if (!addLightAt(photo, x + far * sideX, y + far * sideY, light)) return false;
  for (let channel = 0; channel < 3; channel += 1) light[channel] = (light[channel] ?? 0) / beside.length;
  return true;
}

/** Scores in which a run of at most `thin` steps like cloth, with floor to both sides, counts as a line on the floor. */
function withoutThin(scores: Float64Array, thin: number): Float64Array {
  const kept = scores.slice();
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
function bestCut(likeCloth: Float64Array): number | null {
  let [best, place, running] = [Number.NEGATIVE_INFINITY, 0, 0];
  likeCloth.forEach((value, at) => {
    running += value;
    if (running > best) [best, place] = [running, at + 1];
  });
  return place <= 1 || place >= likeCloth.length - 1 ? null : place;
}

const window = 5;

/** In steps, where the light passes half way from what is inside to what is outside; null where both are much alike. */
function halfWay(light: Float64Array, place: number, spare: number): number | null {
  const count = light.length / 3;
  const inside = meanOf(
    light.subarray(3 * Math.max(0, place - spare - window), 3 * Math.max(1, place - spare)),
  );
  const outside = meanOf(light.subarray(3 * (place + spare), 3 * (place + spare + window)));
  const way: Triple = [outside[0] - inside[0], outside[1] - inside[1], outside[2] - inside[2]];
  const size = dot(way, way);
  if (size < 4e-4) return null;
  // Of the way, from its middle on.
  const half = dot(way, inside) + size / 2;
  const reach = Math.max(5, 2 * spare);
  const from = Math.max(1, place - reach);
  let best: number | null = null;
  let before = alongAt(light, from - 1, way) - half;
  for (let at = from; at < Math.min(count, place + reach); at += 1) {
    const behind = alongAt(light, at, way) - half;
    if (before < 0 && behind >= 0) {
      // Samples stand in the middle of their steps.
      const passed = at - 0.5 - before / (behind - before);
      if (best === null || Math.abs(passed - place) < Math.abs(best - place)) best = passed;
    }
    before = behind;
  }
  return best;
}

function alongAt(light: Float64Array, at: number, way: Triple): number {
  return (
    way[0] * (light[3 * at] ?? 0) + way[1] * (light[3 * at + 1] ?? 0) + way[2] * (light[3 * at + 2] ?? 0)
  );
}

type Triple = readonly [number, number, number];

function dot(one: Triple, other: Triple): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

function meanOf(lights: Float64Array): Triple {
  let [red, green, blue] = [0, 0, 0];
  for (let at = 0; at < lights.length; at += 3) {
    red += lights[at] ?? 0;
    green += lights[at + 1] ?? 0;
    blue += lights[at + 2] ?? 0;
  }
  const count = Math.max(1, lights.length / 3);
  return [red / count, green / count, blue / count];
}
