import type { Job, SizedPiece } from "../cloth/index.ts";
import { fourFinished, fourPatterns, turnsIn } from "./fourHalfSquares.ts";
import { cellOf, groupedBy, pairsOf, rowsFor, smallestAlone } from "./heap.ts";
import { offerOf } from "./offer.ts";
import type { MadeUnit, Offer, Taken } from "./types.ts";

/**
 * Half-square triangles of one size in fours about a centre: four of one row, or two and two. They are laid as they
 * were sewn, square about their diagonals.
 */
export function sewnTriangleOffers(job: Job): readonly Offer[] {
  const sewn = rowsFor(job).filter(
    ({ kind, width, height, direction }) =>
      kind === "half-square-triangle" && width === height && direction !== "one-way",
  );
  const like = groupedBy(sewn, ({ width, keep }) => `${width} ${keep}`);
  return like.flatMap(pairsOf).flatMap((pair) => offersOfPair(pair, job));
}

function offersOfPair([one, other]: readonly [SizedPiece, SizedPiece], job: Job): readonly Offer[] {
  const cell = cellOf(one, job);
  if (cell === null) return [];
  const side = fourFinished(cell.width);
  if (side < smallestAlone(job)) return [];
  const insideOnly = [one, other].some(({ grain }) => grain !== "straight");
  return fourPatterns.flatMap((pattern) => {
    const made: MadeUnit = {
      ...{ kind: "unit", pattern, rotations: turnsIn[pattern], pieces: takenOf(one, other), cloth: [] },
      ...{ width: side, height: side },
    };
    const offer = offerOf({ pattern, made, insideOnly, joins: 3 }, [one, other], job);
    return offer.atMost > 0 ? [offer] : [];
  });
}

function takenOf(one: SizedPiece, other: SizedPiece): readonly Taken[] {
  if (one.id === other.id) return [{ piece: one.id, count: 4 }];
  return [
    { piece: one.id, count: 2 },
    { piece: other.id, count: 2 },
  ];
}
