import type { FloorPicture } from "./floorPicture.ts";
import type { Triple } from "./types.ts";
import { type Grid, windowsOver } from "./windows.ts";

/** The floor picture in small squares. Of each: how many of its pixels are open, and sums of their colours. */
export type Cells = Grid & {
  /** In pixels. */
  readonly size: number;
  readonly perInch: number;
  readonly count: Float32Array;
  readonly sums: Triple;
  readonly squares: Triple;
};

const size = 5;

/** Of a picture's channels; what is covered doesn't count. */
export function cellsOf(picture: FloorPicture, covered: Uint8Array, channels: Triple): Cells {
  const grid = { width: Math.ceil(picture.width / size), height: Math.ceil(picture.height / size) };
  const empty = () => new Float32Array(grid.width * grid.height);
  const cells: Cells = {
    ...grid,
    size,
    perInch: picture.perInch,
    count: empty(),
    sums: [empty(), empty(), empty()],
    squares: [empty(), empty(), empty()],
  };
  for (let y = 0; y < picture.height; y += 1) {
    const row = { cell: grid.width * Math.floor(y / size), from: y * picture.width, width: picture.width };
    countOpen(cells.count, covered, row);
    for (const channel of [0, 1, 2] as const)
      addOpen(channels[channel], covered, {
        ...row,
        sums: cells.sums[channel],
        squares: cells.squares[channel],
      });
  }
  return cells;
}

/** A row of the picture: its first pixel, and the cell that lies in. */
type PictureRow = { readonly cell: number; readonly from: number; readonly width: number };

function countOpen(count: Float32Array, covered: Uint8Array, { cell, from, width }: PictureRow): void {
  for (let x = 0, into = cell, left = size; x < width; x += 1) {
    count[into] = (count[into] ?? 0) + 1 - (covered[from + x] ?? 0);
    left -= 1;
    if (left > 0) continue;
    left = size;
    into += 1;
  }
}

type Sums = PictureRow & { readonly sums: Float32Array; readonly squares: Float32Array };

function addOpen(
  channel: Float32Array,
  covered: Uint8Array,
  { cell, from, width, sums, squares }: Sums,
): void {
  for (let x = 0, into = cell; x < width; x += size, into += 1) {
    let sum = sums[into] ?? 0;
    let square = squares[into] ?? 0;
    for (let at = from + x, end = from + Math.min(width, x + size); at < end; at += 1) {
      if (covered[at] === 1) continue;
      const value = channel[at] ?? 0;
      sum += value;
      square += value * value;
    }
    sums[into] = sum;
    squares[into] = square;
  }
}

/** The cell a pixel of the floor picture lies in, or the nearest. */
export function cellOf({ width, height }: Grid, x: number, y: number): number {
  const column = Math.max(0, Math.min(width - 1, Math.floor(x / size)));
  return Math.max(0, Math.min(height - 1, Math.floor(y / size))) * width + column;
}

/** Of the bare floor near each cell: how many pixels of it, their means and spreads. */
export type Nearby = { readonly count: Float32Array; readonly means: Triple; readonly spreads: Triple };

/** Of what is bare in the square of `radius` cells round each cell; each answer takes the place of the one before. */
export function nearbyOver(cells: Cells, radius: number): (bare: Uint8Array) => Nearby {
  const windows = windowsOver(cells, radius);
  const empty = () => new Float32Array(cells.count.length);
  const near: Nearby = {
    count: empty(),
    means: [empty(), empty(), empty()],
    spreads: [empty(), empty(), empty()],
  };
  return (bare) => {
    windows(cells.count, near.count, bare);
    for (const channel of [0, 1, 2] as const) {
      windows(cells.sums[channel], near.means[channel], bare);
      windows(cells.squares[channel], near.spreads[channel], bare);
      settle(near.means[channel], near.spreads[channel], near.count);
    }
    return near;
  };
}

/** Makes means and spreads of sums and sums of squares. */
function settle(sums: Float32Array, squares: Float32Array, count: Float32Array): void {
  for (let at = 0; at < sums.length; at += 1) {
    const n = Math.max(1, count[at] ?? 0);
    const mean = (sums[at] ?? 0) / n;
    sums[at] = mean;
    squares[at] = Math.sqrt(Math.max(0, (squares[at] ?? 0) / n - mean * mean));
  }
}
