import Papa from "papaparse";
import { err, ok, type Result } from "../engine/length/index.ts";
import { columnOf } from "./leftovers-columns.ts";
import type { FileProblem } from "./leftovers-problems.ts";

export const mostRows = 20_000;

export const delimiters = [",", ";", "\t"] as const;
export type Delimiter = (typeof delimiters)[number];

/** One row that is not blank. `row`: as a spreadsheet numbers it. `cells` is null where a quotation mark is astray. */
export type TableRow = {
  readonly row: number;
  readonly cells: readonly string[] | null;
  /** Its first line as it stands in the file. */
  readonly text: string;
};

export type TableRows = {
  readonly delimiter: Delimiter;
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
};

/** Splits a table's text into headings and rows. The text has line feeds only. */
export function rowsOf(text: string): Result<TableRows, FileProblem> {
  const lines = text.split("\n");
  const named = /^"?sep=([,;\t])"?$/i.exec(lines[0] ?? "");
  // A spreadsheet hides its own line that names the delimiter, and numbers from the next; it shows empty rows.
  const shown = named === null ? lines : lines.slice(1);
  const first = shown.findIndex((line) => !isBlank(line));
  const heading = shown[first] ?? "";
  const delimiter = delimiters.find((mark) => mark === named?.[1]) ?? likeliestDelimiter(heading);
  const head = readRecord(shown, Math.max(first, 0), { delimiter, headings: null });
  const headings = (head.cells ?? heading.split(delimiter)).map((cell) => cell.trim());
  const below = shown.slice(first + head.lines);
  const rows = readRows(below, first + 2, { delimiter, headings });
  return rows === null ? err({ kind: "too-many-rows", most: mostRows }) : ok({ delimiter, headings, rows });
}

function isBlank(line: string): boolean {
  return /^[\s,;"]*$/.test(line);
}

/** The delimiter that makes the most of our headings out of the first row; a comma where none does. */
function likeliestDelimiter(heading: string): Delimiter {
  const found = delimiters.map((delimiter) => {
    const cells = cellsOf(heading, delimiter) ?? [];
    return { delimiter, ours: cells.filter((cell) => columnOf(cell) !== null).length, all: cells.length };
  });
  const [best] = found.sort((a, b) => b.ours - a.ours || b.all - a.all);
  return best?.delimiter ?? ",";
}

type Shape = { readonly delimiter: Delimiter; readonly headings: readonly string[] | null };

/** The rows that are not blank; null: more than `mostRows`. */
function readRows(lines: readonly string[], firstRow: number, shape: Shape): TableRow[] | null {
  const rows: TableRow[] = [];
  let row = firstRow;
  for (let at = 0; at < lines.length; row++) {
    const record = readRecord(lines, at, shape);
    const text = lines[at] ?? "";
    at += record.lines;
    if (isBlank(text) && record.lines === 1) continue;
    rows.push({ row, cells: record.cells, text });
    if (rows.length > mostRows) return null;
  }
  return rows;
}

// A note with line breaks is a few lines long. Beyond that the quotation mark was never closed.
const mostLinesOfARow = 20;

/**
 * The record that begins at a line. Where its quotation mark does not close in that line, the record may go on over
 * the next lines, unless it would swallow rows: a mark astray costs its own row and no other.
 */
function readRecord(lines: readonly string[], at: number, shape: Shape) {
  const first = lines[at] ?? "";
  const own = cellsOf(first, shape.delimiter);
  if (own !== null) return { cells: own, lines: 1 };
  for (let count = 2; count <= mostLinesOfARow && at + count <= lines.length; count++) {
    const record = lines.slice(at, at + count);
    const cells = cellsOf(record.join("\n"), shape.delimiter);
    if (cells !== null && !swallowsRows(record, cells, shape)) return { cells, lines: count };
  }
  return { cells: null, lines: 1 };
}

/** Whether a record of several lines breaks where only one line makes sense, or a line of it looks like a row. */
function swallowsRows(
  record: readonly string[],
  cells: readonly string[],
  { delimiter, headings }: Shape,
): boolean {
  if (headings === null) return false;
  const breaksOurs = cells.some((cell, index) => {
    const column = columnOf(headings[index] ?? "");
    return cell.includes("\n") && column !== null && column !== "name";
  });
  return breaksOurs || record.slice(1).some((line) => line.split(delimiter).length >= headings.length);
}

/** The cells of one record; null where a quotation mark does not close. */
function cellsOf(record: string, delimiter: Delimiter): readonly string[] | null {
  const { data, errors } = Papa.parse<string[]>(record, { delimiter, newline: "\n", quoteChar: '"' });
  return errors.some(({ type }) => type === "Quotes") ? null : (data[0] ?? []);
}
