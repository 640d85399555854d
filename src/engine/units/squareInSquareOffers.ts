import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  type Finished,
  finished,
  inches,
  length,
  roundDownTo,
  roundUpTo,
  smaller,
  toFinished,
} from "../length/index.ts";
import { groupedBy, pairsOf, rowsFor, smallestAlone } from "./heap.ts";
import { offerOf } from "./offer.ts";
import { blockFromCorners, squareInSquareFinished } from "./squareInSquare.ts";
import type { MadeUnit, Offer, Taken } from "./types.ts";

/** A centre may float so far in its block, corner to side, and still look meant. */
const mostFloat = inches(1);

/**
 * A square or a square block on its point between four loose triangles of another fabric, or two and two. The triangles'
 * short sides lie outside, so they are on grain, or nobody knows and it stays inside. The block's points are kept: it
 * finishes at the next step of the ruler at which they are, and no more is trimmed off the triangles than may be.
 */
export function squareInSquareOffers(job: Job): readonly Offer[] {
  const rows = rowsFor(job).filter(
    ({ width, height, direction }) => width === height && direction !== "one-way",
  );
  const centres = rows.filter(({ kind }) => kind === "square" || kind === "block");
  const triangles = rows.filter(
    ({ kind, keep, grain }) => kind === "triangle" && keep !== "whole" && grain !== "long-side",
  );
  const like = groupedBy(triangles, ({ width, grain }) => `${width} ${grain}`).flatMap(pairsOf);
  return centres.flatMap((centre) => like.flatMap((pair) => offersOf(centre, pair, job)));
}

type Pair = readonly [SizedPiece, SizedPiece];

function offersOf(centre: SizedPiece, pair: Pair, job: Job): readonly Offer[] {
  const side = sideOf(centre, pair[0], job);
  if (side === null || pair.some(({ fabric }) => fabric === centre.fabric)) return [];
  const made: MadeUnit = {
    ...{ kind: "unit", pattern: "square-in-square", cloth: [], width: side, height: side },
    pieces: [{ piece: centre.id, count: 1 }, ...cornersOf(pair)],
  };
  const insideOnly = pair[0].grain === "unknown";
  const offer = offerOf({ pattern: made.pattern, made, insideOnly, joins: 4 }, [centre, ...pair], job);
  return offer.atMost > 0 ? [offer] : [];
}

function cornersOf([one, other]: Pair): readonly Taken[] {
  if (one.id === other.id) return [{ piece: one.id, count: 4 }];
  return [
    { piece: one.id, count: 2 },
    { piece: other.id, count: 2 },
  ];
}

/** null: the triangles are too small, or so large that the centre would swim. */
function sideOf(centre: SizedPiece, { width: leg }: SizedPiece, job: Job): Finished | null {
  const size = toFinished(centre.width, job.seam);
  // A unit up: rounded down, its points would be cut by less than one.
  const close = length(squareInSquareFinished(size) + 1);
  const most = blockFromCorners(size, leg, job.seam);
  const trimmed = smaller(inches(1, 2), length(Math.floor(leg / 10)));
  const least = length(Math.max(close, most - trimmed));
  const side = roundUpTo(least, job.step);
  if (side > roundDownTo(most, job.step) || side - close > mostFloat || size < smallestAlone(job))
    return null;
  return finished(side);
}
