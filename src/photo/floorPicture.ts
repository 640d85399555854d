import type { Views } from "./camera.ts";
import { linearOf } from "./light.ts";
import type { EvenLight } from "./paper.ts";
import type { Light, Photo, Place } from "./types.ts";

/** The floor as seen from straight above, in Lab in even light. A pixel's centre is at whole numbers. */
export type FloorPicture = {
  readonly width: number;
  readonly height: number;
  readonly perInch: number;
  /** On the floor, of the first pixel's centre. */
  readonly origin: Place;
  /** L, a and b of each pixel. */
  readonly channels: readonly [Float32Array, Float32Array, Float32Array];
  /** 1 where the photo shows the floor. */
  readonly seen: Uint8Array;
};

const perInchWanted = 22;
const mostPixels = 3e6;
// What lies further than this from the cards is measured too badly to be offered.
const furthest = 40;

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
  for (let at = 0; at < width * height; at += 1) {
    const floor = floorOf(picture, [at % width, Math.floor(at / width)]);
    const seen = source.at(views.toPhoto(floor));
    if (seen === null) continue;
    const { l, a, b } = light.lab(seen, floor);
    picture.channels[0][at] = l;
    picture.channels[1][at] = a;
    picture.channels[2][at] = b;
    picture.seen[at] = 1;
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
    const [least, most] = [Math.min(...near) - furthest, Math.max(...near) + furthest];
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

/** The photo in linear light, each pixel the mean of `factor` × `factor`: so that fine prints do not turn to moiré. */
function shrunk({ width, height, rgba }: Photo, factor: number) {
  const [columns, rows] = [Math.floor(width / factor), Math.floor(height / factor)];
  const light = new Float32Array(3 * columns * rows);
  const share = 1 / (factor * factor);
  for (let row = 0; row < rows * factor; row += 1)
    for (let column = 0; column < columns * factor; column += 1) {
      const to = 3 * (Math.floor(row / factor) * columns + Math.floor(column / factor));
      const from = 4 * (row * width + column);
      for (let channel = 0; channel < 3; channel += 1)
        light[to + channel] = (light[to + channel] ?? 0) + share * (linearOf[rgba[from + channel] ?? 0] ?? 0);
    }
  const at = ([x, y]: Place): Light | null => {
    const [u, v] = [(x + 0.5) / factor - 0.5, (y + 0.5) / factor - 0.5];
    const [left, top] = [Math.floor(u), Math.floor(v)];
    if (left < 0 || top < 0 || left >= columns - 1 || top >= rows - 1) return null;
    const [across, down] = [u - left, v - top];
    const first = 3 * (top * columns + left);
    const below = first + 3 * columns;
    const shares = [
      (1 - across) * (1 - down),
      across * (1 - down),
      (1 - across) * down,
      across * down,
    ] as const;
    const made: [number, number, number] = [0, 0, 0];
    for (const channel of [0, 1, 2] as const)
      made[channel] =
        shares[0] * (light[first + channel] ?? 0) +
        shares[1] * (light[first + 3 + channel] ?? 0) +
        shares[2] * (light[below + channel] ?? 0) +
        shares[3] * (light[below + 3 + channel] ?? 0);
    return made;
  };
  return { at };
}
