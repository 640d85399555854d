import { type Target, targets } from "../engine/cards/index.ts";
import { toNumber } from "../engine/length/index.ts";
import { type Camera, viewsOf } from "./camera.ts";
import { homography, turnAndShift } from "./homography.ts";
import { fitted } from "./solve.ts";
import type { Place, SeenMarker } from "./types.ts";

/** A card or sheet as it lies on the floor: its middle and how far it is turned, in inches and radians. */
export type Lying = { readonly target: Target; readonly at: Place; readonly turned: number };

export type Calibration = {
  readonly camera: Camera;
  readonly lying: readonly Lying[];
  /** Root of the mean square distance of corners, in pixels; of all, and of the worst card or sheet. */
  readonly residual: number;
  readonly worst: number;
};

export type Setting = {
  readonly width: number;
  readonly height: number;
  /** How much larger or smaller than meant the cards were printed: 1 is as meant. */
  readonly printed: number;
  /** Of the lens, as millimetres over a frame of 36 × 24 mm, where the photo's file says so. */
  readonly focal35?: number | null;
};

/** A target with the corners that were seen of it: on the paper in inches, in the photo in pixels. */
type Seen = { readonly target: Target; readonly pairs: readonly (readonly [paper: Place, pixel: Place])[] };

// What a phone's main camera comes to, as a share of the photo's long side, and how far it may be off. Two sheets or
// more are wide enough to tell it themselves.
const usualFocal = 0.77;
const focalSpread = { said: 0.04, one: 0.08, several: 0.2 };
// In millimetres, of the frame that a lens is compared on.
const frameDiagonal = Math.hypot(36, 24);
const usualBend = 0.1;
// Of a corner, in pixels.
const cornerSpread = 0.3;

/** The camera, the floor and how each card lies, from the markers' corners. Null where they allow none. */
export function calibrated(markers: readonly SeenMarker[], setting: Setting): Calibration | null {
  const seen = seenTargets(markers, setting.printed);
  if (seen.length === 0) return null;
  const starts = [1, 0.8, 1.25]
    .map((share) => startFrom(seen, setting, share))
    .filter((start) => start !== null);
  const fits = starts.map((start) => fitted((values) => residualsOf(values, seen, setting), start));
  const best = fits.toSorted((one, other) => one.cost - other.cost)[0];
  return best === undefined ? null : calibrationOf(best.parameters, seen, setting);
}

/** Those with most corners first: the first is the one the floor is measured from. */
function seenTargets(markers: readonly SeenMarker[], printed: number): readonly Seen[] {
  return targets
    .map((target) => ({ target, pairs: pairsOf(target, markers, printed) }))
    .filter(({ pairs }) => pairs.length > 0)
    .toSorted((one, other) => other.pairs.length - one.pairs.length);
}

function pairsOf(target: Target, markers: readonly SeenMarker[], printed: number): Seen["pairs"] {
  return target.markers.flatMap(({ id, corners }) => {
    const marker = markers.find((one) => one.id === id);
    if (marker === undefined) return [];
    return corners.flatMap(({ x, y }, at) => {
      const pixel = marker.corners[at];
      const paper: Place = [toNumber(x, "in") * printed, toNumber(y, "in") * printed];
      return pixel === undefined ? [] : [[paper, pixel] as const];
    });
  });
}

/** log focal, k1, turn, shift, and for each further card its place and turn. */
function startFrom(seen: readonly Seen[], setting: Setting, share: number): number[] | null {
  const focal = share * likelyFocal(setting);
  const middle = middleOf(setting);
  const first = seen[0];
  const map = first && homography(first.pairs);
  const pose = map && turnAndShift(map, focal, middle);
  if (!pose) return null;
  const { toFloor } = viewsOf({ focal, k1: 0, middle, ...pose });
  const others = seen.slice(1).map(({ pairs }) => lyingFrom(pairs, toFloor));
  if (others.some((one) => one === null)) return null;
  return [Math.log(focal), 0, ...pose.turn, ...pose.shift, ...others.flatMap((one) => one ?? [])];
}

/** The rigid motion that brings the paper's corners onto the floor, in the least squares (Kabsch in the plane). */
function lyingFrom(pairs: Seen["pairs"], toFloor: (pixel: Place) => Place | null): number[] | null {
  const both = pairs.flatMap(([paper, pixel]) => {
    const floor = toFloor(pixel);
    return floor === null ? [] : [{ paper, floor }];
  });
  if (both.length < 3) return null;
  const [paper, floor] = [meanOf(both.map((one) => one.paper)), meanOf(both.map((one) => one.floor))];
  let [same, cross] = [0, 0];
  for (const one of both) {
    const [px, py] = [one.paper[0] - paper[0], one.paper[1] - paper[1]];
    const [fx, fy] = [one.floor[0] - floor[0], one.floor[1] - floor[1]];
    same += px * fx + py * fy;
    cross += px * fy - py * fx;
  }
  const turned = Math.atan2(cross, same);
  const [x, y] = onFloor(paper, [0, 0], turned);
  return [floor[0] - x, floor[1] - y, turned];
}

function meanOf(places: readonly Place[]): Place {
  const sum = places.reduce<Place>((total, place) => [total[0] + place[0], total[1] + place[1]], [0, 0]);
  return [sum[0] / places.length, sum[1] / places.length];
}

/** A place on a paper that lies at `at`, turned. */
export function onFloor([x, y]: Place, at: Place, turned: number): Place {
  const [cosine, sine] = [Math.cos(turned), Math.sin(turned)];
  return [at[0] + cosine * x - sine * y, at[1] + sine * x + cosine * y];
}

function middleOf({ width, height }: Setting): Place {
  return [(width - 1) / 2, (height - 1) / 2];
}

function cameraFrom(values: readonly number[], setting: Setting): Camera {
  const value = (at: number) => values[at] ?? 0;
  return {
    focal: Math.exp(value(0)),
    k1: value(1),
    turn: [value(2), value(3), value(4)],
    shift: [value(5), value(6), value(7)],
    middle: middleOf(setting),
  };
}

function lyingOf(values: readonly number[], which: number): { readonly at: Place; readonly turned: number } {
  if (which === 0) return { at: [0, 0], turned: 0 };
  const from = 8 + 3 * (which - 1);
  return { at: [values[from] ?? 0, values[from + 1] ?? 0], turned: values[from + 2] ?? 0 };
}

function residualsOf(values: readonly number[], seen: readonly Seen[], setting: Setting): readonly number[] {
  const usual = Math.log(likelyFocal(setting));
  const priors = [((values[0] ?? 0) - usual) / spreadOfFocal(seen, setting), (values[1] ?? 0) / usualBend];
  return [
    ...cornersOff(values, seen, setting)
      .flat(2)
      .map((off) => off / cornerSpread),
    ...priors,
  ];
}

/** In pixels. Cameras give it by the diagonal, rounded to a millimetre. */
function likelyFocal({ width, height, focal35 }: Setting): number {
  return focal35
    ? (focal35 / frameDiagonal) * Math.hypot(width, height)
    : usualFocal * Math.max(width, height);
}

function spreadOfFocal(seen: readonly Seen[], { focal35 }: Setting): number {
  if (focal35) return focalSpread.said;
  const sheets = seen.filter(({ target }) => target.kind === "sheet").length;
  return sheets >= 2 ? focalSpread.several : focalSpread.one;
}

/** For each card, how far each corner is from where the camera puts it, in pixels. */
function cornersOff(values: readonly number[], seen: readonly Seen[], setting: Setting): readonly Place[][] {
  const { toPhoto } = viewsOf(cameraFrom(values, setting));
  return seen.map(({ pairs }, which) => {
    const { at, turned } = lyingOf(values, which);
    return pairs.map(([paper, pixel]): Place => {
      const [x, y] = toPhoto(onFloor(paper, at, turned));
      return [x - pixel[0], y - pixel[1]];
    });
  });
}

function calibrationOf(values: readonly number[], seen: readonly Seen[], setting: Setting): Calibration {
  const off = cornersOff(values, seen, setting);
  return {
    camera: cameraFrom(values, setting),
    lying: seen.map(({ target }, which) => ({ target, ...lyingOf(values, which) })),
    residual: rootMeanSquare(off.flat()),
    worst: Math.max(...off.map(rootMeanSquare)),
  };
}

function rootMeanSquare(places: readonly Place[]): number {
  return Math.sqrt(places.reduce((total, [x, y]) => total + x * x + y * y, 0) / places.length);
}
