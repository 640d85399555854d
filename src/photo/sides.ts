import type { Views } from "./camera.ts";
import { type FloorPicture, pixelOn } from "./floorPicture.ts";
import { type Ground, offGround } from "./ground.ts";
import { lightAt } from "./light.ts";
import { courseThrough, crossing, type Line, lineThrough } from "./lines.ts";
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
  return { polygon: places, clear: Math.min(...sides.map((side) => side?.clear ?? 0)) };
}

function sideAt(
  scene: Scene,
  [from, to]: readonly [Place, Place],
  look: number,
): { line: Line; clear: number } | null {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const line = lineThrough(from, to);
  const outwards: Place = [line.along[1], -line.along[0]];
  const inset = Math.min(spared + look / 2, far / 4);
  const stations = Math.max(6, Math.round((far - 2 * inset) / between));
  const points = Array.from(
    { length: stations },
    (_, at) => inset + ((at + 0.5) / stations) * (far - 2 * inset),
  )
    .map(
      (s) =>
        [
          s,
          edgeAt(scene, [line.at[0] + s * line.along[0], line.at[1] + s * line.along[1]], {
            outwards,
            along: line.along,
            look,
          }),
        ] as const,
    )
    .filter((point): point is readonly [number, number] => point[1] !== null);
  const course = points.length < stations / 3 ? null : courseThrough(points, agree);
  if (course === null) return null;
  const at: Place = [from[0] + course.offset * outwards[0], from[1] + course.offset * outwards[1]];
  const along: Place = [
    at[0] + line.along[0] + course.slope * outwards[0],
    at[1] + line.along[1] + course.slope * outwards[1],
  ];
  return { line: lineThrough(at, along), clear: (course.inliers * points.length) / stations };
}

type Look = { readonly outwards: Place; readonly along: Place; readonly look: number };

/**
 * How far outwards of `at` the cloth ends, in inches: where what lies inside looks least like floor and what lies
 * outside most, and near there where the light passes the middle between both. Null where all looks alike.
 */
function edgeAt(scene: Scene, at: Place, look: Look): number | null {
  const samples = profileAt(scene, at, look);
  if (samples === null) return null;
  const place = bestCut(samples.map(({ off }) => Math.min(1, off / 3 - 1)));
  if (place === null) return null;
  return (halfWay(samples, place) ?? place) * step - (samples.length * step) / 2;
}

type Sample = { readonly light: Light; readonly off: number };

/** From inside to outside; each the mean of a few beside one another along the side. */
function profileAt(scene: Scene, at: Place, { outwards, along, look }: Look): readonly Sample[] | null {
  const { ground, picture, light: even } = scene;
  const count = 2 * Math.round(look / step);
  const samples: Sample[] = [];
  for (let n = 0; n < count; n += 1) {
    const far = (n + 0.5 - count / 2) * step;
    const floor: Place = [at[0] + far * outwards[0], at[1] + far * outwards[1]];
    const light = meanLight(scene, floor, along);
    if (light === null) return null;
    samples.push({ light, off: offGround(ground, even.lab(light, floor), pixelOn(picture, floor)) });
  }
  return samples;
}

function meanLight({ photo, views }: Scene, [x, y]: Place, along: Place): Light | null {
  let [red, green, blue] = [0, 0, 0];
  for (const far of [-0.04, -0.013, 0.013, 0.04]) {
    const light = lightAt(photo, views.toPhoto([x + far * along[0], y + far * along[1]]));
    if (light === null) return null;
    red += light[0] / 4;
    green += light[1] / 4;
    blue += light[2] / 4;
  }
  return [red, green, blue];
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
const spare = 2;

/** In steps, where the light passes half way from what is inside to what is outside; null where both are much alike. */
function halfWay(samples: readonly Sample[], place: number): number | null {
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
  let best: number | null = null;
  for (let at = Math.max(1, place - 5); at < Math.min(samples.length, place + 5); at += 1) {
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
