import type { Lab } from "../engine/cloth/index.ts";
import type { Light, Photo, Place, Triple } from "./types.ts";

/** Linear light of each byte of sRGB (IEC 61966-2-1). */
export const linearOf: Float64Array = Float64Array.from({ length: 256 }, (_, byte) => {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
});

const levels = 4096;
const bytes = Uint8Array.from({ length: levels + 1 }, (_, level) => {
  const light = level / levels;
  return Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
});

/** The byte of sRGB nearest to a linear light, from a table: true to one. */
export function byteOf(light: number): number {
  return bytes[Math.round(levels * Math.max(0, Math.min(1, light)))] ?? 0;
}

/** Linear light between pixels, bilinear; null outside the photo. */
export function lightAt({ width, height, rgba }: Photo, [x, y]: Place): Light | null {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return null;
  const [across, down] = [x - left, y - top];
  const at = 4 * (top * width + left);
  return [
    between(rgba, at, { width, across, down }),
    between(rgba, at + 1, { width, across, down }),
    between(rgba, at + 2, { width, across, down }),
  ];
}

type Between = { readonly width: number; readonly across: number; readonly down: number };

function between(rgba: Photo["rgba"], at: number, { width, across, down }: Between): number {
  const below = at + 4 * width;
  const upper = mixed(linear(rgba, at), linear(rgba, at + 4), across);
  return mixed(upper, mixed(linear(rgba, below), linear(rgba, below + 4), across), down);
}

function linear(rgba: Photo["rgba"], at: number): number {
  return linearOf[rgba[at] ?? 0] ?? 0;
}

function mixed(one: number, other: number, share: number): number {
  return one + (other - one) * share;
}

/** The same, added to what is in `sum`; false outside the photo. */
export function addLightAt({ width, height, rgba }: Photo, x: number, y: number, sum: Float64Array): boolean {
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return false;
  const across = x - left;
  const down = y - top;
  for (let channel = 0, at = 4 * (top * width + left); channel < 3; channel += 1, at += 1) {
    const below = at + 4 * width;
    const upper = mixed(linear(rgba, at), linear(rgba, at + 4), across);
    const lower = mixed(linear(rgba, below), linear(rgba, below + 4), across);
    sum[channel] = (sum[channel] ?? 0) + mixed(upper, lower, down);
  }
  return true;
}

/** Relative luminance (IEC 61966-2-1). */
export function luminance([red, green, blue]: Light): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Of linear sRGB light where 1 is white, CIELAB under D65 (CIE 15:2018, sRGB's matrix of IEC 61966-2-1). */
export function labOf([red, green, blue]: Light): Lab {
  const x = root((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = root(luminance([red, green, blue]));
  const z = root((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** The same, put into three arrays at a place; read from a table, true to 0.02. */
export function labInto(channels: Triple, at: number, light: Float64Array): void {
  const red = light[0] ?? 0;
  const green = light[1] ?? 0;
  const blue = light[2] ?? 0;
  const x = tabled((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = tabled(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const z = tabled((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  channels[0][at] = 116 * y - 16;
  channels[1][at] = 500 * (x - y);
  channels[2][at] = 200 * (y - z);
}

/** The same of one light. */
export function labNear([red, green, blue]: Light): Lab {
  const x = tabled((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = tabled(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const z = tabled((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

const threshold = (6 / 29) ** 3;

function root(value: number): number {
  return value > threshold ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29;
}

const steps = 8192;
const brightest = 2;
const roots: Float64Array = Float64Array.from({ length: steps + 2 }, (_, at) =>
  root((at / steps) * brightest),
);

function tabled(value: number): number {
  const far = Math.max(0, Math.min(brightest, value)) * (steps / brightest);
  const at = Math.floor(far);
  const before = roots[at] ?? 0;
  return before + (far - at) * ((roots[at + 1] ?? 0) - before);
}

/** A picture of grey bytes. */
export type Grey = { readonly bytes: Uint8Array; readonly width: number };

/** A smaller photo of grey bytes: each pixel the mean of `factor` × `factor`. Its centre (x, y) was (x + ½)·factor − ½. */
export function shrunkGrey({ width, height, rgba }: Photo, factor: number): Grey {
  const [columns, rows] = [Math.floor(width / factor), Math.floor(height / factor)];
  const bytes = new Uint8Array(columns * rows);
  const sums = new Float64Array(columns);
  for (let row = 0; row < rows; row += 1) {
    sums.fill(0);
    for (let y = row * factor; y < (row + 1) * factor; y += 1)
      for (let column = 0, at = 4 * y * width; column < columns; column += 1) {
        let sum = sums[column] ?? 0;
        for (let n = 0; n < factor; n += 1, at += 4)
          sum += 0.299 * (rgba[at] ?? 0) + 0.587 * (rgba[at + 1] ?? 0) + 0.114 * (rgba[at + 2] ?? 0);
        sums[column] = sum;
      }
    for (let column = 0; column < columns; column += 1)
      bytes[row * columns + column] = Math.round((sums[column] ?? 0) / (factor * factor));
  }
  return { bytes, width: columns };
}
