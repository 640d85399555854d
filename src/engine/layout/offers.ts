import type { Job, SizedPiece } from "../cloth/index.ts";
import { inches, toCut } from "../length/index.ts";
import { type ChosenUnit, joinsOf } from "../units/index.ts";

/**
 * A unit as the solver takes it: a ready block, as often as it is made, at its own size, never trimmed. To leave it out
 * costs more than to leave out all it is made of, `loose`: her work is in it.
 */
export function madeOfUnit(unit: ChosenUnit, loose: number, job: Job) {
  const [offer] = unit.ways;
  const [width, height] = [offer.width / job.step, offer.height / job.step];
  const area = width * height;
  return {
    unit,
    piece: asBlock(unit, job),
    count: unit.count,
    copy: 0,
    taken: 0,
    roll: false,
    cells: joinsOf(offer) + 1,
    area,
    leftOut: loose + 10 * (inches(1) / job.step) ** 2 + 0.4 * area,
    lying: [
      { turned: false, ...exactly(width, height) },
      ...unit.ways.slice(1).map(() => ({ turned: true, ...exactly(height, width) })),
    ],
  };
}

function exactly(width: number, height: number) {
  return { maxWidth: width, minWidth: width, maxHeight: height, minHeight: height, along: null };
}

/** Once it is sewn it is one more block of hers, of the fabric that shows first in it. */
function asBlock({ ways: [offer], count }: ChosenUnit, job: Job): SizedPiece {
  return {
    id: offer.pattern,
    kind: "block",
    width: toCut(offer.width, job.seam),
    height: toCut(offer.height, job.seam),
    count,
    fabric: offer.fabrics[0] ?? "",
    keep: "whole",
    use: "yes",
    direction: "none",
    grain: offer.insideOnly ? "unknown" : "straight",
    washed: null,
    cloth: "",
    name: "",
  };
}
