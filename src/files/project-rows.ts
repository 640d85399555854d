import type { DraftPiece } from "../engine/cloth/index.ts";
import {
  areaToNumber,
  type DisplayUnit,
  type Length,
  type LengthProblem,
  length,
  ok,
  parseLength,
  type Result,
  typedLength,
} from "../engine/length/index.ts";
import { type Fields, readCell, type Writing } from "./leftovers-cells.ts";
import { type Column, columns } from "./leftovers-columns.ts";
import type { RowFault } from "./leftovers-problems.ts";
import type { Cells, Leftover, Measured, NewLeftover } from "./project-types.ts";

export type LeftoverCells = Leftover["cells"];

/** A length as she typed it, also where it can't be read; `null`: she left it blank. */
export function measuredLength(text: string, unit: DisplayUnit): Measured<Length> | null {
  if (text.trim() === "") return null;
  const read = readMeasuredLength(text, unit);
  return { text, unit, value: read.ok ? read.value : null };
}

/** What `measuredLength` reads, or why it can't. */
export function readMeasuredLength(text: string, unit: DisplayUnit): Result<Length, LengthProblem> {
  const read = parseLength(text, unit);
  // No extra and no floor are answers too.
  return !read.ok && read.error.kind === "zero" ? ok(length(0)) : read;
}

/** A length that was chosen, not typed. */
export function lengthAsMeasured(value: Length, unit: DisplayUnit): Measured<Length> {
  return { text: typedLength(value, unit), unit, value };
}

/** Cells with one of them as she typed it; blank takes the cell away. */
export function withTypedCell(
  cells: LeftoverCells,
  column: Column,
  text: string,
  unit: DisplayUnit,
): LeftoverCells {
  const { [column]: _, ...others } = cells;
  return text.trim() === "" ? others : { ...others, ...typedCell(column, text, typing(unit)) };
}

// Typed by hand there is no spreadsheet whose habits would tell 1,500 from 1.5.
function typing(unit: DisplayUnit): Writing {
  return { unit, delimiter: "\t" };
}

/** What stands in one cell of a column. */
export function typedCell(column: Column, text: string, writing: Writing): LeftoverCells {
  const read = readCell(column, text.trim(), writing);
  return cellsFrom(column, text, writing.unit, read.ok ? read.value : {});
}

/** The cell of a column with its text and the value among the fields, if it is there. */
function cellsFrom(column: Column, text: string, unit: DisplayUnit, fields: Fields): LeftoverCells {
  const cells: { readonly [C in Column]: () => Cells[C] } = {
    kind: () => ({ text, value: fields.kind ?? null }),
    width: () => ({ text, unit, value: fields.width ?? null }),
    height: () => ({ text, unit, value: fields.height ?? null }),
    count: () => ({ text, value: fields.count ?? null }),
    fabric: () => ({ text, value: fields.fabric ?? null }),
    colour: () => ({ text, value: fields.colour ?? null }),
    name: () => ({ text, value: fields.name ?? null }),
    keep: () => ({ text, value: fields.keep ?? null }),
    use: () => ({ text, value: fields.use ?? null }),
    direction: () => ({ text, value: fields.direction ?? null }),
    grain: () => ({ text, value: fields.grain ?? null }),
    washed: () => ({ text, value: fields.washed ?? null }),
    cloth: () => ({ text, value: fields.cloth ?? null }),
    area: () => ({ text, unit, value: fields.area ?? null }),
    weight: () => ({ text, unit, value: fields.weight ?? null }),
  };
  return { [column]: cells[column]() };
}

/** A row as Verso would have written it, from a piece that was understood: a quick line, the shelf, a sample. */
export function leftoverOf(piece: Omit<DraftPiece, "row">, unit: DisplayUnit, line = ""): NewLeftover {
  let cells: LeftoverCells = {};
  for (const column of columns) {
    const text = textOfField(column, piece, unit);
    if (text !== null) cells = { ...cells, ...cellsFrom(column, text, unit, piece) };
  }
  return { line, cells, others: {} };
}

function textOfField(column: Column, piece: Omit<DraftPiece, "row">, unit: DisplayUnit): string | null {
  const { width, height, area, weight, washed } = piece;
  const texts: Partial<Record<Column, string | undefined>> = {
    width: width && typedLength(width, unit),
    height: height && typedLength(height, unit),
    area: area && `${areaToNumber(area, unit)} ${unit === "in" ? "sq in" : "cm²"}`,
    weight: weight === undefined ? undefined : `${weight} g`,
    washed: washed === undefined ? undefined : washed ? "yes" : "no",
  };
  if (piece[column] === undefined) return null;
  return texts[column] ?? String(piece[column]);
}

/** Whether a row waits to be mended: a cell that could not be read, or a line of which nothing could be. */
export function isWaiting(leftover: NewLeftover): boolean {
  const cells = Object.values(leftover.cells);
  return cells.length === 0 || cells.some(({ value }) => value === null);
}

/** Why a row waits, cell by cell. */
export function faultsOf(leftover: NewLeftover, unit: DisplayUnit): readonly RowFault[] {
  return columns.flatMap((column) => {
    const cell = leftover.cells[column];
    if (cell === undefined || cell.value !== null) return [];
    const written = "unit" in cell ? cell.unit : unit;
    const read = readCell(column, cell.text.trim(), typing(written));
    return read.ok ? [] : [read.error];
  });
}

/**
 * The piece of a row, or `null` while it waits. `row`: its number, for problems to name it. A square is known by one
 * of its sides.
 */
export function pieceOf(leftover: NewLeftover, row: number): DraftPiece | null {
  if (isWaiting(leftover)) return null;
  const { cells } = leftover;
  let fields: Fields = {};
  for (const column of columns) fields = { ...fields, ...fieldOf(column, cells) };
  return { row, ...withBothSides(fields) };
}

function fieldOf<C extends Column>(column: C, cells: LeftoverCells): Fields {
  const value = cells[column]?.value ?? null;
  return value === null ? {} : { [column]: value };
}

function withBothSides(fields: Fields): Fields {
  const { kind, width, height } = fields;
  if (kind !== "square" && kind !== "half-square-triangle") return fields;
  const side = width ?? height;
  return side === undefined ? fields : { width: side, height: side, ...fields };
}
