import type { Eye, Fault } from "./fault.ts";
import { caterpillars, lonelyBits, slivers } from "./faultsOfCells.ts";
import { joinsWithoutGiver, wrongLongSeams } from "./faultsOfLongSeams.ts";
import { heavyCrossings, nearMisses } from "./faultsOfMeetings.ts";
import { brokenDirections, sillyCuts } from "./faultsOfPieces.ts";
import type { Scene } from "./scene.ts";

type Look = (scene: Scene, eye: Eye) => Fault[];

/** What is quickly seen and often wrong comes first. */
const looks: readonly Look[] = [
  wrongLongSeams,
  slivers,
  nearMisses,
  sillyCuts,
  joinsWithoutGiver,
  lonelyBits,
  caterpillars,
  brokenDirections,
  heavyCrossings,
];

/** All but likes that touch, which the heap may force; null: more than `most`. */
export function faultsIn(scene: Scene, eye: Eye, most: number): Fault[] | null {
  const found: Fault[] = [];
  for (const look of looks) {
    for (const fault of look(scene, eye)) found.push(fault);
    if (found.length > most) return null;
  }
  return found;
}
