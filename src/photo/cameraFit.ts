import { type Camera, viewsOf } from "./camera.ts";
import { homography, turnAndShift } from "./homography.ts";
import { fitted } from "./solve.ts";
import type { Place } from "./types.ts";

/** What was seen of a flat paper: places on it in inches, each with where it lies in the photo, in pixels. */
export type SeenPaper = readonly (readonly [paper: Place, pixel: Place])[];

/** How a paper lies on the floor: where its own middle is and how far it is turned, in inches and radians. */
export type Pose = { readonly at: Place; readonly turned: number };

export type CameraFit = {
  readonly camera: Camera;
  /** Of each paper, in their order; the first is what the floor is measured from. */
  readonly poses: readonly Pose[];
  /** Root of the mean square distance of places, in pixels; of all, and of the worst paper. */
  readonly residual: number;
  readonly worst: number;
};

export type Lens = {
  readonly width: number;
  readonly height: number;
  /** As millimetres over a frame of 36 × 24 mm, where the photo's file says so. */
  readonly focal35?: number | null;
  /** Do the papers reach wide enough to tell the focal length themselves? */
  readonly isWide: boolean;
};

// What a phone's main camera comes to, as a share of the photo's long side, and how far it may be off.
const usualFocal = 0.77;
const focalSpread = { said: 0.04, narrow: 0.08, wide: 0.2 };
// In millimetres, of the frame that a lens is compared on.
const frameDiagonal = Math.hypot(36, 24);
const usualBend = 0.1;
// Of a place, in pixels.
const placeSpread = 0.3;

/** The camera and how each paper lies, by Levenberg–Marquardt from three focal lengths. Null where they allow none. */
export function cameraOver(papers: readonly SeenPaper[], lens: Lens): CameraFit | null {
  const starts = [1, 0.8, 1.25]
    .map((share) => startFrom(papers, lens, share))
    .filter((start) => start !== null);
  const fits = starts.map((start) => fitted((values) => residualsOf(values, papers, lens), start));
  const best = fits.toSorted((one, other) => one.cost - other.cost)[0];
  return best === undefined ? null : fitOf(best.parameters, papers, lens);
}

/** log focal, k1, turn, shift, and for each further paper its place and turn. */
function startFrom(papers: readonly SeenPaper[], lens: Lens, share: number): number[] | null {
  const focal = share * likelyFocal(lens);
  const middle = middleOf(lens);
  const first = papers[0];
  const map = first && homography(first);
  const pose = map && turnAndShift(map, focal, middle);
  if (!pose) return null;
  const { toFloor } = viewsOf({ focal, k1: 0, middle, ...pose });
  const others = papers.slice(1).map((paper) => lyingFrom(paper, toFloor));
  if (others.some((one) => one === null)) return null;
  return [Math.log(focal), 0, ...pose.turn, ...pose.shift, ...others.flatMap((one) => one ?? [])];
}

/** The rigid motion that brings the paper's corners onto the floor, in the least squares (Kabsch in the plane). */
function lyingFrom(seen: SeenPaper, toFloor: (pixel: Place) => Place | null): number[] | null {
  const both = seen.flatMap(([paper, pixel]) => {
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

function middleOf({ width, height }: Lens): Place {
  return [(width - 1) / 2, (height - 1) / 2];
}

function cameraFrom(values: readonly number[], lens: Lens): Camera {
  const value = (at: number) => values[at] ?? 0;
  return {
    focal: Math.exp(value(0)),
    k1: value(1),
    turn: [value(2), value(3), value(4)],
    shift: [value(5), value(6), value(7)],
    middle: middleOf(lens),
  };
}

function poseOf(values: readonly number[], which: number): Pose {
  if (which === 0) return { at: [0, 0], turned: 0 };
  const from = 8 + 3 * (which - 1);
  return { at: [values[from] ?? 0, values[from + 1] ?? 0], turned: values[from + 2] ?? 0 };
}

function residualsOf(values: readonly number[], papers: readonly SeenPaper[], lens: Lens): readonly number[] {
  const usual = Math.log(likelyFocal(lens));
  const priors = [((values[0] ?? 0) - usual) / spreadOfFocal(lens), bendOff(values[1] ?? 0)];
  return [
    ...placesOff(values, papers, lens)
      .flat(2)
      .map((off) => off / placeSpread),
    ...priors,
  ];
}

/**
 * Phones straighten what their lens bends, so most bend hardly; one that does bend may do so by any amount. So the odds
 * fall off as Cauchy's do: a small bend is held near none, a large one is believed.
 */
function bendOff(k1: number): number {
  const share = k1 / usualBend;
  return Math.sign(k1) * Math.sqrt(Math.log1p(share * share));
}

/** In pixels. Cameras give it by the diagonal, rounded to a millimetre. */
function likelyFocal({ width, height, focal35 }: Lens): number {
  return focal35
    ? (focal35 / frameDiagonal) * Math.hypot(width, height)
    : usualFocal * Math.max(width, height);
}

function spreadOfFocal({ focal35, isWide }: Lens): number {
  if (focal35) return focalSpread.said;
  return isWide ? focalSpread.wide : focalSpread.narrow;
}

/** For each paper, how far each place is from where the camera puts it, in pixels. */
function placesOff(values: readonly number[], papers: readonly SeenPaper[], lens: Lens): readonly Place[][] {
  const { toPhoto } = viewsOf(cameraFrom(values, lens));
  return papers.map((paper, which) => {
    const { at, turned } = poseOf(values, which);
    return paper.map(([place, pixel]): Place => {
      const [x, y] = toPhoto(onFloor(place, at, turned));
      return [x - pixel[0], y - pixel[1]];
    });
  });
}

function fitOf(values: readonly number[], papers: readonly SeenPaper[], lens: Lens): CameraFit {
  const off = placesOff(values, papers, lens);
  return {
    camera: cameraFrom(values, lens),
    poses: papers.map((_, which) => poseOf(values, which)),
    residual: rootMeanSquare(off.flat()),
    worst: Math.max(...off.map(rootMeanSquare)),
  };
}

function rootMeanSquare(places: readonly Place[]): number {
  return Math.sqrt(places.reduce((total, [x, y]) => total + x * x + y * y, 0) / places.length);
}
