import { createRequire } from "node:module";
import type Library from "@techstark/opencv-js";
import type { Vision } from "../../src/photo/index.ts";

/** The parts of the vision library's markers that its own types leave out. */
type Markers = {
  readonly DICT_ARUCO_MIP_36h12: number;
  getPredefinedDictionary(name: number): Dictionary;
  readonly aruco_DetectorParameters: new () => object;
  readonly aruco_RefineParameters: new (distance: number, rate: number, allOrders: boolean) => object;
  readonly aruco_ArucoDetector: new (dictionary: Dictionary, parameters: object, refine: object) => Detector;
};
type Dictionary = { generateImageMarker(id: number, side: number, image: object, border: number): void };
type Detector = { detectMarkers(image: object, corners: object, ids: object): void };

// Its export is a promise of itself, which its types leave out, and which loses its nature in the test runner's import.
const load = createRequire(import.meta.url);
export const vision = (await load("@techstark/opencv-js")) as typeof Library & Markers & Vision;
const dictionary = vision.getPredefinedDictionary(vision.DICT_ARUCO_MIP_36h12);

/** The vision library's own picture of a marker: a row of text for each row of cells, 1 is white. */
export function markerRows(id: number, cells: number): readonly string[] {
  const image = new vision.Mat();
  dictionary.generateImageMarker(id, cells, image, 1);
  const across = Array.from({ length: cells }, (_, at) => at);
  const rows = across.map((row) => across.map((column) => (image.ucharAt(row, column) > 0 ? 1 : 0)).join(""));
  image.delete();
  return rows;
}

export type FoundMarker = { readonly id: number; readonly corners: readonly (readonly [number, number])[] };
export type Pixels = { readonly width: number; readonly height: number; readonly rgba: Uint8ClampedArray };

/** The markers that the vision library finds, corners clockwise from the code's own upper left, in pixels. */
export function findMarkers({ width, height, rgba }: Pixels): readonly FoundMarker[] {
  const [image, grey, ids] = [
    new vision.Mat(height, width, vision.CV_8UC4),
    new vision.Mat(),
    new vision.Mat(),
  ];
  const corners = new vision.MatVector();
  image.data.set(rgba);
  vision.cvtColor(image, grey, vision.COLOR_RGBA2GRAY);
  const refine = new vision.aruco_RefineParameters(10, 3, true);
  const detector = new vision.aruco_ArucoDetector(dictionary, new vision.aruco_DetectorParameters(), refine);
  detector.detectMarkers(grey, corners, ids);
  const found = Array.from(ids.data32S, (id: number, at) => ({
    id,
    corners: pairs(corners.get(at).data32F),
  }));
  for (const part of [image, grey, ids, corners]) part.delete();
  return found.toSorted((one, other) => one.id - other.id);
}

function pairs(flat: Float32Array): (readonly [number, number])[] {
  return Array.from({ length: flat.length / 2 }, (_, at) => [flat[2 * at] ?? 0, flat[2 * at + 1] ?? 0]);
}
