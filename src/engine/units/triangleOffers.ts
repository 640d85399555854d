import type { Grain, Job, SizedPiece } from "../cloth/index.ts";
import { type Finished, roundDownTo, times } from "../length/index.ts";
import { fourPatterns, turnsIn } from "./fourHalfSquares.ts";
import { halfSquareOfTriangles } from "./halfSquare.ts";
import { groupedBy, pairsOf, rowsFor, smallestAlone } from "./heap.ts";
import { offerOf } from "./offer.ts";
import { hourglassOfTriangles } from "./quarterSquare.ts";
import type { MadeUnit, Offer, Taken } from "./types.ts";

/**
 * Loose triangles, in like pairs. With the short sides on grain: half-square triangles, and four of those about a
 * centre; with the long side on grain: hourglasses. Of unknown grain all of these, inside only. What has two colours to
 * show is offered in two fabrics alone; a one-way print would lie upside down.
 */
export function triangleOffers(job: Job): readonly Offer[] {
  const triangles = rowsFor(job).filter(
    ({ kind, width, height, keep, direction }) =>
      kind === "triangle" && width === height && keep !== "whole" && direction !== "one-way",
  );
  const like = groupedBy(triangles, ({ width, grain }) => `${width} ${grain}`);
  return like.flatMap(pairsOf).flatMap((pair) => offersOfPair(pair, job));
}

type Pair = readonly [SizedPiece, SizedPiece];

function offersOfPair(pair: Pair, job: Job): readonly Offer[] {
  return [...(outsideOnGrain(pair, "legs") ? halfSquares(pair, job) : []), ...hourglasses(pair, job)];
}

/** The sides that come to lie outside are on grain, or nobody knows. */
function outsideOnGrain([{ grain }]: Pair, outside: Grain): boolean {
  return grain === outside || grain === "unknown";
}

function halfSquares(pair: Pair, job: Job): readonly Offer[] {
  const side = roundDownTo(halfSquareOfTriangles(pair[0].width, job.seam), job.step);
  const one: MadeUnit = { ...unitOf("half-square-triangle", pair, 1), width: side, height: side };
  return [...offered(one, pair, job), ...(hasTwoFabrics(pair) ? fours(side, pair, job) : [])];
}

function fours(side: Finished, pair: Pair, job: Job): readonly Offer[] {
  return fourPatterns.flatMap((pattern) => {
    const whole = times(side, 2);
    const made = { ...unitOf(pattern, pair, 4), rotations: turnsIn[pattern], width: whole, height: whole };
    return offered(made, pair, job);
  });
}

function hourglasses(pair: Pair, job: Job): readonly Offer[] {
  const side = roundDownTo(hourglassOfTriangles(pair[0].width, job.seam), job.step);
  if (!hasTwoFabrics(pair) || !outsideOnGrain(pair, "long-side")) return [];
  return offered({ ...unitOf("hourglass", pair, 2), width: side, height: side }, pair, job);
}

function unitOf(pattern: string, pair: Pair, each: number) {
  return { kind: "unit", pattern, pieces: takenOf(pair, each), cloth: [] } as const;
}

function takenOf([one, other]: Pair, each: number): readonly Taken[] {
  if (one.id === other.id) return [{ piece: one.id, count: 2 * each }];
  return [
    { piece: one.id, count: each },
    { piece: other.id, count: each },
  ];
}

function hasTwoFabrics([one, other]: Pair): boolean {
  return one.fabric !== other.fabric;
}

/** Every triangle but the first is sewn on to something. */
function offered(made: MadeUnit, pair: Pair, job: Job): readonly Offer[] {
  if (made.width < smallestAlone(job)) return [];
  const triangles = made.pieces.reduce((sum, { count }) => sum + count, 0);
  const insideOnly = pair[0].grain === "unknown";
  const offer = offerOf({ pattern: made.pattern, made, insideOnly, joins: triangles - 1 }, pair, job);
  return offer.atMost > 0 ? [offer] : [];
}
