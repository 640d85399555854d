import type { DraftPiece, Kind } from "../engine/cloth/index.ts";
import { type DisplayUnit, err, type Result } from "../engine/length/index.ts";
import { type Fields, readCell, type Writing } from "./leftovers-cells.ts";
import { type Column, columnOf, columns } from "./leftovers-columns.ts";
import type { FileProblem, RowFault, RowProblem, TableProblem } from "./leftovers-problems.ts";
import { rowsOf, type TableRow, type TableRows } from "./leftovers-rows.ts";
import { textOf } from "./leftovers-text.ts";

/** A column that is not ours: kept, so that it can be written back, and otherwise left alone. */
export type OtherColumn = {
  readonly heading: string;
  /** By row, where there is something in it. */
  readonly cells: ReadonlyMap<number, string>;
};

/**
 * What a leftovers table holds. `pieces` are the rows without a problem, numbered as a spreadsheet shows them (the
 * headings are row 1); every other row that is not blank has at least one of `problems`.
 */
export type LeftoversTable = {
  readonly pieces: readonly DraftPiece[];
  readonly problems: readonly TableProblem[];
  readonly others: readonly OtherColumn[];
};

/**
 * Reads a leftovers table. Bare numbers are in `unit`. Never throws: what is no table gives one problem of the file,
 * and a bad row never keeps out a good one. Whether a count or a missing size can be worked with is asked by
 * `checkDraft`.
 */
export function readLeftovers(bytes: Uint8Array, unit: DisplayUnit): LeftoversTable {
  const table = tableOf(bytes);
  if (!table.ok) return { pieces: [], problems: [table.error], others: [] };
  const { headings, rows, delimiter } = table.value;
  const places = placesOf(headings);
  const mostCells = Math.max(headings.length, usualCells(rows));
  const read = rows.map((row) => readRow(row, { places, headings, mostCells, unit, delimiter }));
  return {
    pieces: read.flatMap(({ piece }) => (piece === null ? [] : [piece])),
    problems: mergeMissingColumns(read.flatMap(({ problems }) => problems)),
    others: otherColumns(headings, rows),
  };
}

function tableOf(bytes: Uint8Array): Result<TableRows, FileProblem> {
  const text = textOf(bytes);
  if (!text.ok) return text;
  const table = rowsOf(text.value);
  if (!table.ok) return table;
  const problem = problemOfHeadings(table.value);
  return problem === null ? table : err(problem);
}

function problemOfHeadings({ headings: all, rows }: TableRows): FileProblem | null {
  const ours = all.map(columnOf);
  const headings = all.filter((heading) => heading !== "");
  if (!ours.includes("kind")) return { kind: "no-kind-column", headings };
  const sizes: readonly Column[] = ["width", "height", "area", "weight"];
  if (!sizes.some((column) => ours.includes(column))) return { kind: "no-size-columns", headings };
  const twice = columns.find((column) => ours.indexOf(column) !== ours.lastIndexOf(column));
  if (twice !== undefined) return { kind: "column-twice", field: twice, headings };
  return rows.length === 0 ? { kind: "no-rows" } : null;
}

type Places = ReadonlyMap<Column, number>;

function placesOf(headings: readonly string[]): Places {
  const places = new Map<Column, number>();
  for (const [index, heading] of headings.entries()) {
    const column = columnOf(heading);
    if (column !== null) places.set(column, index);
  }
  return places;
}

/**
 * How many cells most rows have. A spreadsheet may end every row with the same empty cells; one row with more cells
 * than the others has a delimiter inside a value, and its values stand under the wrong headings.
 */
function usualCells(rows: readonly TableRow[]): number {
  const times = new Map<number, number>();
  for (const { cells } of rows) {
    if (cells !== null) times.set(cells.length, (times.get(cells.length) ?? 0) + 1);
  }
  const [usual] = [...times].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  return usual?.[0] ?? 0;
}

type Layout = Writing & {
  readonly places: Places;
  readonly headings: readonly string[];
  readonly mostCells: number;
};

type ReadRow = { readonly piece: DraftPiece | null; readonly problems: readonly RowProblem[] };

function readRow({ row, cells, text }: TableRow, layout: Layout): ReadRow {
  if (cells === null) return refused(row, [{ kind: "stray-quote", text }]);
  const beyond = cells.slice(layout.headings.length);
  if (cells.length > layout.mostCells || beyond.some((cell) => cell.trim() !== "")) {
    const headings = layout.headings.length;
    return refused(row, [{ kind: "too-many-cells", cells: cells.length, headings }]);
  }
  const read = readCells(cells, layout);
  const piece = { row, ...completed(read.fields) };
  const faults = [...read.faults, ...missing(read, layout.places)];
  return faults.length === 0 ? { piece, problems: [] } : refused(row, faults);
}

function refused(row: number, faults: readonly RowFault[]): ReadRow {
  return { piece: null, problems: faults.map((fault) => ({ ...fault, row })) };
}

type ReadCells = { readonly fields: Fields; readonly faults: readonly RowFault[] };

function readCells(cells: readonly string[], layout: Layout): ReadCells {
  const read = [...layout.places].flatMap(([column, place]) => {
    const text = (cells[place] ?? "").trim();
    return text === "" ? [] : [readCell(column, text, layout)];
  });
  let fields: Fields = {};
  for (const cell of read) if (cell.ok) fields = { ...fields, ...cell.value };
  return { fields, faults: read.flatMap((cell) => (cell.ok ? [] : [cell.error])) };
}

/** A blank count is one. A square is known by one of its sides. */
function completed(fields: Fields): Fields {
  const { kind, width, height, count = 1 } = fields;
  if (kind !== "square" && kind !== "half-square-triangle") return { ...fields, count };
  const side = width ?? height;
  return side === undefined ? { ...fields, count } : { width: side, height: side, ...fields, count };
}

function missing({ fields, faults }: ReadCells, places: Places): readonly RowFault[] {
  const { kind } = fields;
  if (kind === undefined) {
    const isNamed = faults.some((fault) => "field" in fault && fault.field === "kind");
    return isNamed ? [] : [{ kind: "no-kind", field: "kind" }];
  }
  return missingColumns(kind, fields, places).map((field) => ({
    kind: "column-missing",
    field,
    pieceKind: kind,
    rows: 1,
  }));
}

/** Columns that this kind needs and the table lacks altogether. A blank cell in a column is left to `checkDraft`. */
function missingColumns(kind: Kind, fields: Fields, places: Places) {
  if (kind === "crumbs") return places.has("area") || places.has("weight") ? [] : (["area"] as const);
  const { width, height } = completed({ ...fields, kind });
  return (["width", "height"] as const).filter((side) => {
    return !places.has(side) && (side === "width" ? width : height) === undefined;
  });
}

/** A missing column is one thing to mend, not one per row. */
function mergeMissingColumns(problems: readonly RowProblem[]): readonly RowProblem[] {
  return problems.flatMap((problem, index): readonly RowProblem[] => {
    if (problem.kind !== "column-missing") return [problem];
    const isSame = (other: RowProblem) => other.kind === "column-missing" && other.field === problem.field;
    if (problems.findIndex(isSame) !== index) return [];
    return [{ ...problem, rows: problems.filter(isSame).length }];
  });
}

function otherColumns(headings: readonly string[], rows: readonly TableRow[]): readonly OtherColumn[] {
  return headings.flatMap((heading, index) => {
    if (heading === "" || columnOf(heading) !== null) return [];
    const cells = rows.flatMap(({ row, cells }): [number, string][] => {
      const text = (cells?.[index] ?? "").trim();
      return text === "" ? [] : [[row, text]];
    });
    return [{ heading, cells: new Map(cells) }];
  });
}
