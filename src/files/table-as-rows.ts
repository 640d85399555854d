import { type DisplayUnit, err, ok, type Result } from "../engine/length/index.ts";
import { readLeftovers } from "./leftovers.ts";
import type { Writing } from "./leftovers-cells.ts";
import { columnOf } from "./leftovers-columns.ts";
import type { TableProblem } from "./leftovers-problems.ts";
import { rowsOf, type TableRow, type TableRows } from "./leftovers-rows.ts";
import { textOf } from "./leftovers-text.ts";
import { type LeftoverCells, typedCell } from "./project-rows.ts";
import type { NewLeftover } from "./project-types.ts";

export type TableAsRows = {
  /** Every row of the table, with what stands in it; those that have a problem wait to be mended. */
  readonly rows: readonly NewLeftover[];
  /** As `readLeftovers` names them. */
  readonly problems: readonly TableProblem[];
};

/** Reads a table cell by cell, so that nothing she wrote is lost, not even what could not be read. */
export function readTableRows(bytes: Uint8Array, unit: DisplayUnit): TableAsRows {
  const { problems } = readLeftovers(bytes, unit);
  if (problems.some((problem) => !("row" in problem))) return { rows: [], problems };
  const table = tableOf(bytes);
  if (!table.ok) return { rows: [], problems: [table.error] };
  const { headings, rows, delimiter } = table.value;
  const spoilt = new Set(problems.flatMap((problem) => (isOfWholeRow(problem) ? [problem.row] : [])));
  const read = rows.map((row) =>
    spoilt.has(row.row) || row.cells === null
      ? lineOnly(row.text)
      : rowOf(row.cells, headings, { unit, delimiter }),
  );
  return { rows: read, problems };
}

function tableOf(bytes: Uint8Array): Result<TableRows, TableProblem> {
  const text = textOf(bytes);
  if (!text.ok) return err(text.error);
  const rows = rowsOf(text.value);
  return rows.ok ? ok(rows.value) : err(rows.error);
}

type OfWholeRow = Extract<TableProblem, { readonly kind: "too-many-cells" | "stray-quote" }>;

// Its cells may stand under the wrong headings, so none of them can be believed.
function isOfWholeRow(problem: TableProblem): problem is OfWholeRow {
  return problem.kind === "too-many-cells" || problem.kind === "stray-quote";
}

function lineOnly(line: string): NewLeftover {
  return { line, cells: {}, others: {} };
}

function rowOf(
  row: NonNullable<TableRow["cells"]>,
  headings: readonly string[],
  writing: Writing,
): NewLeftover {
  const named = headings.map((heading, index) => [heading, (row[index] ?? "").trim()] as const);
  const filled = named.filter(([heading, text]) => heading !== "" && text !== "");
  let cells: LeftoverCells = {};
  for (const [heading, text] of filled) {
    const column = columnOf(heading);
    if (column !== null) cells = { ...cells, ...typedCell(column, text, writing) };
  }
  const others = filled.filter(([heading]) => columnOf(heading) === null);
  return { line: "", cells, others: Object.fromEntries(others) };
}
