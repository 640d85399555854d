import { colourDifference, type Lab } from "../../src/engine/cloth/index.ts";
import { evenly } from "./chance.ts";
import { type Floor, floorOf, floors } from "./floors.ts";
import { clothIn, clothOf, type Print, prints } from "./prints.ts";
import { meanOf } from "./render.ts";
import { type RoomFloor, roomFloorOf, roomFloors, shadesOf } from "./roomFloors.ts";
import {
  isInside,
  type Paint,
  type Pool,
  pixelOf,
  type Rgb,
  rectangle,
  type Scene,
  type Shade,
  type Spot,
  triangle,
} from "./scene.ts";

/**
 * Photographs by number, for the bench: numbers under 500 to tune on, those from 500 on to report alone. What each shows
 * follows from its number.
 */
export const tuningSeeds: readonly number[] = Array.from({ length: 22 }, (_, at) => at + 1);
export const reportingSeeds: readonly number[] = Array.from({ length: 44 }, (_, at) => at + 500);

/** To tune on as well: floors as rooms have them, in fewer pixels. */
export const roomSeeds: readonly number[] = Array.from({ length: 18 }, (_, at) => at + 102);

/** What a photograph is to show: the usual, cloth near the floor's color, light prints on a white wall, pieces that touch, one sheet. */
export const groups = ["good", "near", "white", "touching", "one-sheet"] as const;
export type Group = (typeof groups)[number];

export const pieceTypes = ["square", "rectangle", "strip", "triangle", "quad", "block"] as const;
export type PieceType = (typeof pieceTypes)[number];

/** A piece as it was cut: inches, from the shorter side or leg; none of a quad. */
export type TruePiece = {
  readonly type: PieceType;
  readonly print: Print;
  readonly outline: readonly Spot[];
  readonly sizes: readonly number[];
  /** Mean of its light. */
  readonly lab: Lab;
  /** Of the mean of its light to the floor's, ΔE00. */
  readonly contrast: number;
  readonly touches: boolean;
};

export type Photograph = {
  readonly seed: number;
  readonly group: Group;
  readonly floor: Floor | RoomFloor;
  readonly scene: Scene;
  readonly pieces: readonly TruePiece[];
  /** Of JPEG, as sharp takes it. */
  readonly quality: number;
};

export function photograph(seed: number): Photograph {
  // Numbers beside one another begin alike.
  const even = evenly(Math.imul(seed, 0x9e3779b1));
  for (let n = 0; n < 8; n += 1) even();
  const group = roomSeeds.includes(seed) ? "good" : groupOf(seed);
  const { floor, paint, shades } = groundFor(seed, { group, even });
  const empty = { ...emptyScene(seed, { group, paint, even }), ...(shades.length > 0 ? { shades } : {}) };
  const floorLab = labOf(meanOf(paint, spotsOver(rectangle([0, 0], [36, 26], 0))));
  const laid = laidOn(empty, { group, floorLab, even });
  const pieces = laid.map(({ paint: _, ...piece }) => piece);
  const scene = {
    ...empty,
    pieces: laid.map(({ outline, paint }) => ({ outline, paint, fray: 0.012 * even() })),
  };
  return { seed, group, floor, scene, pieces, quality: Math.round(82 + 12 * even()) };
}

type GroundFor = Pick<Photograph, "floor"> & { readonly paint: Paint; readonly shades: readonly Shade[] };

function groundFor(seed: number, { group, even }: Making): GroundFor {
  if (roomSeeds.includes(seed)) {
    const floor = roomFloors[seed % roomFloors.length] ?? "tiles";
    return { floor, paint: roomFloorOf(floor, even), shades: shadesOf(floor, even) };
  }
  const floor = group === "white" ? "wall" : (floors[seed % floors.length] ?? "plain");
  return { floor, paint: floorOf(floor, even), shades: [] };
}

function groupOf(seed: number): Group {
  const turn = seed % 11;
  if (turn < 6) return "good";
  if (turn < 8) return "near";
  return turn === 8 ? "white" : turn === 9 ? "touching" : "one-sheet";
}

type Making = { readonly group: Group; readonly even: () => number };

function emptyScene(seed: number, { group, paint, even }: Making & { paint: Paint }): Scene {
  const between = (least: number, most: number) => least + even() * (most - least);
  // Two thirds are held within 15 degrees, as one stands over a table.
  const tilt = even() < 0.67 ? between(0, 15) : between(15, 35);
  const cast = [between(0.8, 1), between(0.85, 0.95), between(0.65, 1)] as const;
  const width = roomSeeds.includes(seed) ? 2400 : 4000;
  return {
    width,
    height: 0.75 * width,
    focal: width * between(0.7, 0.84),
    k1: between(-0.04, 0.07),
    tilt,
    towards: between(0, 360),
    far: between(36, 42),
    looksAt: [0, 0],
    floor: paint,
    cards: cardsOf(group, even, seed),
    pieces: [],
    fall: between(0, 0.35),
    cast,
    noise: between(0.8, 2.2),
    seed,
    pools: poolsOf(even),
    shadow: {
      aside: [between(-0.06, 0.06), between(-0.06, 0.06)],
      soft: between(0.03, 0.12),
      takes: between(0.15, 0.5),
    },
    spread: 0.1 + 0.05 * (seed % 4),
    tone: seed % 3 === 0 ? 0.3 : 0,
  };
}

function cardsOf(group: Group, even: () => number, seed: number): Scene["cards"] {
  const askew = () => 12 * (2 * even() - 1);
  if (group === "one-sheet") return [{ first: 10, at: [0, -6], degrees: askew() }];
  if (seed % 2 === 0)
    return [
      { first: 10, at: [-13.5, 0], degrees: askew() },
      { first: 14, at: [13.5, 0], degrees: 180 + askew() },
    ];
  return [
    { first: 0, at: [-14.5, -9.5], degrees: askew() },
    { first: 1, at: [14.5, -9.5], degrees: 90 + askew() },
    { first: 2, at: [14.5, 9.5], degrees: askew() },
    { first: 3, at: [-14.5, 9.5], degrees: askew() },
  ];
}

/** One in two photographs has a shadow over part of it. */
function poolsOf(even: () => number): readonly Pool[] {
  if (even() < 0.5) return [];
  const at: Spot = [40 * even() - 20, 30 * even() - 15];
  return [{ at, reach: 8 + 8 * even(), takes: 0.12 + 0.2 * even() }];
}

type Laid = TruePiece & { readonly paint: Paint };
type Laying = Making & { readonly floorLab: Lab };

const tries = 260;
const most = 18;

/** One after another where there is room: half an inch from all else, and in sight. */
function laidOn(scene: Scene, laying: Laying): readonly Laid[] {
  const { group, even } = laying;
  const taken: (readonly Spot[])[] = scene.cards.map(({ first, at, degrees }) =>
    rectangle(at, first < 10 ? [6.6, 6.6] : [9.5, 12], degrees),
  );
  const laid: Laid[] = [];
  for (let n = 0; n < tries && laid.length < most; n += 1) {
    const shape = anyShape([38 * even() - 19, 28 * even() - 14], even);
    const pair = group === "touching" && laid.length < 8 ? beside(shape) : null;
    const outlines = pair === null ? [shape.outline] : [shape.outline, pair.outline];
    const isFree = outlines.every((outline) => inSight(scene, outline) && isApart(outline, taken));
    if (!isFree) continue;
    taken.push(...outlines);
    laid.push(covered(shape, { ...laying, touches: pair !== null, which: laid.length }));
    if (pair !== null) laid.push(covered(pair, { ...laying, touches: true, which: laid.length }));
  }
  return laid;
}

type Cut = Pick<TruePiece, "type" | "outline" | "sizes"> & { readonly at: Spot; readonly degrees: number };

function anyShape(at: Spot, even: () => number): Cut {
  const type = pieceTypes[Math.floor(even() * pieceTypes.length)] ?? "square";
  const degrees = 360 * even();
  const [one, other] = [1.75 + 4 * even(), 1.75 + 4 * even()];
  switch (type) {
    case "square":
    case "block":
      return { type, outline: rectangle(at, [one, one], degrees), sizes: [one, one], at, degrees };
    case "rectangle": {
      const long = one * (1.2 + even());
      return { type, outline: rectangle(at, [one, long], degrees), sizes: [one, long], at, degrees };
    }
    case "strip": {
      const [short, long] = [1.25 + 1.25 * even(), 9 + 4 * even()];
      return { type, outline: rectangle(at, [short, long], degrees), sizes: [short, long], at, degrees };
    }
    case "triangle": {
      const legs = [one + 1.5, even() < 0.5 ? one + 1.5 : other + 1.5].toSorted((a, b) => a - b);
      return { type, outline: triangle(at, [legs[0] ?? 0, legs[1] ?? 0], degrees), sizes: legs, at, degrees };
    }
    case "quad":
      return { type, outline: quad(at, one + 1, even), sizes: [], at, degrees };
  }
}

/** Four corners, none of its angles near a right one. */
function quad([x, y]: Spot, size: number, even: () => number): Spot[] {
  const slant = (0.25 + 0.3 * even()) * size;
  const turn = 360 * even();
  const middle = rectangle([x, y], [size, size], turn);
  const along = rectangle([0, 0], [2 * slant, 0], turn)[2] ?? [slant, 0];
  return middle.map(
    ([u, v], at): Spot =>
      at === 1 ? [u + along[0], v + along[1]] : at === 3 ? [u - 0.4 * along[0], v - 0.4 * along[1]] : [u, v],
  );
}

/** A square that shares part of a side with another piece. */
function beside({ outline }: Cut): Cut | null {
  const [from, to] = [outline[0], outline[1]];
  if (from === undefined || to === undefined) return null;
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [u, v] = [(to[0] - from[0]) / far, (to[1] - from[1]) / far];
  const side = 0.7 * far;
  const degrees = (Math.atan2(v, u) * 180) / Math.PI;
  const middle: Spot = [
    (from[0] + to[0]) / 2 + 0.3 * far * u + (v * side) / 2,
    (from[1] + to[1]) / 2 + 0.3 * far * v - (u * side) / 2,
  ];
  return {
    type: "square",
    outline: rectangle(middle, [side, side], degrees),
    sizes: [side, side],
    at: middle,
    degrees,
  };
}

type Covering = Laying & { readonly touches: boolean; readonly which: number };

/** In a cloth that stands out from the floor as much as the photograph is to show. */
function covered(cut: Cut, covering: Covering): Laid {
  const { at, degrees, ...shape } = cut;
  const spots = spotsOver(shape.outline);
  const [least, most] = contrastWanted(covering);
  let made: Laid | null = null;
  for (let n = 0; n < 200; n += 1) {
    const print = printFor(covering);
    const paint = inOwnAxes(
      cut.type === "block" ? fourPatch(covering) : clothFor(print, covering, least),
      at,
      degrees,
    );
    const lab = labOf(meanOf(paint, spots));
    const contrast = colourDifference(lab, covering.floorLab);
    made = { ...shape, print, paint, lab, contrast, touches: covering.touches };
    if (contrast >= least && contrast < most) break;
  }
  if (made === null) throw new Error("no cloth was found");
  return made;
}

function contrastWanted({ group, which }: Covering): readonly [number, number] {
  if (group === "white" && which % 2 === 0) return [2.5, 100];
  return group === "near" && which % 3 === 0 ? [5, 8] : [8.5, 100];
}

function printFor({ group, which, even }: Covering): Print {
  if (group === "white" && which % 2 === 0) return "low-volume";
  return prints[Math.floor(even() * prints.length)] ?? "solid";
}

function clothFor(print: Print, { floorLab, even }: Covering, least: number): Paint {
  if (least !== 5) return clothOf(print, even);
  const near = (): Rgb => {
    const [r, g, b] = lightOf(floorLab);
    const all = 0.75 + 0.5 * even();
    const channel = (value: number) => Math.min(0.9, value * all * (0.8 + 0.4 * even()));
    return [channel(r), channel(g), channel(b)];
  };
  return clothIn(print, [near(), near(), near()], even);
}

/** Sewn of four squares, two and two of a cloth. */
function fourPatch({ even }: Covering): Paint {
  const [one, other] = [0, 1].map(() => clothOf(prints[Math.floor(even() * prints.length)] ?? "solid", even));
  if (!one || !other) throw new Error("a four-patch has two cloths");
  return (spot) => (spot[0] > 0 === spot[1] > 0 ? one(spot) : other(spot));
}

function inOwnAxes(paint: Paint, [x, y]: Spot, degrees: number): Paint {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ([u, v]) => paint([cosine * (u - x) + sine * (v - y), cosine * (v - y) - sine * (u - x)]);
}

function spotsOver(outline: readonly Spot[]): readonly Spot[] {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [across, down] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const all = Array.from(
    { length: 1600 },
    (_, at): Spot => [
      left + (((at % 40) + 0.5) / 40) * across,
      top + ((Math.floor(at / 40) + 0.5) / 40) * down,
    ],
  );
  return all.filter((spot) => isInside(outline, spot));
}

function inSight(scene: Scene, outline: readonly Spot[]): boolean {
  return outline.every((spot) => {
    const [x, y] = pixelOf(scene, spot);
    return x > 40 && y > 40 && x < scene.width - 40 && y < scene.height - 40;
  });
}

const laidApart = 0.5;

function isApart(outline: readonly Spot[], taken: readonly (readonly Spot[])[]): boolean {
  return taken.every((other) => !meet(outline, other) && gap(outline, other) >= laidApart);
}

function meet(one: readonly Spot[], other: readonly Spot[]): boolean {
  return (
    one.some((spot) => isInside(other, spot)) ||
    other.some((spot) => isInside(one, spot)) ||
    sidesCross(one, other)
  );
}

function sidesCross(one: readonly Spot[], other: readonly Spot[]): boolean {
  return sidesOf(one).some(([a, b]) =>
    sidesOf(other).some(([c, d]) => turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b)),
  );
}

function sidesOf(outline: readonly Spot[]): readonly (readonly [Spot, Spot])[] {
  return outline.map((from, at) => [from, outline[(at + 1) % outline.length] ?? from] as const);
}

function turn(a: Spot, b: Spot, c: Spot): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}

function gap(one: readonly Spot[], other: readonly Spot[]): number {
  return Math.min(...one.map((spot) => farFrom(other, spot)), ...other.map((spot) => farFrom(one, spot)));
}

function farFrom(outline: readonly Spot[], [x, y]: Spot): number {
  return Math.min(
    ...sidesOf(outline).map(([[ax, ay], [bx, by]]) => {
      const [dx, dy] = [bx - ax, by - ay];
      const share = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(x - ax - share * dx, y - ay - share * dy);
    }),
  );
}

/** CIELAB under D65 of linear light, by sRGB's matrix (IEC 61966-2-1, CIE 15). */
export function labOf([red, green, blue]: Rgb): Lab {
  const root = (value: number) =>
    value > (6 / 29) ** 3 ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29;
  const x = root((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = root(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const z = root((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** The other way. */
export function lightOf({ l, a, b }: Lab): Rgb {
  const inverse = (value: number) => (value > 6 / 29 ? value ** 3 : 3 * (6 / 29) ** 2 * (value - 4 / 29));
  const y = (l + 16) / 116;
  const [X, Y, Z] = [0.9505 * inverse(y + a / 500), inverse(y), 1.089 * inverse(y - b / 200)];
  return [
    3.2406 * X - 1.5372 * Y - 0.4986 * Z,
    -0.9689 * X + 1.8758 * Y + 0.0415 * Z,
    0.0557 * X - 0.204 * Y + 1.057 * Z,
  ];
}
