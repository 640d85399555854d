import type { Lab } from "../../src/engine/cloth/index.ts";
import { evenly } from "./chance.ts";
import { floorOf } from "./floors.ts";
import { labOf } from "./photographs.ts";
import {
  type Paint,
  plain,
  type Rgb,
  rectangle,
  type Scene,
  type ScenePiece,
  type Spot,
  stripes,
  wood,
} from "./scene.ts";

export const hardships = [
  "near-floor",
  "print-like-floor",
  "touching",
  "side-by-side",
  "block",
  "under-card",
  "mat",
  "folded",
  "frayed",
  "bright-phone",
] as const;
export type Hardship = (typeof hardships)[number];

/** A photograph of what can't be measured well, and where in it to look. */
export type HardPhotograph = {
  readonly name: Hardship;
  readonly scene: Scene;
  /** Of the floor, in inches. */
  readonly around: { readonly middle: Spot; readonly size: Spot };
  /** As they were cut, in inches. */
  readonly sizes: readonly Spot[];
  /** The cloth's own color, where that is what is looked at. */
  readonly swatch?: Lab;
};

const floor: Rgb = [0.25, 0.16, 0.09];
const blue = plain(0.05, 0.13, 0.35);
const cream = plain(0.62, 0.56, 0.42);
const rose: Rgb = [0.42, 0.2, 0.18];
const mat = floorOf("mat", evenly(11));
// Of the mat's lines' own color, beside two of them.
const onLine = square([0.06, 0.4], 4, 0, plain(0.28, 0.36, 0.3));

const table: Omit<Scene, "pieces"> = {
  width: 1800,
  height: 1350,
  focal: 1400,
  k1: 0.04,
  tilt: 10,
  towards: 70,
  far: 25,
  looksAt: [0, 0],
  floor: wood(floor),
  cards: [
    { first: 0, at: [-9.5, -6.5], degrees: 5 },
    { first: 1, at: [9.5, -6.5], degrees: 95 },
    { first: 2, at: [9.5, 6.5], degrees: -12 },
    { first: 3, at: [-9.5, 6.5], degrees: 170 },
  ],
  fall: 0.2,
  cast: [0.95, 0.9, 0.8],
  noise: 2,
  seed: 7,
  spread: 0.15,
  shadow: { aside: [0.03, 0.04], soft: 0.06, takes: 0.35 },
};

const middle: HardPhotograph["around"] = { middle: [0, 0], size: [10.5, 7] };

/** What fails, one each; the tests' own pieces are laid so that it shows. */
export function hardPhotographs(): readonly HardPhotograph[] {
  return [
    shown(
      "near-floor",
      [{ outline: rectangle([0, 0], [5, 4], 8), paint: plain(0.235, 0.152, 0.088) }],
      [[4, 5]],
    ),
    shown("print-like-floor", [{ outline: rectangle([0, 0], [5, 4], 8), paint: likeFloor }], [[4, 5]]),
    shown(
      "touching",
      [square([-1.55, 0], 3, 0, blue), square([1.46, 0.6], 3, 0, cream)],
      [
        [3, 3],
        [3, 3],
      ],
    ),
    shown(
      "side-by-side",
      [square([-1.5, 0], 3, 0, blue), square([1.5, 0], 3, 0, blue)],
      [
        [3, 3],
        [3, 3],
      ],
    ),
    shown("block", [square([0, 0], 6, 8, nineMadeOf(blue, wood(floor), 8))], [[6, 6]]),
    {
      ...shown("under-card", [{ outline: rectangle([-6, -4.2], [5, 4], 0), paint: blue }], [[4, 5]]),
      around: { middle: [-6, -4.2], size: [10.5, 7] },
    },
    { ...shown("mat", [], [[4, 4]]), scene: { ...table, floor: mat, pieces: [onLine] } },
    shown(
      "folded",
      [square([0, 2.5], [6, 1], 0, plain(0.4, 0.44, 0.5)), square([0, 0], 6, 0, blue)],
      [[6, 7]],
    ),
    shown("frayed", [{ ...square([0, 0], 4, 5, cream), fray: 0.06 }], [[4, 4]]),
    {
      ...shown("bright-phone", [], [[4, 4]]),
      scene: { ...table, tone: 0.6, pieces: [square([0, 0], 4, 5, plain(...rose))] },
      swatch: labOf(rose),
    },
  ];
}

function shown(name: Hardship, pieces: readonly ScenePiece[], sizes: readonly Spot[]): HardPhotograph {
  return { name, scene: { ...table, pieces }, around: middle, sizes };
}

function square(at: Spot, size: number | Spot, degrees: number, paint: Paint): ScenePiece {
  return { outline: rectangle(at, typeof size === "number" ? [size, size] : size, degrees), paint };
}

const likeFloor = stripes(floor, [0.02, 0.05, 0.06]);

/** Nine patches of two inches, every other of the second. */
function nineMadeOf(one: Paint, other: Paint, degrees: number): Paint {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return (spot) => {
    const [u, v] = [cosine * spot[0] + sine * spot[1], cosine * spot[1] - sine * spot[0]];
    const isOdd = (Math.floor((u + 3) / 2) + Math.floor((v + 3) / 2)) % 2 !== 0;
    return (isOdd ? one : other)(spot);
  };
}
