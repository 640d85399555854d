import type { DisplayUnit } from "../../../engine/length/index.ts";
import { type Column, columns, faultsOf, type Leftover } from "../../../files/index.ts";
import type { LeftoversTexts } from "../../../words/index.ts";
import type { Waiting } from "./heap.ts";

/** A cell that keeps its row out, and why. */
export type CellToMend = { readonly column: Column; readonly text: string; readonly why: string };

/** Whether a row is known by its line alone, none of which could be read. */
export function isLineOnly({ cells }: Leftover): boolean {
  return Object.keys(cells).length === 0;
}

/** The cells to be mended, in the order of the table. */
export function cellsToMend(
  { leftover, problems }: Waiting,
  unit: DisplayUnit,
  texts: LeftoversTexts,
): readonly CellToMend[] {
  const unread = faultsOf(leftover, unit).flatMap((fault) =>
    "field" in fault ? [{ column: fault.field, why: texts.fault(fault) }] : [],
  );
  const refused = problems.flatMap((problem) =>
    problem.row === null ? [] : [{ column: problem.field, why: texts.rowProblem(problem) }],
  );
  const all = [...unread, ...refused.filter(({ column }) => !unread.some((one) => one.column === column))];
  return all
    .map(({ column, why }) => ({ column, why, text: leftover.cells[column]?.text ?? "" }))
    .sort((one, other) => columns.indexOf(one.column) - columns.indexOf(other.column));
}

/** What else stands in the row, so that she knows it again. A colour is for the eye, and says nothing here. */
export function restOfRow({ cells }: Leftover, mended: readonly CellToMend[]): string {
  return columns
    .filter((column) => column !== "colour" && !mended.some((cell) => cell.column === column))
    .flatMap((column) => cells[column]?.text ?? [])
    .join(" · ");
}
