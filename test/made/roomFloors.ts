import { lattice, waves } from "./chance.ts";
import { floorOf } from "./floors.ts";
import { isInside, type Paint, type Rgb, rectangle, type Shade, type Spot, scaled } from "./scene.ts";

/**
 * What else lies under pieces in rooms: mats with lines of two weights, numerals and slanted lines, mats and sheets of
 * paper whose edge is in sight, boards with dark joints, tiles, and whoever takes the photo between lamp and floor.
 */
export const roomFloors = [
  "bold-mat",
  "mat-on-boards",
  "dark-joints",
  "shadow-of-hers",
  "paper-on-boards",
  "tiles",
] as const;
export type RoomFloor = (typeof roomFloors)[number];

/** `even` gives numbers from 0 to 1. Inches. */
export function roomFloorOf(floor: RoomFloor, even: () => number): Paint {
  switch (floor) {
    case "bold-mat":
      return boldMat(even);
    case "mat-on-boards":
      return laidOver(boldMat(even), sheet(even, [42, 30]), darkJoints(even));
    case "dark-joints":
      return darkJoints(even);
    case "shadow-of-hers":
      return floorOf(even() < 0.5 ? "plain" : "wood", even);
    case "paper-on-boards":
      return laidOver(paper(even), sheet(even, [44, 33]), floorOf("wood", even));
    case "tiles":
      return tiles(even);
  }
}

/** Of the one who holds the phone: head, shoulders and arms, with an edge that the lamp makes soft. */
export function shadesOf(floor: RoomFloor, even: () => number): readonly Shade[] {
  if (floor !== "shadow-of-hers") return [];
  const [x, soft, takes] = [20 * even() - 10, 0.3 + 1.2 * even(), 0.25 + 0.3 * even()];
  const part = (at: Spot, size: Spot, degrees: number): Shade => ({
    outline: rectangle(at, size, degrees),
    soft,
    takes,
  });
  const head = [0, 30, 60].map((degrees) => part([x, 3], [5.5, 5.5], degrees));
  return [...head, part([x, 14], [15, 15], 0), part([x - 7, 5], [3, 12], 20), part([x + 7, 5], [3, 12], -20)];
}

/** Where `outline` reaches, with a thin shadow along its edge; beyond, what it lies on. */
function laidOver(upper: Paint, outline: readonly Spot[], lower: Paint): Paint {
  const aside = outline.map(([x, y]): Spot => [x + 0.05, y + 0.08]);
  return (spot) => {
    if (isInside(outline, spot)) return upper(spot);
    return isInside(aside, spot) ? scaled(lower(spot), 0.6) : lower(spot);
  };
}

function sheet(even: () => number, size: Spot): readonly Spot[] {
  return rectangle([2 * even() - 1, 2 * even() - 1], size, 6 * even() - 3);
}

function paper(even: () => number): Paint {
  const kraft = even() < 0.5;
  const colour: Rgb = kraft ? [0.4, 0.27, 0.15] : [0.8, 0.8, 0.78];
  const seed = Math.floor(even() * 1e6);
  // Rolled up before, it lies in broad waves.
  return ([x, y]) => scaled(colour, 1 + 0.05 * waves(x / 5, 0, seed) + 0.01 * waves(x * 12, y * 12, seed));
}

/** Wide boards, dark and open where they meet. */
function darkJoints(even: () => number): Paint {
  const seed = Math.floor(even() * 1e6);
  const [wide, gap, dark] = [4 + 3 * even(), 0.05 + 0.1 * even(), 0.1 + 0.25 * even()];
  const light = 0.6 + 0.8 * even();
  return ([x, y]) => {
    const row = Math.floor(y / wide);
    const long = 40 + 10 * lattice(row, 2, seed);
    const along = x + 25 * lattice(row, 1, seed);
    const board = Math.floor(along / long);
    const tone = light * (1 + 0.15 * lattice(row, board, seed) + 0.08 * waves(y * 6, x / 8, seed + row));
    const isJoint = y - row * wide < gap || along - board * long < 0.7 * gap;
    return scaled([0.34, 0.21, 0.11], isJoint ? dark * tone : tone);
  };
}

function tiles(even: () => number): Paint {
  const seed = Math.floor(even() * 1e6);
  const [wide, grout] = [8 + 5 * even(), 0.12 + 0.16 * even()];
  const [light, joint] = [0.3 + 0.35 * even(), 0.5 + 0.9 * even()];
  return ([x, y]) => {
    const [column, row] = [Math.floor(x / wide), Math.floor(y / wide)];
    const tone = 1 + 0.04 * lattice(column, row, seed) + 0.04 * waves(x / 2, y / 2, seed + column * 7 + row);
    const isGrout = x - column * wide < grout || y - row * wide < grout;
    return scaled([light, 0.97 * light, 0.9 * light], isGrout ? joint : tone);
  };
}

/** Lines an inch apart, bolder at every fifth or sixth, finer between; slanted ones; numerals along two sides. */
function boldMat(even: () => number): Paint {
  const seed = Math.floor(even() * 1e6);
  const tones: readonly Rgb[] = [
    [0.04, 0.13, 0.1],
    [0.05, 0.08, 0.16],
    [0.22, 0.23, 0.25],
    [0.16, 0.05, 0.1],
  ];
  const colour = tones[Math.floor(even() * tones.length)] ?? [0.04, 0.13, 0.1];
  const [bold, every, ink] = [0.03 + 0.03 * even(), even() < 0.5 ? 5 : 6, 0.2 + 0.3 * even()];
  const slants = even() < 0.7 ? [45, 60, -45] : [];
  return (spot) => {
    const base = scaled(colour, 1 + 0.03 * waves(spot[0] / 4, spot[1] / 4, seed));
    const share = inkAt(spot, { bold, every, slants });
    return share === 0 ? base : [base[0] + ink * share, base[1] + ink * share, base[2] + 0.7 * ink * share];
  };
}

type Ruled = { readonly bold: number; readonly every: number; readonly slants: readonly number[] };

function inkAt([x, y]: Spot, { bold, every, slants }: Ruled): number {
  const off = (value: number, step: number) => Math.abs(value - step * Math.round(value / step));
  if (off(x, every) < bold || off(y, every) < bold) return 1;
  if (off(x, 1) < 0.4 * bold || off(y, 1) < 0.4 * bold) return 0.8;
  if (slants.some((degrees) => Math.abs(acrossFrom([x, y], degrees)) < 0.4 * bold)) return 0.9;
  if (isNumeral([x, y])) return 1;
  return off(x + 0.5, 1) < 0.008 || off(y + 0.5, 1) < 0.008 ? 0.35 : 0;
}

/** From a slanted line through the middle. */
function acrossFrom([x, y]: Spot, degrees: number): number {
  const turned = (degrees * Math.PI) / 180;
  return Math.sin(turned) * x - Math.cos(turned) * y;
}

// Of a numeral on a dial: bars across from the top, then upright ones from the upper left, row by row.
const bars = [
  "1011111",
  "0000101",
  "1110110",
  "1110101",
  "0101101",
  "1111001",
  "1111011",
  "1000101",
  "1111111",
];

/** At every inch along two rows, as on a dial, a third of an inch high. */
function isNumeral([x, y]: Spot): boolean {
  const row = [-7, 7].find((at) => Math.abs(y - at - 0.3) < 0.2);
  if (row === undefined) return false;
  const column = Math.round(x - 0.3);
  const [u, v] = [(x - 0.3 - column) / 0.1, (y - row - 0.3) / 0.18];
  if (Math.abs(u) > 1 || Math.abs(v) > 1) return false;
  const lit = bars[Math.abs(column) % bars.length] ?? "";
  const isAcross = (at: number) => Math.abs(v - at) < 0.17;
  const isUpright = (side: number, lower: boolean) => Math.abs(u - side) < 0.3 && v > 0 === lower;
  return (
    (lit[0] === "1" && isAcross(-0.85)) ||
    (lit[1] === "1" && isUpright(-0.8, false) && v < 0) ||
    (lit[2] === "1" && isAcross(0)) ||
    (lit[3] === "1" && isUpright(0.8, false)) ||
    (lit[4] === "1" && isUpright(0.8, true)) ||
    (lit[5] === "1" && isUpright(-0.8, true)) ||
    (lit[6] === "1" && isAcross(0.85))
  );
}
