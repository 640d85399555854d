import {
  cutArea,
  finishedArea,
  type Job,
  type Kind,
  type Piece,
  type SizedPiece,
  type Time,
} from "../cloth/index.ts";
import { type Area, areaOf, inches } from "../length/index.ts";
import { usableOfCrumbs } from "../units/index.ts";
import { joinLimit } from "../work/index.ts";
import { heapArea } from "./figures.ts";
import { onTheRuler } from "./onTheRuler.ts";
import type { Figures } from "./types.ts";

/** How much of her leftovers a plan shows, and what no plan for this job can be above. */
export type Usable = { readonly used: Area; readonly most: Area; readonly time: Time };

/** `figures`: of a plan for this job. What it uses is `covered` as an area, to the nearest whole unit. */
export function usableOf({ covered }: Figures, job: Job): Usable {
  const whole = Math.min(heapArea(job), areaOfRoom(onTheRuler(job)));
  return { used: areaOf(Math.round(covered * whole)), most: mostUsable(job), time: job.time };
}

/**
 * The most finished area of leftovers that any plan for this job can show, whatever its style. Proof: a piece that is
 * sewn in on all sides shows no more than its finished area, bits and crumbs in a slab no more than what they are
 * reckoned to give, and all lie side by side in the layout; and a join adds one part at most, so that beside slabs,
 * whose inner seams are not counted, there are no more pieces than joins in her time and one.
 */
export function mostUsable(asked: Job): Area {
  const job = onTheRuler(asked);
  const rows = job.pieces.filter(mayBeUsed);
  const inSlabs = rows.reduce((sum, row) => sum + row.count * inSlab(row, job), 0);
  const alone = rows.filter((row) => inSlab(row, job) === 0).filter(isSized);
  const most =
    inSlabs +
    largest(
      alone.filter((row) => hasRoom(row, job)),
      joinLimit(job.time) + 1,
      job,
    );
  return areaOf(Math.min(areaOfRoom(job), most));
}

/** What there is to fill: the back inside its outer seams. */
function roomIn({ back, seam }: Job): readonly [number, number] {
  return [back.width - 2 * seam, back.height - 2 * seam];
}

function areaOfRoom(job: Job): number {
  const [width, height] = roomIn(job);
  return width * height;
}

function mayBeUsed({ kind, use }: Piece): boolean {
  return kind !== "length" && use !== "keep-back" && use !== "give-away";
}

function isSized(piece: Piece): piece is SizedPiece {
  return piece.kind !== "crumbs";
}

// Sewn already, they are never taken apart.
const sewn: readonly Kind[] = ["block", "part-block", "half-square-triangle"];

/** What one shows at most where it may go into a slab; 0: it may not. Bits are what is under the floor, and strings. */
function inSlab(piece: Piece, job: Job): number {
  if (piece.kind === "crumbs") return usableOfCrumbs(piece.area);
  const narrow = piece.kind === "strip" ? Math.max(job.floor, inches(3, 2)) : job.floor;
  const isBit = Math.min(piece.width, piece.height) < narrow && piece.keep !== "whole";
  if (!isBit || sewn.includes(piece.kind)) return 0;
  return Math.max(finishedArea(piece, job.seam), usableOfCrumbs(cutArea(piece)));
}

/** Trimmed as far as it may be, it lies within the layout one way or the other. */
function hasRoom(piece: SizedPiece, job: Job): boolean {
  if (piece.kind === "triangle") return true;
  const room = roomIn(job);
  const least = leastSides(piece).map((side) => side - 2 * job.seam);
  const fits = (sides: readonly number[]) => sides.every((side, at) => side <= (room[at] ?? 0));
  return fits(least) || (piece.direction !== "one-way" && fits(least.toReversed()));
}

// Half an inch is the most that is trimmed off a side; off a strip's length, or what is cut up, any.
function leastSides({ kind, keep, width, height }: SizedPiece): number[] {
  const trimmed = [width, height].map((side) => (keep === "whole" ? side : side - inches(1, 2)));
  const free = keep === "cut" || (kind === "strip" && keep === "trim");
  if (!free) return trimmed;
  return trimmed.map((side, at) => ((at === 0 ? width >= height : height >= width) ? 0 : side));
}

/** Of the largest ones, as many as that. */
function largest(rows: readonly SizedPiece[], count: number, { seam }: Job): number {
  let [left, total] = [count, 0];
  const each = rows.map((row) => ({ area: finishedArea(row, seam), count: row.count }));
  for (const row of each.sort((one, other) => other.area - one.area)) {
    const some = Math.min(row.count, left);
    total += some * row.area;
    left -= some;
  }
  return total;
}
