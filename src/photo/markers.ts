import { targets } from "../engine/cards/index.ts";
import { shrunkGrey } from "./light.ts";
import type { Photo, Place, SeenMarker } from "./types.ts";
import { greyMatrix, holding, type Vision } from "./vision.ts";

// Coarse first; then fine enough for a marker of a thirtieth of the photo.
const longSides = [1000, 2000];

// Looser ones take a gridded mat for markers.
const leastPerimeter = 0.05;
const thresholdConstant = 12;

const known = new Set(targets.flatMap(({ markers }) => markers.map(({ id }) => id)));

/** Every reference marker in the photo, each once, to about a pixel of the size it was looked for at. */
export function findMarkers(photo: Photo, vision: Vision): readonly SeenMarker[] {
  const found = new Map<number, SeenMarker>();
  for (const longSide of longSides) {
    for (const marker of markersAt(photo, vision, longSide))
      if (known.has(marker.id) && !found.has(marker.id)) found.set(marker.id, marker);
    if (isWholeSet([...found.keys()])) break;
  }
  return [...found.values()].toSorted((one, other) => one.id - other.id);
}

/** All cards, or two whole sheets, and no marker besides: there is nothing more to look for. */
function isWholeSet(ids: readonly number[]): boolean {
  const seen = targets.filter(({ markers }) => markers.some(({ id }) => ids.includes(id)));
  const isWhole = seen.every(({ markers }) => markers.every(({ id }) => ids.includes(id)));
  return isWhole && seen.length === (seen[0]?.kind === "sheet" ? 2 : 4);
}

function markersAt(photo: Photo, vision: Vision, longSide: number): readonly SeenMarker[] {
  const factor = Math.max(1, Math.ceil(Math.max(photo.width, photo.height) / longSide));
  const { bytes, width } = shrunkGrey(photo, factor);
  return holding((keep) => {
    const image = keep(greyMatrix(vision, bytes, width));
    const parameters = keep(new vision.aruco_DetectorParameters());
    parameters.minMarkerPerimeterRate = leastPerimeter;
    parameters.adaptiveThreshConstant = thresholdConstant;
    const dictionary = vision.getPredefinedDictionary(vision.DICT_ARUCO_MIP_36h12);
    const refine = keep(new vision.aruco_RefineParameters(10, 3, true));
    const detector = keep(new vision.aruco_ArucoDetector(dictionary, parameters, refine));
    const [corners, ids] = [keep(new vision.MatVector()), keep(new vision.Mat())];
    detector.detectMarkers(image, corners, ids);
    return Array.from(ids.data32S, (id, at) => ({
      id,
      corners: placesOf(keep(corners.get(at)).data32F, factor),
    }));
  });
}

function placesOf(flat: Float32Array, factor: number): readonly Place[] {
  const full = (at: number) => ((flat[at] ?? 0) + 0.5) * factor - 0.5;
  return Array.from({ length: flat.length / 2 }, (_, at) => [full(2 * at), full(2 * at + 1)] as const);
}
