import type { DraftPiece } from "../engine/cloth/index.ts";
import {
  type Area,
  type DisplayUnit,
  err,
  type Length,
  type LengthProblem,
  ok,
  parseArea,
  parseLength,
  parseWeight,
  type Result,
  type WritingHabit,
} from "../engine/length/index.ts";
import {
  type Column,
  directionWords,
  grainWords,
  keepWords,
  kindWords,
  useWords,
  type WordColumn,
  type WordList,
  washedWords,
  wordOf,
} from "./leftovers-columns.ts";
import type { RowFault } from "./leftovers-problems.ts";
import type { Delimiter } from "./leftovers-rows.ts";
import { isStrange } from "./leftovers-text.ts";

/** What a cell says of its piece. */
export type Fields = Partial<Omit<DraftPiece, "row">>;
type Read = Result<Fields, RowFault>;

/** How the numbers of a table are written. */
export type Writing = { readonly unit: DisplayUnit; readonly delimiter: Delimiter };

// Long enough for any name or note; beyond it something else was pasted into the cell.
const mostLetters = 500;

/** Reads one cell that is not blank. */
export function readCell(column: Column, text: string, writing: Writing): Read {
  if (text.length > mostLetters) {
    return err({ kind: "too-long", field: column, length: text.length, most: mostLetters });
  }
  if ([...text].some(isStrange)) return err({ kind: "unreadable-letter", field: column, text });
  return readers[column](text, writing);
}

const readers: { readonly [C in Column]: (text: string, writing: Writing) => Read } = {
  kind: (text) => word("kind", text, kindWords, (kind) => ({ kind })),
  width: (text, writing) => size("width", readLength(text, writing), (width) => ({ width })),
  height: (text, writing) => size("height", readLength(text, writing), (height) => ({ height })),
  count: readCount,
  fabric: (fabric) => ok({ fabric }),
  colour: (colour) => ok({ colour }),
  name: (name) => ok({ name }),
  keep: (text) => word("keep", text, keepWords, (keep) => ({ keep })),
  use: (text) => word("use", text, useWords, (use) => ({ use })),
  direction: (text) => word("direction", text, directionWords, (direction) => ({ direction })),
  grain: (text) => word("grain", text, grainWords, (grain) => ({ grain })),
  washed: (text) => word("washed", text, washedWords, (washed) => ({ washed: washed === "yes" })),
  cloth: (cloth) => ok({ cloth }),
  area: (text, writing) => size("area", readArea(text, writing), (area) => ({ area })),
  weight: (text, writing) => size("weight", readWeight(text, writing), (weight) => ({ weight })),
};

function word<W extends string>(
  field: WordColumn,
  text: string,
  list: WordList<W>,
  fields: (word: W) => Fields,
): Read {
  const found = wordOf(text, list);
  return found === null ? err({ kind: "unknown-word", field, text, known: list.words }) : ok(fields(found));
}

function size<T>(
  field: "width" | "height" | "area" | "weight",
  read: Result<T, LengthProblem>,
  fields: (value: T) => Fields,
): Read {
  return read.ok ? ok(fields(read.value)) : err({ kind: "not-a-size", field, problem: read.error });
}

function readLength(text: string, writing: Writing): Result<Length, LengthProblem> {
  const date = dateBehindNumber(text);
  if (date === null) return parseLength(text, writing.unit, habitOf(writing));
  const read = parseLength(date, writing.unit);
  return read.ok ? read : err({ ...read.error, text });
}

/** A spreadsheet that has lost a date's format shows it as days since 1899: 46024 was 2026-01-02, and before it 1/2. */
function dateBehindNumber(text: string): string | null {
  const days = /^\d{5}$/.test(text) ? Number(text) : 0;
  const isOfThisCentury = days >= 36_526 && days < 73_051;
  return isOfThisCentury ? new Date(Date.UTC(1899, 11, 30 + days)).toISOString().slice(0, 10) : null;
}

function readArea(text: string, writing: Writing): Result<Area, LengthProblem> {
  return parseArea(text, writing.unit, habitOf(writing));
}

/** Grams. A table has one unit throughout, so its bare weights are ounces beside inches, grams beside centimetres. */
function readWeight(text: string, writing: Writing): Result<number, LengthProblem> {
  const read = parseWeight(text, habitOf(writing));
  if (read.ok || read.error.kind !== "no-unit") return read;
  return parseWeight(`${text} ${writing.unit === "in" ? "oz" : "g"}`, habitOf(writing));
}

/** A spreadsheet parts its cells by semicolons where the comma is its decimal sign. A tab tells nothing. */
function habitOf({ delimiter }: Writing): WritingHabit {
  if (delimiter === "\t") return {};
  return { decimal: delimiter === ";" ? "," : "." };
}

// 1,000 may be one or a thousand, so three decimals are not read.
const number = /^[+-]?\d+(?:[.,](?:\d|\d\d|\d{4,}))?(?:e[+-]?\d{1,2})?$/i;

/** Any number. Whether so many pieces make sense is the job's question, not the table's. */
function readCount(text: string): Read {
  const plain = text.replace("\u2212", "-");
  if (!number.test(plain)) return err({ kind: "not-a-count", field: "count", text });
  return ok({ count: Number(plain.replace(",", ".")) });
}
