import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  add,
  type Finished,
  inches,
  larger,
  roundDownTo,
  type Size,
  smaller,
  times,
  toFinished,
} from "../length/index.ts";
import { cellOf, groupedBy, rowsFor, singles, smallestInSet } from "./heap.ts";
import { asSet, joined, laid } from "./joined.ts";
import { offerOf } from "./offer.ts";
import type { MadeJoin, Offer } from "./types.ts";

const smallBlock = inches(8);

/**
 * One round of strips of one width about a small block or square, as in courthouse steps: two at its sides, then two
 * across. Each log is a strip of its own, the shortest that is long enough.
 */
export function roundOffers(job: Job): readonly Offer[] {
  const rows = rowsFor(job);
  const centres = rows.flatMap((row) => centreOf(row, job));
  const strips = rows.filter(
    ({ kind, keep, direction }) => kind === "strip" && keep !== "whole" && direction !== "one-way",
  );
  const like = groupedBy(strips, (strip) => {
    const deep = deepOf(strip, job);
    return deep >= smallestInSet ? String(deep) : null;
  });
  return centres.flatMap((centre) => like.flatMap((logs) => roundOf(centre, logs, job)));
}

type Centre = { readonly row: SizedPiece; readonly cell: Size<Finished> };

function centreOf(row: SizedPiece, job: Job): readonly Centre[] {
  const cell = row.kind === "block" || row.kind === "square" ? cellOf(row, job) : null;
  if (cell === null || Math.max(cell.width, cell.height) > smallBlock) return [];
  return Math.min(cell.width, cell.height) >= inches(2) ? [{ row, cell }] : [];
}

function deepOf({ width, height }: SizedPiece, { seam, step }: Job): Finished {
  return roundDownTo(toFinished(smaller(width, height), seam), step);
}

function roundOf({ row, cell }: Centre, rows: readonly SizedPiece[], job: Job): readonly Offer[] {
  const [any] = rows;
  if (any === undefined) return [];
  const deep = deepOf(any, job);
  const upright = { width: deep, height: cell.height };
  const lying = { width: add(cell.width, times(deep, 2)), height: deep };
  const logs = fourLogs(rows, [upright.height, lying.width], { row, job });
  if (logs === null) return [];
  const [left, right, top, bottom] = logs;
  const inner = joined("beside", [stood(left, upright), laid(row, cell), stood(right, upright)], job);
  const made = joined("below", [lain(top, lying), inner, lain(bottom, lying)], job);
  return [offered(asSet("rounds", made), [...new Set([row, ...logs])], job)];
}

function offered(made: MadeJoin, rows: readonly SizedPiece[], job: Job): Offer {
  const insideOnly = rows.some(({ grain }) => grain !== "straight");
  return offerOf({ pattern: "rounds", made, insideOnly }, rows, job);
}

type Four = readonly [SizedPiece, SizedPiece, SizedPiece, SizedPiece];
type About = { readonly row: SizedPiece; readonly job: Job };

/** Two of each length, the shorter pair first; other fabrics than the centre's. null: not four are long enough. */
function fourLogs(
  rows: readonly SizedPiece[],
  [short, long]: readonly [Finished, Finished],
  { row, job }: About,
): Four | null {
  const left = singles(rows)
    .filter(({ fabric }) => fabric !== row.fabric)
    .toSorted((one, other) => longOf(one, job) - longOf(other, job));
  const found = [short, short, long, long].flatMap((needed) => {
    const at = left.findIndex((strip) => longOf(strip, job) >= needed);
    return at < 0 ? [] : left.splice(at, 1);
  });
  const [a, b, c, d] = found;
  return a === undefined || b === undefined || c === undefined || d === undefined ? null : [a, b, c, d];
}

function longOf({ width, height }: SizedPiece, { seam }: Job): Finished {
  return toFinished(larger(width, height), seam);
}

function stood(strip: SizedPiece, size: Size<Finished>) {
  return laid(strip, size, strip.width > strip.height);
}

function lain(strip: SizedPiece, size: Size<Finished>) {
  return laid(strip, size, strip.height > strip.width);
}
