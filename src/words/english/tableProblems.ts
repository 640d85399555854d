import type { Column, FileProblem, OtherFile, RowFault, TableProblem } from "../../files/index.ts";
import { quoted, type Voice } from "../voice.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { kindName } from "./names.ts";

export function tableProblem(problem: TableProblem, voice: Voice): string {
  if (!("row" in problem)) return fileProblem(problem, voice);
  const field = "field" in problem ? `, ${columnName(problem.field, voice)}` : "";
  return `Row ${problem.row}${field}: ${rowProblem(problem, voice)}`;
}

/** A column by its heading, in her spelling. */
export function columnName(column: Column, { trade }: Voice): string {
  return column === "colour" ? trade.colour : column;
}

function fileProblem(problem: FileProblem, voice: Voice): string {
  switch (problem.kind) {
    case "empty-file":
      return "This table is empty. Write the headings kind, width and height in its first row, then one leftover in each row.";
    case "not-a-table":
      return `${whatItIs(problem.looksLike)} ${saveAsTable}`;
    case "file-too-large":
      return `This file is ${megabytes(problem.bytes, voice)}, more than the ${megabytes(problem.most, voice)} a table of leftovers may have. Save only the leftovers as a table.`;
    case "too-many-rows":
      return `This table has more than ${voice.number(problem.most)} rows. Split it, and plan with the part you mean to use.`;
    case "no-kind-column":
      return `No column is headed kind. ${headingsAre(problem.headings, voice)} Write the headings kind, width and height in the first row.`;
    case "no-size-columns":
      return `No column gives a size. ${headingsAre(problem.headings, voice)} Add columns headed width and height, or area for crumbs.`;
    case "column-twice":
      return `Two columns are headed ${columnName(problem.field, voice)}. Keep one of them, or give the other a heading of its own.`;
    case "no-rows":
      return "This table has headings and nothing below them. Write one leftover in each row.";
  }
}

const saveAsTable = "Open it in the program it came from, and save the leftovers as a table (CSV).";

function whatItIs(looksLike: OtherFile): string {
  switch (looksLike) {
    case "spreadsheet":
      return "This is a spreadsheet's own file, not a table yet.";
    case "zip":
      return "This is a zip file, not a table.";
    case "picture":
      return "This is a picture, not a table.";
    case "pdf":
      return "This is a PDF, not a table.";
    case "something-else":
      return "This does not read as a table.";
  }
}

function megabytes(bytes: number, voice: Voice): string {
  return `${voice.number(Math.ceil(bytes / 100_000) / 10)} MB`;
}

function headingsAre(headings: readonly string[], voice: Voice): string {
  if (headings.length === 0) return "Its first row has no headings.";
  const shown = headings.slice(0, 6).map(quoted);
  const more = headings.length > shown.length ? ["others"] : [];
  return `Its first row says ${voice.list([...shown, ...more])}.`;
}

export function rowProblem(problem: RowFault, voice: Voice): string {
  switch (problem.kind) {
    case "too-many-cells":
      return `this row has ${voice.count(problem.cells, "cell", "cells")} under ${voice.count(problem.headings, "heading", "headings")}. A comma inside a number or a name may have split it: put that cell in quotation marks.`;
    case "stray-quote":
      return `a quotation mark is left open or stands inside a cell, in ${quoted(problem.text)}. Close it, or take it away.`;
    case "no-kind":
      return "nothing is written here. Write what it is, such as strip, square, block or length.";
    case "column-missing":
      return `the table has no such column, and ${needers(problem, voice)}. Add the column.`;
    case "not-a-size":
      return lengthProblem(
        problem.problem,
        problem.field === "area" || problem.field === "weight" ? problem.field : "size",
      );
    case "not-a-count":
      return `${quoted(problem.text)} does not read as a number of pieces. Write it in digits, such as 12.`;
    case "unknown-word":
      return `${quoted(problem.text)} is not a word for this column. Write ${voice.either(problem.known)}.`;
    case "unreadable-letter":
      return `${quoted(problem.text)} has a letter that was lost when the file was saved. Type it again, and save the table as UTF-8.`;
    case "too-long":
      return `this cell has ${voice.number(problem.length)} letters, and ${voice.number(problem.most)} is the most. Shorten it.`;
  }
}

function needers(problem: Extract<RowFault, { readonly kind: "column-missing" }>, voice: Voice): string {
  const kind = kindName(problem.pieceKind, 2, voice);
  if (problem.rows === 1) return `${kind} need it`;
  return `${kind} need it (${voice.count(problem.rows, "row", "rows")} in all)`;
}
