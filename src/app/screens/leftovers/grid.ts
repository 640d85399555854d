import type { KeyboardEvent } from "react";

/**
 * A table to go about in with the arrow keys, as the ARIA grid pattern has it: one stop for the Tab key, which is
 * where she was last. Each cell holds one thing to press, or takes the focus itself. Rows carry their id in
 * `data-row`, the heads of the columns none. (The library's table draws all of its rows anew at every press.)
 */

/** Said outright: laid out as blocks, as on a phone, the parts of a table lose what they are. */
export const as = {
  grid: { role: "grid", "aria-multiselectable": true },
  rows: { role: "rowgroup" },
  row: { role: "row" },
  columnHead: { role: "columnheader", scope: "col" },
  rowHead: { role: "rowheader", scope: "row" },
  cell: { role: "gridcell" },
} as const;

type Place = { readonly row: number; readonly column: number };
type Key = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey">;

/** Where the Tab key comes into the grid: a row by its id (`""`: the heads of the columns) and a cell in it. */
export type Stop = { readonly row: string; readonly column: number };

/** Of the rows below one another, as many as the Page keys pass. */
const page = 10;

export function stopAt(target: Element): Stop | null {
  const column = cellOf(target)?.cellIndex;
  return column === undefined ? null : { row: rowOf(target) ?? "", column };
}

/** The row that something in the grid stands in. */
export function rowOf(target: EventTarget | null): string | null {
  return target instanceof Element ? (target.closest("tr")?.dataset.row ?? null) : null;
}

/** Moves the focus where a key leads; false: nowhere. */
export function moveBy(key: Key, table: HTMLTableElement): boolean {
  const from = placeIn(table, document.activeElement);
  const to = from === null ? null : reached(key, from, table);
  if (to === null) return false;
  const cell = table.rows[to.row]?.cells[to.column];
  (cell?.querySelector<HTMLElement>("button, input") ?? cell)?.focus();
  return true;
}

function cellOf(target: Element | null): HTMLTableCellElement | null {
  return target?.closest<HTMLTableCellElement>("td, th") ?? null;
}

function placeIn(table: HTMLTableElement, target: Element | null): Place | null {
  const cell = table.contains(target) ? cellOf(target) : null;
  const row = cell?.closest("tr") ?? null;
  return cell === null || row === null ? null : { row: row.rowIndex, column: cell.cellIndex };
}

function reached(
  { key, ctrlKey, metaKey, altKey }: Key,
  at: Place,
  { rows }: HTMLTableElement,
): Place | null {
  if (altKey) return null;
  const { row, column } = at;
  const isFar = ctrlKey || metaKey;
  const [lastRow, lastColumn] = [rows.length - 1, (rows[row]?.cells.length ?? 1) - 1];
  switch (key) {
    case "ArrowUp":
      return { row: isFar ? 0 : Math.max(0, row - 1), column };
    case "ArrowDown":
      return { row: isFar ? lastRow : Math.min(lastRow, row + 1), column };
    case "ArrowLeft":
      return { row, column: Math.max(0, column - 1) };
    case "ArrowRight":
      return { row, column: Math.min(lastColumn, column + 1) };
    case "PageUp":
      return { row: Math.max(Math.min(row, 1), row - page), column };
    case "PageDown":
      return { row: Math.min(lastRow, row + page), column };
    case "Home":
      return { row: isFar ? Math.min(1, lastRow) : row, column: 0 };
    case "End":
      return { row: isFar ? lastRow : row, column: lastColumn };
    default:
      return null;
  }
}
