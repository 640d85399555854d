import { type Target, targets } from "../engine/cards/index.ts";
import { toNumber } from "../engine/length/index.ts";
import type { Camera } from "./camera.ts";
import { cameraOver, type Pose, type SeenPaper } from "./cameraFit.ts";
import type { Place, SeenMarker } from "./types.ts";

/** A card or sheet as it lies on the floor. */
export type Lying = Pose & { readonly target: Target };

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

/** A target with the corners that were seen of it. */
type Seen = { readonly target: Target; readonly pairs: SeenPaper };

/** The camera, the floor and how each card lies, from the markers' corners. Null where they allow none. */
export function calibrated(markers: readonly SeenMarker[], setting: Setting): Calibration | null {
  const seen = seenTargets(markers, setting.printed);
  const { width, height, focal35 = null } = setting;
  const isWide = seen.filter(({ target }) => target.kind === "sheet").length >= 2;
  const fit = cameraOver(
    seen.map(({ pairs }) => pairs),
    { width, height, focal35, isWide },
  );
  if (fit === null) return null;
  const { poses, ...rest } = fit;
  const lying = seen.flatMap(({ target }, which) => {
    const pose = poses[which];
    return pose === undefined ? [] : [{ target, ...pose }];
  });
  return { ...rest, lying };
}

/** Those with most corners first: the first is the one the floor is measured from. */
function seenTargets(markers: readonly SeenMarker[], printed: number): readonly Seen[] {
  return targets
    .map((target) => ({ target, pairs: pairsOf(target, markers, printed) }))
    .filter(({ pairs }) => pairs.length > 0)
    .toSorted((one, other) => other.pairs.length - one.pairs.length);
}

function pairsOf(target: Target, markers: readonly SeenMarker[], printed: number): SeenPaper {
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
