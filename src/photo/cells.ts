import type { FloorPicture } from "./floorPicture.ts";
import type { Triple } from "./types.ts";
import { type Grid, windowSums } from "./windows.ts";

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
  const count = empty();
  const sums: Triple = [empty(), empty(), empty()];
  const squares: Triple = [empty(), empty(), empty()];
  for (let y = 0, at = 0; y < picture.height; y += 1)
    for (let x = 0; x < picture.width; x += 1, at += 1) {
      if (covered[at] === 1) continue;
      const cell = cellOf(grid, x, y);
      count[cell] = (count[cell] ?? 0) + 1;
      for (let channel = 0; channel < 3; channel += 1)
        addInto(channels, at, { sums, squares, cell, channel });
    }
  return { ...grid, size, perInch: picture.perInch, count, sums, squares };
}

type Sums = {
  readonly sums: Triple;
  readonly squares: Triple;
  readonly cell: number;
  readonly channel: number;
};

function addInto(channels: Triple, at: number, { sums, squares, cell, channel }: Sums): void {
  const value = channels[channel]?.[at] ?? 0;
  const [sum, square] = [sums[channel], squares[channel]];
  if (!sum || !square) return;
  sum[cell] = (sum[cell] ?? 0) + value;
  square[cell] = (square[cell] ?? 0) + value * value;
}

/** The cell a pixel of the floor picture lies in, or the nearest. */
export function cellOf({ width, height }: Grid, x: number, y: number): number {
  const column = Math.max(0, Math.min(width - 1, Math.floor(x / size)));
  return Math.max(0, Math.min(height - 1, Math.floor(y / size))) * width + column;
}

/** Of the bare floor near each cell: how many pixels of it, their means and spreads. */
export type Nearby = { readonly count: Float32Array; readonly means: Triple; readonly spreads: Triple };

/** Of what is bare in the square of `radius` cells round each cell. */
export function nearby(cells: Cells, bare: Uint8Array, radius: number): Nearby {
  const held = new Float32Array(bare.length);
  const summed = (values: Float32Array): Float32Array => {
    for (let at = 0; at < held.length; at += 1) held[at] = bare[at] === 1 ? (values[at] ?? 0) : 0;
    return windowSums(held, cells, radius);
  };
  const count = summed(cells.count);
  const means: Triple = [summed(cells.sums[0]), summed(cells.sums[1]), summed(cells.sums[2])];
  const spreads: Triple = [summed(cells.squares[0]), summed(cells.squares[1]), summed(cells.squares[2])];
  for (const channel of [0, 1, 2] as const) settle(means[channel], spreads[channel], count);
  return { count, means, spreads };
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
