import type { Lab } from "../engine/cloth/index.ts";
import type { Lying } from "./calibrate.ts";
import { type Cells, cellOf, cellsOf, type Nearby, nearbyOver } from "./cells.ts";
import { withoutLines } from "./floorLines.ts";
import type { FloorPicture } from "./floorPicture.ts";
import { median } from "./lines.ts";
import { coveredBy, ringRound, ringsRound } from "./rings.ts";
import type { Place, Triple } from "./types.ts";
import type { Vision } from "./vision.ts";

/** The bare floor: what it looks like near each pixel, and how far each pixel is from that. */
export type Ground = {
  readonly cells: Cells;
  /** Of each cell: mean L, a and b of the bare floor near, and how far single pixels stray from it. */
  readonly means: Triple;
  readonly spreads: Triple;
  /** Of each pixel: over 1 it is no floor. */
  readonly off: Float32Array;
  /** 1 on the paper of cards and sheets, and what is not seen. */
  readonly covered: Uint8Array;
  /** Thin lines run over it: those of a mat, joints between boards. */
  readonly hasLines: boolean;
};

// What is near: within so many inches.
const near = 1.8;
// In Lab, what a camera's noise comes to: of a pixel, and of the mean of a few.
const noise = 1.6;
const quiet = 0.55;
// In pixels of the floor picture: over so many the picture is also looked at smoothed, for what hardly differs.
const smoothing = 2;
// In spreads: further from the floor near it than this, a pixel is no floor; the mean of a few; a cell.
const pixelDiffers = 3.5;
const smoothDiffers = 3.6;
const looksAlike = 2.6;
const mostRounds = 40;

/** How the cards lie; and where in the floor picture she says that floor lies bare: then it is grown from there alone. */
type Bareness = { readonly lying: readonly Lying[]; readonly bareAt?: Place | null };

/**
 * Grown from the ring round each card, where floor must lie bare: what looks like the floor near it is floor too, until
 * nothing more is. So slow changes of light, boards and shadows belong to it, and cloth that differs does not.
 */
export function groundOf(picture: FloorPicture, { lying, bareAt = null }: Bareness, vision: Vision): Ground {
  const covered = coveredBy(picture, lying);
  const rings = bareAt === null ? ringsRound(picture, lying, covered) : [ringRound(picture, bareAt, covered)];
  const { smooth, open } = withoutLines(picture, { bare: rings.flat(), radius: smoothing }, vision);
  const cells = cellsOf(picture, covered, smooth);
  const least = leastSpreads(smooth, rings);
  const { bare, around } = grownFrom(ringCells(picture, smooth, { rings, cells }), cells, least);
  const { means, spreads } = farFromFloor(cells, bare, { around, least });
  const pixelSpreads = spreadsOfPixels(picture, open, { cells, bare, smooth, spreads });
  // On the full photo lines are there again, and must not be taken for an edge.
  const withLines =
    open === null ? pixelSpreads : spreadsOfPixels(picture, null, { cells, bare, smooth, spreads });
  const off = new Float32Array(covered.length);
  const floor = { picture, cells, means };
  offInto(off, picture.channels, { ...floor, open, spreads: pixelSpreads, differs: pixelDiffers });
  offInto(off, smooth, { ...floor, open: null, spreads, differs: smoothDiffers });
  for (let at = 0; at < off.length; at += 1) if (covered[at] === 1) off[at] = 0;
  return { cells, means, spreads: withLines, off, covered, hasLines: open !== null };
}

type Three = readonly [number, number, number];

/** How much the floor varies round a card, in the middle of all cards: boards and tufts do, a wall does not. */
function leastSpreads(smooth: Triple, rings: readonly (readonly number[])[]): Three {
  const spread = (channel: 0 | 1 | 2): number => {
    const values = smooth[channel];
    const each = rings.map((ring) => spreadOf(some(ring).map((at) => values[at] ?? 0)).spread);
    return Math.max(quiet, 0.7 * median(each));
  };
  return [spread(0), spread(1), spread(2)];
}

/** Every fifth tells enough. */
function some(ring: readonly number[]): readonly number[] {
  return ring.filter((_, n) => n % 5 === 0);
}

function spreadOf(values: readonly number[]): { middle: number; spread: number } {
  const middle = median(values);
  return { middle, spread: 1.4826 * median(values.map((value) => Math.abs(value - middle))) };
}

type Ringed = { readonly rings: readonly (readonly number[])[]; readonly cells: Cells };

/** Cells of which at least half lies in a ring. What differs from most of its ring is a piece laid too near. */
function ringCells(picture: FloorPicture, smooth: Triple, { rings, cells }: Ringed): Uint8Array {
  const counts = new Uint8Array(cells.width * cells.height);
  for (const ring of rings) {
    const usual = smooth.map((channel) => spreadOf(some(ring).map((at) => channel[at] ?? 0)));
    for (const at of ring) {
      const isUsual = usual.every(
        ({ middle, spread }, channel) =>
          Math.abs((smooth[channel]?.[at] ?? 0) - middle) < 3 * Math.max(quiet, spread),
      );
      if (!isUsual) continue;
      const cell = cellOf(cells, at % picture.width, Math.floor(at / picture.width));
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
  }
  return counts.map((count) => Number(count >= cells.size ** 2 / 2));
}

type Grown = { readonly bare: Uint8Array; readonly around: Nearby };

function grownFrom(start: Uint8Array, cells: Cells, least: Three): Grown {
  const bare = start.slice();
  const radius = Math.max(1, Math.round((near * cells.perInch) / cells.size));
  const nearby = nearbyOver(cells, radius);
  let around = nearby(bare);
  for (let round = 0; round < mostRounds; round += 1) {
    let changed = 0;
    for (let at = 0; at < bare.length; at += 1) {
      const isFloor = Number(looksLikeFloor(cells, around, { at, least }));
      changed += Number(isFloor !== bare[at]);
      bare[at] = isFloor;
    }
    around = nearby(bare);
    if (changed < bare.length / 2000) break;
  }
  return { bare, around };
}

function looksLikeFloor(
  { count, sums, size }: Cells,
  around: Nearby,
  { at, least }: { at: number; least: Three },
): boolean {
  const n = count[at] ?? 0;
  if (n === 0 || (around.count[at] ?? 0) < 3 * size * size) return false;
  let square = 0;
  for (let channel = 0; channel < 3; channel += 1) {
    const off = (sums[channel]?.[at] ?? 0) / n - (around.means[channel]?.[at] ?? 0);
    square += (off / Math.max(least[channel] ?? 1, around.spreads[channel]?.[at] ?? 0)) ** 2;
  }
  return square < looksAlike ** 2;
}

type Floor = { readonly means: Triple; readonly spreads: Triple };

/** In the middle of large pieces no floor is near: there that of further off must do. */
function farFromFloor(
  cells: Cells,
  bare: Uint8Array,
  { around, least }: { around: Nearby; least: Three },
): Floor {
  const radius = Math.max(1, Math.round((near * cells.perInch) / cells.size));
  const wide = nearbyOver(cells, 4 * radius)(bare);
  const whole = nearbyOver(cells, Math.max(cells.width, cells.height))(bare);
  const enough = 3 * cells.size ** 2;
  for (let at = 0; at < bare.length; at += 1) {
    const from = [around, wide].find(({ count }) => (count[at] ?? 0) > enough) ?? whole;
    for (let channel = 0; channel < 3; channel += 1) {
      const [means, spreads] = [around.means[channel], around.spreads[channel]];
      if (!means || !spreads) continue;
      means[at] = from.means[channel]?.[at] ?? 0;
      spreads[at] = Math.max(least[channel] ?? 1, from.spreads[channel]?.[at] ?? 0);
    }
  }
  return around;
}

type Bare = {
  readonly cells: Cells;
  readonly bare: Uint8Array;
  readonly smooth: Triple;
  readonly spreads: Triple;
};

/**
 * What pixels stray from the smoothed picture where floor lies bare, on top of what that varies; a line's pixels count
 * as if they were smooth.
 */
function spreadsOfPixels(picture: FloorPicture, open: Uint8Array | null, { spreads, ...bare }: Bare): Triple {
  const fine = ([0, 1, 2] as const).map((which) => strayOf(picture, open, { ...bare, which }));
  const spread = (which: 0 | 1 | 2) =>
    spreads[which].map((broad) => Math.sqrt(broad * broad + (fine[which] ?? 0)));
  return [spread(0), spread(1), spread(2)];
}

type Straying = Omit<Bare, "spreads"> & { readonly which: 0 | 1 | 2 };

/** The mean square, and a camera's noise. */
function strayOf(
  { channels, width, height }: FloorPicture,
  open: Uint8Array | null,
  { cells, bare, smooth, which }: Straying,
): number {
  const [values, means] = [channels[which], smooth[which]];
  let sum = 0;
  let count = 0;
  // Every other pixel, both ways, tells enough.
  for (let y = 0; y < height; y += 2)
    for (let x = 0, at = y * width, row = cellOf(cells, 0, y); x < width; x += 2, at += 2) {
      if (bare[row + Math.floor(x / cells.size)] !== 1) continue;
      count += 1;
      if (open === null || open[at] === 1) sum += ((values[at] ?? 0) - (means[at] ?? 0)) ** 2;
    }
  return sum / Math.max(1, count) + noise * noise;
}

type Off = Floor & {
  readonly picture: FloorPicture;
  readonly cells: Cells;
  readonly open: Uint8Array | null;
  readonly differs: number;
};

/** Raises `off` to how far the channels are from the floor, as a share of what differs; not where a line runs. */
function offInto(off: Float32Array, [l, a, b]: Triple, { picture, cells, open, ...floor }: Off): void {
  const { size, width: across } = cells;
  for (let y = 0; y < picture.height; y += 1)
    for (let x = 0, cell = Math.floor(y / size) * across; x < picture.width; x += size, cell += 1) {
      const { means, scales } = floorIn(floor, cell);
      const from = y * picture.width + x;
      for (let at = from, end = from + Math.min(size, picture.width - x); at < end; at += 1) {
        if (open !== null && open[at] === 0) continue;
        const u = ((l[at] ?? 0) - means[0]) * scales[0];
        const v = ((a[at] ?? 0) - means[1]) * scales[1];
        const w = ((b[at] ?? 0) - means[2]) * scales[2];
        const far = Math.sqrt(u * u + v * v + w * w);
        if (far > (off[at] ?? 0)) off[at] = far;
      }
    }
}

/** Of a cell: the floor's means, and what one step of each channel comes to of what differs. */
function floorIn({ means, spreads, differs }: Floor & { differs: number }, cell: number) {
  const middles: Three = [means[0][cell] ?? 0, means[1][cell] ?? 0, means[2][cell] ?? 0];
  const scales: Three = [
    1 / (differs * (spreads[0][cell] ?? 1)),
    1 / (differs * (spreads[1][cell] ?? 1)),
    1 / (differs * (spreads[2][cell] ?? 1)),
  ];
  return { means: middles, scales };
}

/** How far a colour at a pixel of the floor picture is from the bare floor near it, in spreads of pixels. */
export function offGroundAt({ cells, means, spreads }: Ground, [x, y]: Place): (lab: Lab) => number {
  const { means: middles, scales } = floorIn({ means, spreads, differs: 1 }, cellOf(cells, x, y));
  return ({ l, a, b }) => {
    const u = (l - middles[0]) * scales[0];
    const v = (a - middles[1]) * scales[1];
    const w = (b - middles[2]) * scales[2];
    return Math.sqrt(u * u + v * v + w * w);
  };
}

/** The floor's colour near a pixel of the floor picture. */
export function floorColourAt({ cells, means: [l, a, b] }: Ground, [x, y]: Place): Lab {
  const at = cellOf(cells, x, y);
  return { l: l[at] ?? 0, a: a[at] ?? 0, b: b[at] ?? 0 };
}
