import { lattice, waves } from "./chance.ts";
import { type Paint, type Rgb, scaled } from "./scene.ts";

/** Ten kinds of cloth. Inches in the piece's own axes. */
export const prints = [
  "solid",
  "black",
  "low-volume",
  "dots",
  "stripes",
  "plaid",
  "floral",
  "batik",
  "gingham",
  "triangles",
] as const;
export type Print = (typeof prints)[number];

/** A cloth of that kind in colours of its own; `even` gives numbers from 0 to 1. */
export function clothOf(print: Print, even: () => number): Paint {
  return woven(clothIn(print, [anyColour(even), anyColour(even), anyColour(even)], even), even);
}

/** Of colours that are given; for what must lie near a floor's. */
export function clothIn(
  print: Print,
  [one, two, three]: readonly [Rgb, Rgb, Rgb],
  even: () => number,
): Paint {
  const [size, seed] = [0.25 + 0.5 * even(), Math.floor(even() * 1e6)];
  switch (print) {
    case "solid":
      return () => one;
    case "black": {
      const black = scaled([0.02, 0.02, 0.022], 0.7 + even() / 2);
      return () => black;
    }
    case "low-volume":
      return lowVolume([0.72 + 0.1 * even(), 0.7 + 0.1 * even(), 0.64 + 0.12 * even()], size, seed);
    case "dots":
      return ([x, y]) => (fromMiddle(x, y, size) < 0.27 ? two : one);
    case "stripes":
      return ([x]) => (x / size - Math.floor(x / size) < 0.5 ? one : two);
    case "plaid":
      return plaid([one, two, three], size);
    case "floral":
      return floral([one, two, three], size, seed);
    case "batik":
      return batik([one, two], size, seed);
    case "gingham":
      return ([x, y]) => between(one, two, (Number(isOdd(x / size)) + Number(isOdd(y / size))) / 2);
    case "triangles":
      return ([x, y]) => (part(x / size) > part(y / size) ? one : two);
  }
}

function anyColour(even: () => number): Rgb {
  const light = 0.03 + 0.6 * even() ** 1.5;
  const channel = () => Math.min(0.9, light * (0.35 + 1.3 * even()));
  return [channel(), channel(), channel()];
}

/** Threads, and waves that pressing has left. */
function woven(paint: Paint, even: () => number): Paint {
  const seed = Math.floor(even() * 1e6);
  return ([x, y]) =>
    scaled(paint([x, y]), 1 + 0.03 * waves(x * 40, y * 40, seed) + 0.02 * waves(x / 2, y / 2, seed));
}

/** Light marks on light cloth. */
function lowVolume(ground: Rgb, size: number, seed: number): Paint {
  return ([x, y]) => {
    const [column, row] = [Math.floor(x / size), Math.floor(y / size)];
    const isMark = fromMiddle(x, y, size) < 0.15 + 0.12 * lattice(column, row, seed);
    return isMark ? scaled(ground, 0.82) : ground;
  };
}

function plaid([one, two, three]: readonly [Rgb, Rgb, Rgb], size: number): Paint {
  const wide = 2 * size;
  return ([x, y]) => {
    const [across, down] = [part(x / wide), part(y / wide)];
    const ground = between(one, two, (Number(across < 0.4) + Number(down < 0.4)) / 2);
    return across > 0.65 && across < 0.72 ? three : ground;
  };
}

function floral([ground, petal, heart]: readonly [Rgb, Rgb, Rgb], size: number, seed: number): Paint {
  const wide = 1.6 * size;
  return ([x, y]) => {
    const [column, row] = [Math.floor(x / wide), Math.floor(y / wide)];
    const u = part(x / wide) - 0.5 - 0.2 * lattice(column, row, seed);
    const v = part(y / wide) - 0.5 - 0.2 * lattice(column, row, seed + 1);
    const far = Math.hypot(u, v);
    if (far < 0.08) return heart;
    return far < 0.2 + 0.07 * Math.cos(5 * Math.atan2(v, u)) ? petal : ground;
  };
}

function batik([one, two]: readonly [Rgb, Rgb, ...Rgb[]], size: number, seed: number): Paint {
  const wide = 2.5 * size;
  return ([x, y]) => {
    const cloud = waves(x / wide, y / wide, seed) + 0.5 * waves((2.3 * x) / wide, (2.3 * y) / wide, seed + 1);
    return between(one, two, Math.max(0, Math.min(1, 0.5 + 0.5 * cloud)));
  };
}

function fromMiddle(x: number, y: number, size: number): number {
  return Math.hypot(part(x / size) - 0.5, part(y / size) - 0.5);
}

function isOdd(value: number): boolean {
  return part(value / 2) >= 0.5;
}

function part(value: number): number {
  return value - Math.floor(value);
}

function between(one: Rgb, other: Rgb, share: number): Rgb {
  return [
    one[0] + share * (other[0] - one[0]),
    one[1] + share * (other[1] - one[1]),
    one[2] + share * (other[2] - one[2]),
  ];
}
