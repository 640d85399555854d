import type { Lab } from "../engine/cloth/index.ts";
import { toNumber } from "../engine/length/index.ts";
import type { Lying } from "./calibrate.ts";
import type { Views } from "./camera.ts";
import { onFloor } from "./cameraFit.ts";
import { labOf, lightAt } from "./light.ts";
import { median } from "./lines.ts";
import { leastSquares } from "./solve.ts";
import type { Light, Photo, Place } from "./types.ts";

/** How much light printing paper gives back; most lie within 0.03 of it. */
const paperWhite = 0.88;

/** In inches: what is nearer to the middle of all cards than this tells hardly how the light falls off. */
const leastSpread = 5;

/** The colour a place on the floor would have in even white light. */
export type EvenLight = {
  readonly evened: (light: Light, floor: Place) => Light;
  readonly lab: (light: Light, floor: Place) => Lab;
};

/**
 * The paper round the markers says what white is, and how the light falls off across the floor: the logarithm of its
 * brightness is taken for a plane. Null where no paper can be seen.
 */
export function evenLight(photo: Photo, views: Views, lying: readonly Lying[]): EvenLight | null {
  const whites = lying.flatMap((one) => whitesOf(photo, views, one));
  if (whites.length === 0) return null;
  const [red, green, blue] = [fallOf(whites, 0), fallOf(whites, 1), fallOf(whites, 2)];
  const evened = (light: Light, floor: Place): Light => [
    light[0] / red(floor),
    light[1] / green(floor),
    light[2] / blue(floor),
  ];
  return { evened, lab: (light, floor) => labOf(evened(light, floor)) };
}

type White = { readonly floor: Place; readonly light: Light };

/** One for each marker: the median of the white margin round it. */
function whitesOf(photo: Photo, { toPhoto }: Views, { target, at, turned }: Lying): readonly White[] {
  return target.markers.flatMap(({ corners: [from, , to] }) => {
    if (from === undefined || to === undefined) return [];
    const [left, top, right, bottom] = [from.x, from.y, to.x, to.y].map((length) => toNumber(length, "in"));
    const box = [left ?? 0, top ?? 0, right ?? 0, bottom ?? 0] as const;
    const lights = marginOf(box)
      .map((place) => lightAt(photo, toPhoto(onFloor(place, at, turned))))
      .filter((light) => light !== null);
    if (lights.length < 20) return [];
    const of = (channel: 0 | 1 | 2) => median(lights.map((light) => light[channel])) / paperWhite;
    const middle: Place = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2];
    return [{ floor: onFloor(middle, at, turned), light: [of(0), of(1), of(2)] as const }];
  });
}

/** Places half a cell outside a marker, all round. */
function marginOf([left, top, right, bottom]: readonly [number, number, number, number]): readonly Place[] {
  const gap = (right - left) / 16;
  const along = Array.from({ length: 24 }, (_, at) => (at + 0.5) / 24);
  return along.flatMap((share): Place[] => {
    const [x, y] = [left + share * (right - left), top + share * (bottom - top)];
    return [
      [x, top - gap],
      [x, bottom + gap],
      [left - gap, y],
      [right + gap, y],
    ];
  });
}

/** A plane through the logarithms of one channel, held the flatter the nearer to one another the markers lie. */
function fallOf(whites: readonly White[], channel: number): (floor: Place) => number {
  const mean = (of: (white: White) => number) =>
    whites.reduce((sum, white) => sum + of(white), 0) / whites.length;
  const [x, y] = [mean(({ floor }) => floor[0]), mean(({ floor }) => floor[1])];
  const logs = whites.map(({ light }) => Math.log(Math.max(1e-4, light[channel] ?? 0)));
  const level = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const held = leastSpread * Math.sqrt(whites.length);
  const rows = whites.map(({ floor }) => [floor[0] - x, floor[1] - y]);
  const slopes =
    leastSquares([...rows, [held, 0], [0, held]], [...logs.map((log) => log - level), 0, 0]) ?? [];
  // Beyond the cards the plane goes no further than it was seen to go.
  const reach = Math.max(...logs) - Math.min(...logs) + 0.1;
  return (floor) => {
    const off = (slopes[0] ?? 0) * (floor[0] - x) + (slopes[1] ?? 0) * (floor[1] - y);
    return Math.exp(level + Math.max(-reach, Math.min(reach, off)));
  };
}
