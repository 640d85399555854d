import { inches, type Length } from "../length/index.ts";
import { isJoin, isMade, type Sewn, type SewnJoin } from "./sewn.ts";
import type { Press } from "./types.ts";

/** From here on a seam is long: pressed open it rolls up evenly and makes no ridge. Common practice. */
const longSeam: Length = inches(18);

/** Patterns whose points meet in the middle: six layers or more, so open. */
const meetingInTheMiddle = ["pinwheel", "broken-dishes", "diamond"];
/** Patterns that grow outward: each round is pressed away from the middle. */
const growing = ["rounds", "square-in-square"];

/**
 * How the seams of a join are pressed. Common practice: long seams and those where three or more meet open; sets
 * of like pieces to one side, rows by turns, so that they nest; beside plain cloth towards the plain. By hand to one
 * side, as a running stitch holds better there.
 */
export function pressOfJoin(join: SewnJoin, byHand: boolean): Press {
  const pattern = join.node.pattern ?? join.within?.pattern;
  if (pattern !== undefined && growing.includes(pattern)) return "away-from-centre";
  if (byHand) return "to-one-side";
  if (seamLength(join) >= longSeam || join.parts.every(isCloth)) return "open";
  if (pattern !== undefined) return "to-one-side";
  if (join.parts.some((part) => seamsEndAt(join, part))) return "open";
  return join.parts.some(isCloth) ? "to-the-plain" : "to-one-side";
}

export function pressOfUnit(pattern: string, byHand: boolean): Press {
  if (growing.includes(pattern)) return "away-from-centre";
  return meetingInTheMiddle.includes(pattern) && !byHand ? "open" : "to-one-side";
}

function isCloth({ node }: Sewn): boolean {
  return node.kind === "cloth";
}

function seamLength({ node }: SewnJoin): Length {
  return node.direction === "beside" ? node.height : node.width;
}

/** Seams inside `part` run into the seam that joins it on. */
function seamsEndAt(join: SewnJoin, part: Sewn): boolean {
  if (!isJoin(part)) return isMade(part);
  if (part.node.direction !== join.node.direction) return true;
  return part.parts.some((inner) => seamsEndAt(join, inner));
}
