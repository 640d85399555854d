import type { Eye, Fault } from "./fault.ts";
import { caterpillars, lonelyBits, slivers } from "./faultsOfCells.ts";
import { blocksOutside, joinsWithoutGiver, wrongLongSeams } from "./faultsOfLongSeams.ts";
import { halvesInLine, heavyCrossings, nearMisses } from "./faultsOfMeetings.ts";
import { biasOutside, mixedStripes, sillyCuts } from "./faultsOfPieces.ts";
import type { Scene } from "./scene.ts";

export type Look = (scene: Scene, eye: Eye) => Fault[];

/** These ask nothing but a cell and what it touches. */
export const looksAtCells: readonly Look[] = [blocksOutside, slivers, lonelyBits, biasOutside];

/** These ask nothing but a seam, what lies along it and the two parts that it joins. */
export const looksAtLines: readonly Look[] = [nearMisses, joinsWithoutGiver];

const looks: readonly Look[] = [
  wrongLongSeams,
  blocksOutside,
  slivers,
  nearMisses,
  halvesInLine,
  sillyCuts,
  joinsWithoutGiver,
  lonelyBits,
  caterpillars,
  biasOutside,
  mixedStripes,
  heavyCrossings,
];

/** All but likes that touch, which the heap may force. */
export function faultsIn(scene: Scene, eye: Eye): Fault[] {
  return looks.flatMap((look) => look(scene, eye));
}
