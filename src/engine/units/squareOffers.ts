import type { Job, SizedPiece } from "../cloth/index.ts";
import type { Finished, Size } from "../length/index.ts";
import { cellOf, groupedBy, pairsOf, rowsFor } from "./heap.ts";
import { asSet, joined, laid } from "./joined.ts";
import { offerOf } from "./offer.ts";
import { byTurns } from "./order.ts";
import type { Made, Offer } from "./types.ts";

const longestRow = 8;

/** Squares of one finished size: in fours, chequered where there are two fabrics, and in rows of two to eight. */
export function squareOffers(job: Job): readonly Offer[] {
  const squares = rowsFor(job).filter(({ kind }) => kind === "square");
  const like = groupedBy(squares, (row) => keyOf(row, job));
  return like.flatMap((rows) => [
    ...pairsOf(rows).flatMap((pair) => fourPatch(pair, job)),
    ...inRows(rows, job),
  ]);
}

function keyOf(row: SizedPiece, job: Job): string | null {
  const cell = cellOf(row, job);
  return cell !== null && cell.width === cell.height ? String(cell.width) : null;
}

function fourPatch([one, other]: readonly [SizedPiece, SizedPiece], job: Job): readonly Offer[] {
  const cell = cellOf(one, job);
  if (cell === null) return [];
  const row = (first: SizedPiece, second: SizedPiece) =>
    joined("beside", [laid(first, cell), laid(second, cell)], job);
  const made = asSet("four-patch", joined("below", [row(one, other), row(other, one)], job));
  return offered(made, "four-patch", { rows: [one, other], job });
}

function inRows(rows: readonly SizedPiece[], job: Job): readonly Offer[] {
  const inTurn = byTurns(rows).slice(0, longestRow);
  return inTurn.slice(1).flatMap((_, index) => rowOf(inTurn.slice(0, index + 2), job));
}

/** One across and one down. */
function rowOf(squares: readonly SizedPiece[], job: Job): readonly Offer[] {
  const parts = squares.flatMap((square) => laidSquare(square, cellOf(square, job)));
  return (["beside", "below"] as const).flatMap((direction) =>
    offered(asSet("squares", joined(direction, parts, job)), "squares", { rows: [...new Set(squares)], job }),
  );
}

function laidSquare(square: SizedPiece, cell: Size<Finished> | null): readonly Made[] {
  return cell === null ? [] : [laid(square, cell)];
}

type From = { readonly rows: readonly SizedPiece[]; readonly job: Job };

function offered(made: Made, pattern: string, { rows, job }: From): readonly Offer[] {
  const insideOnly = rows.some(({ grain }) => grain !== "straight");
  const offer = offerOf({ pattern, made, insideOnly }, rows, job);
  return offer.atMost > 0 ? [offer] : [];
}
