import { lattice, waves } from "./chance.ts";
import { type Paint, type Rgb, scaled } from "./scene.ts";

/** What pieces are laid on, by name; each in a tone and with a grain of its own. Inches. */
export const floors = ["wood", "carpet", "mat", "plain", "wall"] as const;
export type Floor = (typeof floors)[number];

/** `even` gives numbers from 0 to 1. */
export function floorOf(floor: Floor, even: () => number): Paint {
  const seed = Math.floor(even() * 1e6);
  switch (floor) {
    case "wood":
      return planks(tinted([0.3, 0.19, 0.1], even, 0.5), { seed, wide: 2.5 + 3 * even() });
    case "carpet":
      return carpet(tinted([0.28, 0.26, 0.24], even, 0.5), { seed, rough: 0.1 + 0.12 * even() });
    case "mat":
      return gridded(tinted([0.04, 0.14, 0.1], even, 0.4), { seed, halves: even() < 0.4 });
    case "plain":
      return painted(tinted([0.35, 0.35, 0.36], even, 0.7), seed);
    case "wall":
      return painted(tinted([0.82, 0.82, 0.8], even, 0.04), seed);
  }
}

function tinted(colour: Rgb, even: () => number, spread: number): Rgb {
  const light = 1 + spread * (2 * even() - 1);
  const tint = () => 1 + 0.25 * spread * (2 * even() - 1);
  return [colour[0] * light * tint(), colour[1] * light * tint(), colour[2] * light * tint()];
}

/** Boards along x, each of a tone of its own, with grain, joints between them and where they end. */
function planks(colour: Rgb, { seed, wide }: { seed: number; wide: number }): Paint {
  return ([x, y]) => {
    const row = Math.floor(y / wide);
    const [shift, long] = [20 * lattice(row, 1, seed), 34 + 8 * lattice(row, 2, seed)];
    const board = Math.floor((x + shift) / long);
    const tone = 1 + 0.12 * lattice(row, board, seed);
    const bent = y + 0.25 * waves(x / 6, y / 2, seed + board);
    const grain = 0.07 * waves(bent * 5, x / 9, seed + row) + 0.05 * waves(bent * 22, x / 3, seed + row);
    const joint = y - row * wide < 0.04 || x + shift - board * long < 0.04 ? 0.55 : 1;
    return scaled(colour, tone * joint * (1 + grain));
  };
}

function carpet(colour: Rgb, { seed, rough }: { seed: number; rough: number }): Paint {
  return ([x, y]) => {
    const tufts = waves(x * 7, y * 7, seed) + 0.7 * waves(x * 17, y * 17, seed + 1);
    return scaled(colour, Math.max(0.2, 1 + rough * tufts + 0.05 * waves(x / 5, y / 5, seed + 2)));
  };
}

/** Thin light lines an inch apart, fainter ones between them. */
function gridded(colour: Rgb, { seed, halves }: { seed: number; halves: boolean }): Paint {
  const off = (value: number) => Math.abs(value - Math.round(value));
  return ([x, y]) => {
    const base = scaled(colour, 1 + 0.03 * waves(x / 4, y / 4, seed));
    if (off(x) < 0.02 || off(y) < 0.02) return lighter(base, 0.25);
    return halves && (off(x + 0.5) < 0.01 || off(y + 0.5) < 0.01) ? lighter(base, 0.1) : base;
  };
}

function lighter([r, g, b]: Rgb, by: number): Rgb {
  return [r + by, g + by, b + 0.8 * by];
}

function painted(colour: Rgb, seed: number): Paint {
  return ([x, y]) => scaled(colour, 1 + 0.015 * waves(x / 3, y / 3, seed) + 0.01 * waves(x * 9, y * 9, seed));
}
