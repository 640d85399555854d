import type { FloorPicture } from "./floorPicture.ts";
import type { Triple } from "./types.ts";
import { greyMatrix, holding, type Vision } from "./vision.ts";
import { windowSums } from "./windows.ts";

// In pixels of the floor picture: lines of a mat and joints of boards are narrower.
const widest = 5;
// In L: how much a line stands out.
const standsOut = 5;
// Of bare floor, the share that lies on lines where there are lines at all; where more does, it is no line.
const leastShare = 0.004;
const mostShare = 0.3;

/** The floor picture without lines, as it is and smoothed. */
export type WithoutLines = { readonly channels: Triple; readonly smooth: Triple; readonly hasLines: boolean };

/**
 * The floor picture without thin lines that also run over bare floor: what is lighter (or darker) than all beside it
 * within a line's width is filled from round about. `bare`: places in the picture where floor is sure to be. `radius`:
 * over how many pixels to both sides it is smoothed.
 */
export function withoutLines(
  picture: FloorPicture,
  { bare, radius }: { bare: readonly number[]; radius: number },
  vision: Vision,
): WithoutLines {
  const bytes = greyOf(picture.channels[0]);
  const [light, dark] = linesOn(bytes, picture.width, vision).map((line) =>
    hasLines(line, bare) ? line : null,
  );
  const open = new Float32Array(bytes.length).fill(1);
  for (const line of [light, dark])
    for (let at = 0; line && at < open.length; at += 1) if (line[at] === 1) open[at] = 0;
  const hasAny = Boolean(light ?? dark);
  const weights = windowSums(open, picture, radius);
  const held = new Float32Array(open.length);
  const smoothed = (channel: Float32Array): Float32Array => {
    for (let at = 0; at < held.length; at += 1) held[at] = (open[at] ?? 0) * (channel[at] ?? 0);
    const sums = windowSums(held, picture, radius);
    for (let at = 0; at < sums.length; at += 1) sums[at] = (sums[at] ?? 0) / Math.max(1, weights[at] ?? 0);
    return sums;
  };
  const [l, a, b] = picture.channels;
  const smooth: Triple = [smoothed(l), smoothed(a), smoothed(b)];
  const filled = (which: 0 | 1 | 2): Float32Array => {
    const channel = picture.channels[which].slice();
    for (let at = 0; at < channel.length; at += 1) if (open[at] === 0) channel[at] = smooth[which][at] ?? 0;
    return channel;
  };
  const channels: Triple = hasAny ? [filled(0), filled(1), filled(2)] : picture.channels;
  return { channels, smooth, hasLines: hasAny };
}

function greyOf(lightness: Float32Array): Uint8Array {
  const bytes = new Uint8ClampedArray(lightness.length);
  for (let at = 0; at < bytes.length; at += 1) bytes[at] = 2.55 * (lightness[at] ?? 0);
  return new Uint8Array(bytes.buffer);
}

/** 1 where the picture is lighter than without lines, and where it is darker. */
function linesOn(bytes: Uint8Array, width: number, vision: Vision): readonly Uint8Array[] {
  return holding((keep) => {
    const image = keep(greyMatrix(vision, bytes, width));
    const kernel = keep(vision.getStructuringElement(vision.MORPH_RECT, new vision.Size(widest, widest)));
    return [vision.MORPH_OPEN, vision.MORPH_CLOSE].map((operation) => {
      const smooth = keep(new vision.Mat());
      vision.morphologyEx(image, smooth, operation, kernel);
      const { data } = smooth;
      const line = new Uint8Array(bytes.length);
      for (let at = 0; at < line.length; at += 1)
        line[at] = Number(Math.abs((bytes[at] ?? 0) - (data[at] ?? 0)) > 2.55 * standsOut);
      return line;
    });
  });
}

function hasLines(line: Uint8Array, bare: readonly number[]): boolean {
  const share = bare.reduce<number>((count, at) => count + (line[at] ?? 0), 0) / Math.max(1, bare.length);
  return share > leastShare && share < mostShare;
}
