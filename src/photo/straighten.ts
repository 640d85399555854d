import type { Lab } from "../engine/cloth/index.ts";
import { coloursAmong } from "./colours.ts";
import { homography, onto } from "./homography.ts";
import { byteOf, labOf, lightAt, linearOf } from "./light.ts";
import type { Photo, Place } from "./types.ts";

export type Corners = readonly [upperLeft: Place, upperRight: Place, lowerRight: Place, lowerLeft: Place];

/**
 * What lies between four corners in a photo, as if seen from straight above, `width` × `height` pixels. A camera's
 * bend is let be. Null where the corners are no four-sided shape that can be seen from its right side: two change
 * places, or three lie in a line.
 */
export function straightened(
  photo: Photo,
  corners: Corners,
  { width, height }: { readonly width: number; readonly height: number },
): Photo | null {
  if (!areInOrder(corners)) return null;
  const into: Corners = [
    [-0.5, -0.5],
    [width - 0.5, -0.5],
    [width - 0.5, height - 0.5],
    [-0.5, height - 0.5],
  ];
  const map = homography(into.map((place, at) => [place, corners[at] ?? place] as const));
  if (map === null) return null;
  const rgba = new Uint8ClampedArray(4 * width * height);
  for (let at = 0; at < width * height; at += 1) {
    const place = onto(map, [at % width, Math.floor(at / width)]);
    copyPixel(photo, within(photo, place), { rgba, at: 4 * at });
  }
  return { width, height, rgba };
}

/** Clockwise as she sees them, and no corner bent inwards. */
export function areInOrder(corners: Corners): boolean {
  return corners.every((corner, at) => {
    const [next, last] = [corners[(at + 1) % 4] ?? corner, corners[(at + 2) % 4] ?? corner];
    const [x, y] = [next[0] - corner[0], next[1] - corner[1]];
    const turn = x * (last[1] - next[1]) - y * (last[0] - next[0]);
    return turn > leastTurn * Math.hypot(x, y) * Math.hypot(last[0] - next[0], last[1] - next[1]);
  });
}

// As a sine: a corner nearer to a straight line than some three degrees was no corner of hers.
const leastTurn = 0.05;

/** The edge of the top may be the edge of the photo. */
function within({ width, height }: Photo, [x, y]: Place): Place {
  return [Math.max(0, Math.min(width - 1.001, x)), Math.max(0, Math.min(height - 1.001, y))];
}

function copyPixel(photo: Photo, place: Place, { rgba, at }: { rgba: Uint8ClampedArray; at: number }): void {
  const light = lightAt(photo, place) ?? [1, 1, 1];
  for (let channel = 0; channel < 3; channel += 1) rgba[at + channel] = byteOf(light[channel] ?? 0);
  rgba[at + 3] = 255;
}

const mostColours = 6;
const mostSamples = 2_000;

/** The few main colours of a picture, the largest share first. */
export function paletteOf({ width, height, rgba }: Photo): readonly { lab: Lab; share: number }[] {
  const every = Math.max(1, Math.floor(Math.sqrt((width * height) / mostSamples)));
  const labs: Lab[] = [];
  for (let y = every >> 1; y < height; y += every)
    for (let x = every >> 1; x < width; x += every) {
      const [red, green, blue] = [0, 1, 2].map((n) => linearOf[rgba[4 * (y * width + x) + n] ?? 0] ?? 0);
      labs.push(labOf([red ?? 0, green ?? 0, blue ?? 0]));
    }
  return labs.length === 0 ? [] : coloursAmong(labs, mostColours);
}
