import { homography, onto } from "./homography.ts";
import { byteOf, lightAt } from "./light.ts";
import { isInside } from "./polygon.ts";
import type { MeasuredPiece, Photo, Place } from "./types.ts";

/**
 * A piece cut out of its photo and straightened, its longer side `side` pixels: a rectangle fills its picture, a
 * triangle has its right angle at the lower left, an odd shape stands as the photo shows it. What is no cloth is clear.
 */
export function cutOut(
  photo: Photo,
  piece: Pick<MeasuredPiece, "kind" | "measured" | "pixels">,
  side: number,
): Photo {
  const { width, height, corners } = frameOf(piece);
  const scale = side / Math.max(width, height);
  const size = {
    width: Math.max(1, Math.round(width * scale)),
    height: Math.max(1, Math.round(height * scale)),
  };
  const into: readonly Place[] = [
    [-0.5, -0.5],
    [size.width - 0.5, -0.5],
    [size.width - 0.5, size.height - 0.5],
    [-0.5, size.height - 0.5],
  ];
  const map = homography(into.map((place, at) => [place, corners[at] ?? place] as const));
  const rgba = new Uint8ClampedArray(4 * size.width * size.height);
  if (map === null) return { ...size, rgba };
  for (let at = 0; at < size.width * size.height; at += 1) {
    const place = onto(map, [at % size.width, Math.floor(at / size.width)]);
    if (isInside(piece.pixels, place)) show(photo, place, { rgba, at });
  }
  return { ...size, rgba };
}

type Frame = {
  readonly width: number;
  readonly height: number;
  /** In the photo, of the cut-out's upper left corner and on, clockwise. */
  readonly corners: readonly Place[];
};

function frameOf({ kind, measured, pixels }: Pick<MeasuredPiece, "kind" | "measured" | "pixels">): Frame {
  if (kind === "triangle" && pixels.length === 3) return triangleFrame(pixels, measured);
  if (kind !== "odd" && pixels.length === 4) return uprightFrame(pixels, measured);
  const [xs, ys] = [pixels.map(([x]) => x), pixels.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return {
    width: right - left,
    height: bottom - top,
    corners: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
  };
}

/** Its first side is the shorter or the longer one: the cut-out stands upright. */
function uprightFrame(pixels: readonly Place[], { width, height }: { width: number; height: number }): Frame {
  const far = (one: number, other: number) => apart(pixels[one], pixels[other]);
  const isAcross = far(0, 1) + far(2, 3) <= far(1, 2) + far(3, 0);
  return { width, height, corners: isAcross ? pixels : [...pixels.slice(1), ...pixels.slice(0, 1)] };
}

/** The corner opposite the longest side holds the right angle; the fourth corner of its rectangle is beyond that side. */
function triangleFrame(
  pixels: readonly Place[],
  { width, height }: { width: number; height: number },
): Frame {
  const opposite = [0, 1, 2].map((at) => apart(pixels[(at + 1) % 3], pixels[(at + 2) % 3]));
  const at = opposite.indexOf(Math.max(...opposite));
  const [corner, next, last] = [0, 1, 2].map((n) => pixels[(at + n) % 3] ?? ([0, 0] as const));
  if (!corner || !next || !last) throw new Error("a triangle has three corners");
  const beyond: Place = [next[0] + last[0] - corner[0], next[1] + last[1] - corner[1]];
  // Clockwise from the right angle at the lower left: up, then across.
  const isUpLonger = apart(corner, next) >= apart(corner, last);
  const [across, up] = isUpLonger ? [width, height] : [height, width];
  return { width: across, height: up, corners: [next, beyond, last, corner] };
}

function apart(one: Place | undefined, other: Place | undefined): number {
  return one && other ? Math.hypot(one[0] - other[0], one[1] - other[1]) : 0;
}

function show(photo: Photo, place: Place, { rgba, at }: { rgba: Uint8ClampedArray; at: number }): void {
  const light = lightAt(photo, place);
  if (light === null) return;
  for (let channel = 0; channel < 3; channel += 1) rgba[4 * at + channel] = byteOf(light[channel] ?? 0);
  rgba[4 * at + 3] = 255;
}
