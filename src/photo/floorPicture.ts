import type { Views } from "./camera.ts";
import { labInto, linearOf } from "./light.ts";
import type { EvenLight } from "./paper.ts";
import type { Photo, Place, Triple } from "./types.ts";

/** The floor as seen from straight above, in Lab in even light. A pixel's centre is at whole numbers. */
export type FloorPicture = {
  readonly width: number;
  readonly height: number;
  readonly perInch: number;
  /** On the floor, of the first pixel's centre. */
  readonly origin: Place;
  /** L, a and b of each pixel. */
  readonly channels: Triple;
  /** 1 where the photo shows the floor. */
  readonly seen: Uint8Array;
};

const perInchWanted = 22;
const mostPixels = 3e6;
// In inches: she is asked to lay pieces inside of the cards; what lies further than this from their middles is furniture,
// or measured too badly to be offered. Round a single sheet there must be room for all of them.
const furthest = { several: 18, alone: 24 };

export function floorOf({ origin, perInch }: FloorPicture, [x, y]: Place): Place {
  return [origin[0] + x / perInch, origin[1] + y / perInch];
}

export function pixelOn({ origin, perInch }: FloorPicture, [x, y]: Place): Place {
  return [(x - origin[0]) * perInch, (y - origin[1]) * perInch];
}

/** Lays the photo out flat, at most 22 pixels an inch. `cards`: where they lie on the floor. */
export function floorPicture(
  photo: Photo,
  views: Views,
  light: EvenLight,
  cards: readonly Place[],
): FloorPicture {
  const bounds = boundsOf(photo, views, cards);
  const [across, down] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
  const perInch = Math.min(perInchWanted, density(views, cards), Math.sqrt(mostPixels / (across * down)));
  const [width, height] = [Math.ceil(across * perInch), Math.ceil(down * perInch)];
  const channel = () => new Float32Array(width * height);
  const picture: FloorPicture = {
    width,
    height,
    perInch,
    origin: [bounds.left, bounds.top],
    channels: [channel(), channel(), channel()],
    seen: new Uint8Array(width * height),
  };
  const source = shrunk(photo, Math.max(1, Math.round(density(views, cards) / perInch / 1.4)));
  const steps = stepsOver(picture, views, light);
  const evened = new Float64Array(3);
  for (let row = 0; row < height; row += 1) {
    const band = steps.at(row);
    for (let column = 0, at = row * width; column < width; column += 1, at += 1)
      if (seenAt(source, band, column, evened)) {
        picture.seen[at] = 1;
        labInto(picture.channels, at, evened);
      }
  }
  return picture;
}

/** What the photo shows of the floor, not too far from the cards. */
function boundsOf({ width, height }: Photo, { toFloor }: Views, cards: readonly Place[]) {
  const shares = Array.from({ length: 17 }, (_, at) => at / 16);
  const border = shares.flatMap((share): Place[] => [
    [share * (width - 1), 0],
    [share * (width - 1), height - 1],
    [0, share * (height - 1)],
    [width - 1, share * (height - 1)],
  ]);
  const shown = border.map(toFloor).filter((place) => place !== null);
  const range = (axis: 0 | 1) => {
    const [all, near] = [shown.map((place) => place[axis]), cards.map((place) => place[axis])];
    const beyond = cards.length > 1 ? furthest.several : furthest.alone;
    const [least, most] = [Math.min(...near) - beyond, Math.max(...near) + beyond];
    return [Math.max(least, Math.min(most, ...all)), Math.min(most, Math.max(least, ...all))] as const;
  };
  const [[left, right], [top, bottom]] = [range(0), range(1)];
  return { left, right, top, bottom };
}

/** How many pixels an inch takes in the photo, in the middle between some places. */
export function density({ toPhoto }: Views, cards: readonly Place[]): number {
  const mean = (axis: 0 | 1) =>
    cards.reduce((sum, place) => sum + place[axis], 0) / Math.max(1, cards.length);
  const middle: Place = [mean(0), mean(1)];
  const [here, right, below] = [middle, [middle[0] + 1, middle[1]], [middle[0], middle[1] + 1]].map(
    ([x = 0, y = 0]) => toPhoto([x, y]),
  );
  if (!here || !right || !below) return 1;
  const [ax, ay, bx, by] = [right[0] - here[0], right[1] - here[1], below[0] - here[0], below[1] - here[1]];
  return Math.sqrt(Math.abs(ax * by - ay * bx));
}

const block = 8;

/**
 * Where each pixel of a row lies in the photo and by how much its light is to be multiplied: worked out every eight
 * pixels both ways and taken as straight between, which is true to a fiftieth of a pixel.
 */
type Band = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly gains: readonly [Float64Array, Float64Array, Float64Array];
};

function stepsOver(picture: FloorPicture, views: Views, light: EvenLight): { at(row: number): Band } {
  const columns = Math.ceil(picture.width / block) + 1;
  const knots = (row: number): Float64Array => {
    const made = new Float64Array(5 * columns);
    for (let column = 0; column < columns; column += 1) {
      const floor = floorOf(picture, [column * block, row]);
      made.set([...views.toPhoto(floor), ...light.evened([1, 1, 1], floor)], 5 * column);
    }
    return made;
  };
  let [first, upper, lower] = [0, knots(0), knots(block)];
  const empty = () => new Float64Array(picture.width);
  const band: Band = { x: empty(), y: empty(), gains: [empty(), empty(), empty()] };
  const at = (row: number): Band => {
    if (row >= first + block) {
      [first, upper, lower] = [first + block, lower, knots(first + 2 * block)];
    }
    [band.x, band.y, ...band.gains].forEach((to, which) => {
      between(to, { upper, lower, which, down: (row - first) / block });
    });
    return band;
  };
  return { at };
}

type Knots = {
  readonly upper: Float64Array;
  readonly lower: Float64Array;
  readonly which: number;
  readonly down: number;
};

function between(to: Float64Array, { upper, lower, which, down }: Knots): void {
  for (let column = 0, knot = which; column < to.length; column += block, knot += 5) {
    const one = (upper[knot] ?? 0) * (1 - down) + (lower[knot] ?? 0) * down;
    const other = (upper[knot + 5] ?? 0) * (1 - down) + (lower[knot + 5] ?? 0) * down;
    for (let n = 0; n < Math.min(block, to.length - column); n += 1)
      to[column + n] = one + (n / block) * (other - one);
  }
}

/** A smaller photo in linear light, three numbers a pixel, 1 written as `full`: so it takes half the memory. */
type Shrunk = {
  readonly factor: number;
  readonly columns: number;
  readonly rows: number;
  readonly light: Uint16Array;
};

const full = 65_535;

/** Each pixel the mean of `factor` × `factor`: so that fine prints do not turn to moiré. */
function shrunk({ width, height, rgba }: Photo, factor: number): Shrunk {
  const [columns, rows] = [Math.floor(width / factor), Math.floor(height / factor)];
  const light = new Uint16Array(3 * columns * rows);
  const shares = linearOf.map((value) => (full * value) / (factor * factor));
  const sums = new Float64Array(3 * columns);
  for (let row = 0; row < rows; row += 1) {
    // Whole numbers are cut off, not rounded, where they are put into the array.
    sums.fill(0.5);
    for (let y = row * factor; y < (row + 1) * factor; y += 1)
      addRow(sums, rgba, { from: 4 * y * width, factor, shares });
    for (let at = 0, into = row * sums.length; at < sums.length; at += 1, into += 1)
      light[into] = sums[at] ?? 0;
  }
  return { factor, columns, rows, light };
}

type PhotoRow = {
  /** Where it begins in the photo. */
  readonly from: number;
  readonly factor: number;
  /** Of each byte, what it adds. */
  readonly shares: Float64Array;
};

function addRow(sums: Float64Array, rgba: Photo["rgba"], { from, factor, shares }: PhotoRow): void {
  for (let into = 0, at = from; into < sums.length; into += 3) {
    let red = sums[into] ?? 0;
    let green = sums[into + 1] ?? 0;
    let blue = sums[into + 2] ?? 0;
    for (let n = 0; n < factor; n += 1, at += 4) {
      red += shares[rgba[at] ?? 0] ?? 0;
      green += shares[rgba[at + 1] ?? 0] ?? 0;
      blue += shares[rgba[at + 2] ?? 0] ?? 0;
    }
    sums[into] = red;
    sums[into + 1] = green;
    sums[into + 2] = blue;
  }
}

/** Puts what is seen at a column of the band, evened, into `seen`; false where the photo ends. */
function seenAt(
  { factor, columns, rows, light }: Shrunk,
  band: Band,
  column: number,
  seen: Float64Array,
): boolean {
  const u = ((band.x[column] ?? 0) + 0.5) / factor - 0.5;
  const v = ((band.y[column] ?? 0) + 0.5) / factor - 0.5;
  const left = Math.floor(u);
  const top = Math.floor(v);
  if (left < 0 || top < 0 || left >= columns - 1 || top >= rows - 1) return false;
  const across = u - left;
  const down = v - top;
  for (let channel = 0, first = 3 * (top * columns + left); channel < 3; channel += 1, first += 1) {
    const below = first + 3 * columns;
    const one = (light[first] ?? 0) * (1 - across) + (light[first + 3] ?? 0) * across;
    const other = (light[below] ?? 0) * (1 - across) + (light[below + 3] ?? 0) * across;
    seen[channel] = (one * (1 - down) + other * down) * ((band.gains[channel]?.[column] ?? 1) / full);
  }
  return true;
}
