import type { FloorPicture } from "./floorPicture.ts";
import type { Triple } from "./types.ts";
import { holding, type Vision } from "./vision.ts";
import { windowsOver } from "./windows.ts";

// In pixels of the floor picture: lines of a mat and joints of boards are narrower.
const widest = 5;
// In L: how much a line stands out.
const standsOut = 5;
// Of bare floor, the share that lies on lines where there are lines at all; where more does, it is no line.
const leastShare = 0.004;
const mostShare = 0.3;

/** The floor picture smoothed without its lines; `open`: 1 where none runs; null where none runs anywhere. */
export type WithoutLines = { readonly smooth: Triple; readonly open: Uint8Array | null };

/**
 * The floor picture without thin lines that also run over bare floor: what is lighter (or darker) than all beside it
 * within a line's width is left out. `bare`: places in the picture where floor is sure to be. `radius`: over how many
 * pixels to both sides it is smoothed.
 */
export function withoutLines(
  picture: FloorPicture,
  { bare, radius }: { bare: readonly number[]; radius: number },
  vision: Vision,
): WithoutLines {
  const lines = linesOn(picture, vision).filter((line) => hasLines(line, bare));
  const open = lines.length === 0 ? null : openBeside(lines, picture.seen.length);
  return { smooth: smoothed(picture, open, radius), open };
}

function openBeside(lines: readonly Uint8Array[], length: number): Uint8Array {
  const open = new Uint8Array(length).fill(1);
  for (const line of lines) for (let at = 0; at < length; at += 1) if (line[at] === 1) open[at] = 0;
  return open;
}

/** Each pixel the mean of the open ones round it; of all of them where no line runs anywhere. */
function smoothed(picture: FloorPicture, open: Uint8Array | null, radius: number): Triple {
  const { seen, channels } = picture;
  const windows = windowsOver(picture, radius);
  const smooth: Triple = [
    new Float32Array(seen.length),
    new Float32Array(seen.length),
    new Float32Array(seen.length),
  ];
  const weights = new Float32Array(seen.length);
  // The first of them lends itself, for all are one.
  windows(smooth[0].fill(1), weights, open);
  for (const channel of [0, 1, 2] as const) {
    windows(channels[channel], smooth[channel], open);
    divide(smooth[channel], weights);
  }
  if (open !== null && weights.includes(0)) fillGaps(smooth, weights, { picture, open });
  return smooth;
}

// In pixels of the floor picture: where bold lines cross, floor is to be seen only so far off.
const across = 7;
// Where less than this share of that is open it is a print, which has colors of its own there.
const leastOpen = 0.35;

/** Where nothing near is open, the mean of what is open further off. */
function fillGaps(
  smooth: Triple,
  weights: Float32Array,
  { picture, open }: { picture: FloorPicture; open: Uint8Array },
): void {
  const windows = windowsOver(picture, across);
  const least = leastOpen * (2 * across + 1) ** 2;
  const counts = new Float32Array(weights.length).fill(1);
  const sums = new Float32Array(weights.length);
  windows(counts, counts, open);
  for (const channel of [0, 1, 2] as const) {
    const [values, filled] = [picture.channels[channel], smooth[channel]];
    windows(values, sums, open);
    for (let at = 0; at < weights.length; at += 1) {
      if (weights[at] !== 0) continue;
      const count = counts[at] ?? 0;
      filled[at] = count > least ? (sums[at] ?? 0) / count : (values[at] ?? 0);
    }
  }
}

function divide(sums: Float32Array, weights: Float32Array): void {
  for (let at = 0; at < sums.length; at += 1) sums[at] = (sums[at] ?? 0) / Math.max(1, weights[at] ?? 0);
}

/** 1 where the picture is lighter than without lines, and where it is darker. */
function linesOn({ channels, width, height }: FloorPicture, vision: Vision): readonly Uint8Array[] {
  return holding((keep) => {
    const image = keep(new vision.Mat(height, width, vision.CV_8UC1));
    putGrey(channels[0], image.data);
    const kernel = keep(vision.getStructuringElement(vision.MORPH_RECT, new vision.Size(widest, widest)));
    const smooth = keep(new vision.Mat());
    return [vision.MORPH_OPEN, vision.MORPH_CLOSE].map((operation) => {
      vision.morphologyEx(image, smooth, operation, kernel);
      // Only now: the library's memory may have moved.
      return standingOut(image.data, smooth.data);
    });
  });
}

function putGrey(lightness: Float32Array, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; at += 1)
    bytes[at] = Math.max(0, Math.min(255, Math.round(2.55 * (lightness[at] ?? 0))));
}

function standingOut(bytes: Uint8Array, smooth: Uint8Array): Uint8Array {
  const line = new Uint8Array(bytes.length);
  const least = 2.55 * standsOut;
  for (let at = 0; at < line.length; at += 1) {
    const far = (bytes[at] ?? 0) - (smooth[at] ?? 0);
    line[at] = far > least || far < -least ? 1 : 0;
  }
  return line;
}

function hasLines(line: Uint8Array, bare: readonly number[]): boolean {
  let count = 0;
  for (const at of bare) count += line[at] ?? 0;
  const share = count / Math.max(1, bare.length);
  return share > leastShare && share < mostShare;
}
