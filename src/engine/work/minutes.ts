import { type Length, toNumber } from "../length/index.ts";

/** From the quick hand to the careful one. */
export type Range = readonly [low: number, high: number];

/** What there is to do on a back, counted. */
export type Work = {
  /** Seams to sew, those inside units too. */
  readonly joins: number;
  readonly seamLength: Length;
  /** Cuts with ruler and blade: a crosscut of a strip, a cut through cloth. */
  readonly cuts: number;
  /** Sides of pieces trimmed to size. */
  readonly trims: number;
  /** Sewn units or slabs squared up on all sides. */
  readonly squareUps: number;
};

/**
 * What each thing takes, in minutes. No trade standard exists. Sewing speed, pressing and cutting come from timed
 * accounts (100 units: 13.5 min of sewing at 42 in a minute, 18.5 min of pressing, 8.5 min of cutting in stacks);
 * a back is sewn from unlike parts, so finding, matching and pinning them weighs most, and it is set so that 300
 * pieces come to 10 to 20 h and a usual pieced back to 1 to 3 h.
 */
const minutes = {
  settingUp: [15, 40],
  handlingAJoin: [1.1, 1.9],
  pressingAJoin: [0.185, 0.5],
  cutting: [0.35, 0.6],
  trimming: [0.35, 0.6],
  squaringUp: [1, 3],
} as const satisfies Record<string, Range>;

/** Inches of seam a minute, the careful hand first. */
const seamSpeed: Range = [25, 60];

/** Whole minutes, as a range: a promise of one number would be a guess. */
export function minutesFor(work: Work): Range {
  const [low, high] = minutesFrom(minutes.settingUp, work);
  return [Math.floor(low), Math.ceil(high)];
}

/** The same for a part of the work, unrounded and without setting up, so that parts may be added. */
export function handsOnMinutes(work: Work): Range {
  return minutesFrom([0, 0], work);
}

function minutesFrom(start: Range, work: Work): Range {
  const [slow, fast] = seamSpeed;
  const sewn = toNumber(work.seamLength, "in");
  const total = (side: 0 | 1) =>
    start[side] +
    work.joins * (minutes.handlingAJoin[side] + minutes.pressingAJoin[side]) +
    work.cuts * minutes.cutting[side] +
    work.trims * minutes.trimming[side] +
    work.squareUps * minutes.squaringUp[side];
  return [total(0) + sewn / fast, total(1) + sewn / slow];
}
