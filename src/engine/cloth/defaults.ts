import { centimetres, type DisplayUnit, inches, type Length, length, millimetres } from "../length/index.ts";
import type { Grain, Kind, Time } from "./types.ts";

/** What a job takes where she said nothing. All of it is hers to change. */
export type Settings = {
  readonly step: Length;
  readonly seam: Length;
  readonly plainSeam: Length;
  readonly floor: Length;
  readonly clothWidth: Length;
};

export const defaultSettings: Readonly<Record<DisplayUnit, Settings>> = {
  in: {
    step: inches(1, 8),
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    floor: inches(5, 2),
    clothWidth: inches(42),
  },
  cm: {
    step: millimetres(1),
    seam: millimetres(7.5),
    // With 0.75 cm on the other side a cut size is still a whole millimetre; 1.5 cm would leave halves.
    plainSeam: millimetres(12.5),
    // Strips cut 2 1/2 in wide (6.3 cm) show 4.8 cm; the smallest cell is half an inch under the floor.
    floor: millimetres(60),
    clothWidth: centimetres(107),
  },
};

export const defaultTime: Time = "weekend";

type Limits = { readonly least: Length; readonly most: Length };

/** Outside of these a setting is a slip of the pen. From common practice, with room to spare. */
export const settingLimits: Readonly<Record<keyof Settings, Limits>> = {
  step: { least: inches(1, 64), most: inches(1, 2) },
  seam: { least: inches(1, 8), most: inches(1) },
  plainSeam: { least: inches(1, 8), most: inches(1) },
  floor: { least: length(0), most: inches(12) },
  clothWidth: { least: inches(10), most: inches(150) },
};

export const extraLimits: Limits = { least: length(0), most: inches(24) };

export const largestBack = inches(400);
export const largestPiece = inches(10_000);
export const mostPieces = 5_000;

/** Cut with ruler and cutter an edge follows the grain; of a triangle or an odd shape nobody can tell. */
export function grainOf(kind: Kind): Grain {
  return kind === "triangle" || kind === "odd" || kind === "crumbs" ? "unknown" : "straight";
}

/** No finished cell is smaller than this: 1 in, or half an inch under the floor. */
export function smallestCell(floor: Length): Length {
  return length(Math.max(inches(1), floor - inches(1, 2)));
}
