import type { Crumbs, Job, Piece, SizedPiece } from "../cloth/index.ts";
import {
  type Finished,
  inches,
  type Length,
  larger,
  roundDownTo,
  type Size,
  subtract,
  toFinished,
} from "../length/index.ts";
import type { Taken } from "./types.ts";

/** In a set of like pieces no cell is smaller (design: 1 in). */
export const smallestInSet = inches(1);

/** What stands by itself shows so much at least: 2 in, and what a piece at the floor shows (design: floor − 1/2 in). */
export function smallestAlone({ floor }: Pick<Job, "floor">): Length {
  return larger(inches(2), subtract(floor, inches(1, 2)));
}

/** What may go into a unit: nothing kept back or given away, nor what she would rather see cut off. */
export function rowsFor(job: Pick<Job, "pieces">): readonly SizedPiece[] {
  return job.pieces.filter((piece): piece is SizedPiece => piece.kind !== "crumbs" && isWelcome(piece));
}

export function crumbsFor(job: Pick<Job, "pieces">): readonly Crumbs[] {
  return job.pieces.filter((piece): piece is Crumbs => piece.kind === "crumbs" && isWelcome(piece));
}

function isWelcome({ use }: Piece): boolean {
  return use !== "keep-back" && use !== "give-away" && use !== "edge";
}

/** Whether nothing may be trimmed off it: a sewn triangle is never cut up either. */
export function staysWhole({ kind, keep }: SizedPiece): boolean {
  return keep === "whole" || (kind === "half-square-triangle" && keep === "cut");
}

/** What a piece finishes at on the ruler's step; null: too small, or whole and of a size the ruler does not show. */
export function cellOf(piece: SizedPiece, { seam, step }: Pick<Job, "seam" | "step">): Size<Finished> | null {
  const exact = { width: toFinished(piece.width, seam), height: toFinished(piece.height, seam) };
  const cell = { width: roundDownTo(exact.width, step), height: roundDownTo(exact.height, step) };
  const isExact = exact.width === cell.width && exact.height === cell.height;
  if (staysWhole(piece) && !isExact) return null;
  return Math.min(cell.width, cell.height) >= smallestInSet ? cell : null;
}

/** Every single piece of these rows. */
export function singles(rows: readonly SizedPiece[]): readonly SizedPiece[] {
  return rows.flatMap((row) => Array.from({ length: row.count }, () => row));
}

/** So many of each row, in the order in which they are first taken. */
export function takenFrom(pieces: readonly Pick<SizedPiece, "id">[]): readonly Taken[] {
  const counts = new Map<string, number>();
  for (const { id } of pieces) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([piece, count]) => ({ piece, count }));
}

/** Rows by what `keyOf` says of them, in the heap's order; those it says nothing of are left out. */
export function groupedBy<Row>(rows: readonly Row[], keyOf: (row: Row) => string | null): readonly Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()];
}

/** Every two of them, each with itself too. */
export function pairsOf<Row>(rows: readonly Row[]): readonly (readonly [Row, Row])[] {
  return rows.flatMap((one, index) => rows.slice(index).map((other) => [one, other] as const));
}
