import { addLightAt, luminance } from "./light.ts";
import { courseThrough, crossing, type Line, lineThrough } from "./lines.ts";
import type { Photo, Place, SeenMarker } from "./types.ts";

const stations = 40;
/** From the corners, as a share of a side: what lies nearer is rounded by the lens. */
const spared = 0.1;

/**
 * A marker with its corners to a fraction of a pixel: a straight line is laid through the places along each side where
 * the light passes half way between paper and ink, and corners are where the lines cross. Null where a side can't be
 * seen. Twice, first with a wide look and then with a close one.
 */
export function sharpened(photo: Photo, marker: SeenMarker): SeenMarker | null {
  const wide = withLines(photo, marker, 0.8);
  return wide && withLines(photo, wide, 0.5);
}

/** `look`: how far to both sides of a side, in cells of the marker. */
function withLines(photo: Photo, { id, corners }: SeenMarker, look: number): SeenMarker | null {
  const lines = corners.map((from, at) => sideLine(photo, from, corners[(at + 1) % 4] ?? from, look));
  const crossings = lines.map((line, at) => {
    const before = lines[(at + 3) % 4];
    return line && before ? crossing(before, line) : null;
  });
  const found = crossings.filter((place) => place !== null);
  return found.length === 4 ? { id, corners: found } : null;
}

function sideLine(photo: Photo, from: Place, to: Place, look: number): Line | null {
  const side = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const line = lineThrough(from, to);
  const reach = (look * side) / 8;
  const points = Array.from(
    { length: stations },
    (_, at) => spared + (at / (stations - 1)) * (1 - 2 * spared),
  )
    .map((share) => [share * side, edgeAt(photo, along(line, share * side), normalOf(line), reach)] as const)
    .filter((point): point is readonly [number, number] => point[1] !== null);
  if (points.length < stations / 2) return null;
  const course = courseThrough(points, 0.15);
  return course && moved(line, course.offset, course.slope);
}

/** How far along `normal` the light passes the middle between both ends; ink lies behind. Null if it never does. */
function edgeAt(photo: Photo, at: Place, normal: Place, reach: number): number | null {
  const steps = Math.max(4, Math.ceil(reach / 0.5));
  const values: number[] = [];
  const light = new Float64Array(3);
  for (let step = -steps; step <= steps; step += 1) {
    const far = (step / steps) * reach;
    light.fill(0);
    if (!addLightAt(photo, at[0] + far * normal[0], at[1] + far * normal[1], light)) return null;
    values.push(luminance([light[0] ?? 0, light[1] ?? 0, light[2] ?? 0]));
  }
  const quarter = Math.max(1, Math.floor(values.length / 4));
  const [first, last] = [mean(values.slice(0, quarter)), mean(values.slice(-quarter))];
  // Paper must be clearly lighter than ink.
  if (first < 1.5 * last) return null;
  const half = (first + last) / 2;
  const passed = values.findIndex(
    (value, step) => step > 0 && value < half && (values[step - 1] ?? 0) >= half,
  );
  if (passed < 0) return null;
  const [before, behind] = [values[passed - 1] ?? 0, values[passed] ?? 0];
  return ((passed - 1 + (before - half) / (before - behind)) / steps - 1) * reach;
}

function mean(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

/** Inwards, for corners that run clockwise as seen (y down). */
function normalOf({ along: [x, y] }: Line): Place {
  return [-y, x];
}

function along({ at, along: [x, y] }: Line, far: number): Place {
  return [at[0] + far * x, at[1] + far * y];
}

/** The line through the course that was measured from it. */
function moved(line: Line, offset: number, slope: number): Line {
  const [x, y] = normalOf(line);
  const at: Place = [line.at[0] + offset * x, line.at[1] + offset * y];
  return lineThrough(at, [at[0] + line.along[0] + slope * x, at[1] + line.along[1] + slope * y]);
}
