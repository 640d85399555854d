import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  type Cut,
  type Finished,
  inches,
  larger,
  length,
  roundDownTo,
  smaller,
  subtract,
  toFinished,
} from "../length/index.ts";
import { isLongJoin, leftLongIn } from "../work/index.ts";
import { rowsFor, singles, smallestInSet } from "./heap.ts";
import { asSet, joined, laid } from "./joined.ts";
import { offerOf } from "./offer.ts";
import { spread } from "./order.ts";
import type { MadeJoin, MadePiece, Offer } from "./types.ts";

const mostStrips = 6;

/**
 * Strips of like length sewn side by side, two to six: the longest is at most 1 in or a tenth longer than the shortest,
 * to which all are cut. Where that makes long joins of their seams and no strip beside one has anything to spare, all are
 * left longer than the set will be, and it is trimmed once it is sewn. Standing and lying; a one-way print stays upright.
 */
export function stripOffers(job: Job): readonly Offer[] {
  const rows = rowsFor(job).filter((row) => row.kind === "strip" && row.keep !== "whole" && isWide(row, job));
  const strips = singles(rows).toSorted((one, other) => longOf(other) - longOf(one));
  const offers = new Map<string, Offer>();
  for (const offer of likeSets(strips).flatMap((set) => setOffers(set, job))) {
    const key = `${offer.width} ${offer.height} ${JSON.stringify(offer.pieces)}`;
    if (!offers.has(key)) offers.set(key, offer);
  }
  return [...offers.values()];
}

function isWide(strip: SizedPiece, job: Job): boolean {
  return deepOf(strip, job) >= smallestInSet;
}

function longOf({ width, height }: SizedPiece): Cut {
  return larger(width, height);
}

/** What it finishes at across, on the ruler's step. */
function deepOf({ width, height }: SizedPiece, { seam, step }: Job): Finished {
  return roundDownTo(toFinished(smaller(width, height), seam), step);
}

/** From each strip on, two or more of those that are nearly as long. */
function likeSets(strips: readonly SizedPiece[]): readonly (readonly SizedPiece[])[] {
  return strips.flatMap((longest, from) => {
    const room = larger(inches(1), length(Math.floor(longOf(longest) / 10)));
    const next = strips.slice(from, from + mostStrips);
    const like = next.filter((strip) => longOf(longest) - longOf(strip) <= room);
    return like.slice(1).map((_, index) => like.slice(0, index + 2));
  });
}

function setOffers(set: readonly SizedPiece[], job: Job): readonly Offer[] {
  const strips = spread(set);
  const long = longIn(strips, job);
  const rows = [...new Set(set)];
  const insideOnly = rows.some(({ grain }) => grain !== "straight");
  return [true, false]
    .filter((standing) => strips.every((strip) => mayLie(strip, standing)))
    .map((standing) => setOf(strips, long, { standing, job }))
    .map((made) => offerOf({ pattern: "strip-set", made, insideOnly }, rows, job))
    .filter(({ atMost }) => atMost > 0);
}

/** What a set of strips in this order finishes at along them. */
function longIn(strips: readonly SizedPiece[], { unit, seam, step }: Job): Finished {
  const shortest = strips.map(longOf).reduce(smaller);
  const long = roundDownTo(toFinished(shortest, seam), step);
  const { usual } = leftLongIn[unit];
  const gives = (strip: SizedPiece) => toFinished(longOf(strip), seam) - long >= usual;
  const isGiven = strips.slice(1).every((strip, at) => gives(strip) || gives(strips[at] ?? strip));
  return !isLongJoin(long, 0) || isGiven
    ? long
    : roundDownTo(subtract(toFinished(shortest, seam), usual), step);
}

function mayLie(strip: SizedPiece, standing: boolean): boolean {
  return strip.direction !== "one-way" || isUpright(strip) === standing;
}

function isUpright({ width, height }: SizedPiece): boolean {
  return height > width;
}

type Way = { readonly standing: boolean; readonly job: Job };

function setOf(strips: readonly SizedPiece[], long: Finished, { standing, job }: Way): MadeJoin {
  const parts = strips.map((strip): MadePiece => {
    const deep = deepOf(strip, job);
    const size = standing ? { width: deep, height: long } : { width: long, height: deep };
    return laid(strip, size, isUpright(strip) !== standing);
  });
  return asSet("strip-set", joined(standing ? "beside" : "below", parts, job));
}
