import type { Lab } from "../engine/cloth/index.ts";
import { toNumber } from "../engine/length/index.ts";
import { type Lying, onFloor } from "./calibrate.ts";
import { type FloorPicture, floorOf, pixelOn } from "./floorPicture.ts";
import { median } from "./lines.ts";
import type { Place } from "./types.ts";

/** The bare floor: what it looks like near each pixel, and how far each pixel is from that. */
export type Ground = {
  /** Means and spreads are kept for squares of `cell` pixels, `across` of them in a row. */
  readonly cell: number;
  readonly across: number;
  /** Mean L, a and b of the bare floor near. */
  readonly means: Triple;
  /** Of single pixels round those, never less than the noise of a camera. */
  readonly spreads: Triple;
  /** Of each pixel, in spreads: under about 3 it looks like floor. */
  readonly off: Float32Array;
  /** 1 on the paper of cards and sheets, and what is not seen. */
  readonly covered: Uint8Array;
};

type Triple = readonly [Float32Array, Float32Array, Float32Array];

// Round a card: from so far off its paper, to so far, in inches.
const ringFrom = 0.2;
const ringTo = 0.8;
// What is near: within so many inches.
const near = 1.8;
const noise = 1.6;
const cell = 4;
// Of the mean of a cell, in spreads of single pixels.
const looksAlike = 2;
const leastNear = 3 * cell * cell;
const mostRounds = 60;

/**
 * Grown from the ring round each card, where floor must lie bare: what looks like the floor near it is floor too, until
 * nothing more is. So slow changes of light, boards and shadows belong to it, and cloth that differs does not.
 */
export function groundOf(picture: FloorPicture, lying: readonly Lying[]): Ground {
  const covered = coveredBy(picture, lying);
  const cells = cellsOf(picture, covered);
  const bare = inCells(picture, ringRound(picture, lying, covered), cells);
  const radius = Math.max(1, Math.round((near * picture.perInch) / cell));
  let grown = nearby(cells, bare, radius);
  for (let round = 0; round < mostRounds; round += 1) {
    let changed = 0;
    for (let at = 0; at < bare.length; at += 1) {
      const isFloor =
        (cells.count[at] ?? 0) > 0 &&
        (grown.count[at] ?? 0) > leastNear &&
        cellOff(cells, grown, at) < looksAlike;
      changed += Number(isFloor !== (bare[at] === 1));
      bare[at] = isFloor ? 1 : 0;
    }
    grown = nearby(cells, bare, radius);
    if (changed < bare.length / 2000) break;
  }
  fillFarFromFloor(cells, bare, { grown, radius });
  const { means, spreads } = grown;
  const ground = { cell, across: cells.width, means, spreads };
  const off = Float32Array.from(covered, (isCovered, at) => {
    if (isCovered === 1) return 0;
    const [l, a, b] = picture.channels;
    const pixel: Place = [at % picture.width, Math.floor(at / picture.width)];
    return offGround(ground, { l: l[at] ?? 0, a: a[at] ?? 0, b: b[at] ?? 0 }, pixel);
  });
  return { ...ground, off, covered };
}

/** How far a colour at a pixel of the floor picture is from the bare floor near it, in spreads. */
export function offGround(ground: Omit<Ground, "off" | "covered">, { l, a, b }: Lab, pixel: Place): number {
  const at = cellAt(ground, pixel);
  const { means, spreads } = ground;
  return Math.hypot(
    (l - (means[0][at] ?? 0)) / (spreads[0][at] ?? 1),
    (a - (means[1][at] ?? 0)) / (spreads[1][at] ?? 1),
    (b - (means[2][at] ?? 0)) / (spreads[2][at] ?? 1),
  );
}

/** The floor's colour near a pixel of the floor picture. */
export function floorColourAt(ground: Ground, pixel: Place): Lab {
  const at = cellAt(ground, pixel);
  const [l, a, b] = ground.means;
  return { l: l[at] ?? 0, a: a[at] ?? 0, b: b[at] ?? 0 };
}

function cellAt({ across, means }: Pick<Ground, "across" | "means">, [x, y]: Place): number {
  const column = Math.max(0, Math.min(across - 1, Math.floor(x / cell)));
  const row = Math.max(0, Math.min(means[0].length / across - 1, Math.floor(y / cell)));
  return row * across + column;
}

/** Of each cell: how many of its pixels are not covered, and the sums and the sums of squares of their colours. */
type Cells = {
  readonly width: number;
  readonly height: number;
  readonly count: Float32Array;
  readonly sums: Triple;
  readonly squares: Triple;
};

function cellsOf(picture: FloorPicture, covered: Uint8Array): Cells {
  const [width, height] = [Math.ceil(picture.width / cell), Math.ceil(picture.height / cell)];
  const empty = () => new Float32Array(width * height);
  const cells: Cells = {
    width,
    height,
    count: empty(),
    sums: [empty(), empty(), empty()],
    squares: [empty(), empty(), empty()],
  };
  for (let at = 0; at < covered.length; at += 1) {
    if (covered[at] === 1) continue;
    const to =
      Math.floor(Math.floor(at / picture.width) / cell) * width + Math.floor((at % picture.width) / cell);
    cells.count[to] = (cells.count[to] ?? 0) + 1;
    for (const channel of [0, 1, 2] as const) {
      const value = picture.channels[channel][at] ?? 0;
      cells.sums[channel][to] = (cells.sums[channel][to] ?? 0) + value;
      cells.squares[channel][to] = (cells.squares[channel][to] ?? 0) + value * value;
    }
  }
  return cells;
}

/** Cells of which at least half is flagged. */
function inCells(picture: FloorPicture, flags: Uint8Array, { width, height }: Cells): Uint8Array {
  const counts = new Uint8Array(width * height);
  for (let at = 0; at < flags.length; at += 1) {
    const to =
      Math.floor(Math.floor(at / picture.width) / cell) * width + Math.floor((at % picture.width) / cell);
    counts[to] = (counts[to] ?? 0) + (flags[at] ?? 0);
  }
  return counts.map((count) => (count >= (cell * cell) / 2 ? 1 : 0));
}

type Nearby = Pick<Ground, "means" | "spreads"> & { readonly count: Float32Array };

function cellOff({ count, sums }: Cells, { means, spreads }: Nearby, at: number): number {
  const n = Math.max(1, count[at] ?? 0);
  const share = (channel: 0 | 1 | 2) =>
    ((sums[channel][at] ?? 0) / n - (means[channel][at] ?? 0)) / (spreads[channel][at] ?? 1);
  return Math.hypot(share(0), share(1), share(2));
}

/** In the middle of large pieces no floor is near: there that of further off must do. */
function fillFarFromFloor(
  cells: Cells,
  bare: Uint8Array,
  { grown, radius }: { grown: Nearby; radius: number },
): void {
  const wide = nearby(cells, bare, 4 * radius);
  const whole = nearby(cells, bare, Math.max(cells.width, cells.height));
  for (let at = 0; at < bare.length; at += 1) {
    if ((grown.count[at] ?? 0) > leastNear) continue;
    const from = (wide.count[at] ?? 0) > leastNear ? wide : whole;
    for (const channel of [0, 1, 2] as const) {
      grown.means[channel][at] = from.means[channel][at] ?? 0;
      grown.spreads[channel][at] = from.spreads[channel][at] ?? noise;
    }
  }
}

function coveredBy(picture: FloorPicture, lying: readonly Lying[]): Uint8Array {
  const covered = Uint8Array.from(picture.seen, (seen) => 1 - seen);
  for (const one of lying) onPaper(picture, one, ringFrom, (at) => covered.fill(1, at, at + 1));
  return covered;
}

/** Calls for each pixel on the paper or no further than `more` from it. */
function onPaper(
  picture: FloorPicture,
  { target, at, turned }: Lying,
  more: number,
  found: (at: number) => void,
): void {
  const [across, down] = [
    toNumber(target.reach.across, "in") + more,
    toNumber(target.reach.down, "in") + more,
  ];
  const reach = Math.hypot(across, down) * picture.perInch;
  const [x, y] = pixelOn(picture, at);
  const [right, bottom] = [Math.min(picture.width - 1, x + reach), Math.min(picture.height - 1, y + reach)];
  for (let row = Math.max(0, Math.floor(y - reach)); row <= bottom; row += 1)
    for (let column = Math.max(0, Math.floor(x - reach)); column <= right; column += 1) {
      const [fx, fy] = floorOf(picture, [column, row]);
      const [u, v] = onFloor([fx - at[0], fy - at[1]], [0, 0], -turned);
      if (Math.abs(u) <= across && Math.abs(v) <= down) found(row * picture.width + column);
    }
}

/** Bare floor round the cards. What lies in the ring of a card but differs from most of it is a piece laid too near. */
function ringRound(picture: FloorPicture, lying: readonly Lying[], covered: Uint8Array): Uint8Array {
  const bare = new Uint8Array(covered.length);
  for (const one of lying) {
    const ring: number[] = [];
    onPaper(picture, one, ringTo, (at) => {
      if (covered[at] === 0) ring.push(at);
    });
    const middles = picture.channels.map((channel) => median(ring.map((at) => channel[at] ?? 0)));
    const spreads = picture.channels.map((channel, which) => {
      const off = ring.map((at) => Math.abs((channel[at] ?? 0) - (middles[which] ?? 0)));
      return Math.max(noise, 1.4826 * median(off));
    });
    for (const at of ring) {
      const isNear = picture.channels.every(
        (channel, which) => Math.abs((channel[at] ?? 0) - (middles[which] ?? 0)) < 3 * (spreads[which] ?? 1),
      );
      if (isNear) bare[at] = 1;
    }
  }
  return bare;
}

/** Means and spreads of what is bare in the square of `radius` cells round each cell. */
function nearby({ width, height, count, sums, squares }: Cells, bare: Uint8Array, radius: number): Nearby {
  const square = { width, height, radius };
  const counts = windowSums(square, (at) => (bare[at] ?? 0) * (count[at] ?? 0));
  const summed = (channels: Triple, channel: 0 | 1 | 2) =>
    windowSums(square, (at) => (bare[at] ?? 0) * (channels[channel][at] ?? 0));
  const means: Triple = [summed(sums, 0), summed(sums, 1), summed(sums, 2)];
  const spreads: Triple = [summed(squares, 0), summed(squares, 1), summed(squares, 2)];
  for (let at = 0; at < counts.length; at += 1) {
    const n = Math.max(1, counts[at] ?? 0);
    for (const channel of [0, 1, 2] as const) {
      const mean = (means[channel][at] ?? 0) / n;
      means[channel][at] = mean;
      spreads[channel][at] = Math.sqrt(
        Math.max(0, (spreads[channel][at] ?? 0) / n - mean * mean) + noise * noise,
      );
    }
  }
  return { count: counts, means, spreads };
}

type Square = { readonly width: number; readonly height: number; readonly radius: number };

/** Sums over squares, by running sums along the rows and then down the columns. */
function windowSums({ width, height, radius }: Square, value: (at: number) => number): Float32Array {
  const rows = new Float64Array(width * height);
  const running = new Float64Array(Math.max(width, height) + 1);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) running[x + 1] = (running[x] ?? 0) + value(y * width + x);
    for (let x = 0; x < width; x += 1)
      rows[y * width + x] =
        (running[Math.min(width, x + radius + 1)] ?? 0) - (running[Math.max(0, x - radius)] ?? 0);
  }
  const sums = new Float32Array(width * height);
  for (let x = 0; x < width; x += 1) {
    for (let y = 0; y < height; y += 1) running[y + 1] = (running[y] ?? 0) + (rows[y * width + x] ?? 0);
    for (let y = 0; y < height; y += 1)
      sums[y * width + x] =
        (running[Math.min(height, y + radius + 1)] ?? 0) - (running[Math.max(0, y - radius)] ?? 0);
  }
  return sums;
}
