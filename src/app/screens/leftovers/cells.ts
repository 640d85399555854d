import { directions, grains, keeps, kinds, uses } from "../../../engine/cloth/index.ts";
import { type DisplayUnit, formatLength, showsExactly } from "../../../engine/length/index.ts";
import {
  type Column,
  faultsOf,
  type Leftover,
  type LeftoverCells,
  type RowFault,
  withTypedCell,
} from "../../../files/index.ts";
import type { LeftoverChange } from "../../../store/index.ts";
import type { LeftoversTexts } from "../../../words/index.ts";
import { kindShown } from "./entry.ts";

/** Columns of the list; of crumbs the width shows how much there is. */
export const listColumns = ["count", "kind", "width", "height", "fabric", "use"] as const;
export type ListColumn = (typeof listColumns)[number];

/** Columns that are edited as words to choose from. */
export type ChoiceColumn = keyof LeftoversTexts["choices"];

const choices: { readonly [C in ChoiceColumn]: readonly string[] } = {
  kind: kinds,
  keep: keeps,
  use: uses,
  direction: directions,
  grain: grains,
  washed: ["yes", "no"],
};

export function isChoiceColumn(column: Column): column is ChoiceColumn {
  return Object.hasOwn(choices, column);
}

/** What may be chosen in a column, with its words. */
export function optionsOf(column: ChoiceColumn, texts: LeftoversTexts) {
  const named: Readonly<Record<string, string>> = texts.choices[column];
  return choices[column].map((value) => ({ value, label: named[value] ?? value }));
}

/** What a place in the list holds: crumbs have a weight or an area where others have a width, and no height. */
export function columnAt(column: ListColumn, leftover: Leftover): Column | null {
  if (kindShown(leftover) !== "crumbs") return column;
  if (column === "height" || column === "count") return null;
  if (column !== "width") return column;
  return leftover.cells.area === undefined ? "weight" : "area";
}

/** A cell as it is shown: sizes set as a person writes them, everything else as she wrote it. */
export function shownCell(
  column: Column,
  leftover: Leftover,
  unit: DisplayUnit,
  texts: LeftoversTexts,
): string {
  const { cells } = leftover;
  if (column === "width" || column === "height") return shownSide(cells[column], unit);
  if (column === "kind") {
    const kind = kindShown(leftover);
    return cells.kind?.value === null ? cells.kind.text : kind === null ? "" : texts.choices.kind[kind];
  }
  if (column === "count") return cells.count?.text ?? "1";
  const cell = cells[column];
  if (cell === undefined || cell.value === null || !isChoiceColumn(column)) return cell?.text ?? "";
  const named: Readonly<Record<string, string>> = texts.choices[column];
  const word = cell.value === true ? "yes" : cell.value === false ? "no" : String(cell.value);
  return named[word] ?? cell.text;
}

function shownSide(cell: LeftoverCells["width"], unit: DisplayUnit): string {
  if (cell === undefined) return "";
  // What was measured by the other ruler stays as it was written.
  if (cell.value === null || cell.unit !== unit || /\p{L}/u.test(cell.text)) return cell.text;
  // Her own decimal sign.
  const format = { unit, decimal: cell.text.includes(",") ? "," : "." } as const;
  return showsExactly(cell.value, format) ? formatLength(cell.value, format) : cell.text;
}

/** The word chosen in a column; empty: none. */
export function chosenWord(column: ChoiceColumn, { cells }: Leftover): string {
  const value = cells[column]?.value ?? null;
  return value === null ? "" : value === true ? "yes" : value === false ? "no" : value;
}

export type Edited =
  | { readonly ok: true; readonly change: LeftoverChange }
  | { readonly ok: false; readonly fault: RowFault };

/** A cell with a new text; blank takes it away. What can't be read changes nothing. */
export function editedCell(leftover: Leftover, column: Column, text: string, unit: DisplayUnit): Edited {
  const cells = withTypedCell(leftover.cells, column, text, unit);
  const fault = faultsOf({ ...leftover, cells }, unit).find((one) => "field" in one && one.field === column);
  if (fault !== undefined) return { ok: false, fault };
  return { ok: true, change: { cells: { [column]: cells[column] ?? null } } };
}

/** Several cells at once, as they are typed in the form of a row: either all of them or the faults. */
export function editedRow(
  leftover: Leftover,
  typed: ReadonlyMap<Column, string>,
  unit: DisplayUnit,
): { readonly change: LeftoverChange; readonly faults: ReadonlyMap<Column, RowFault> } {
  let cells: LeftoverChange["cells"] = {};
  const faults = new Map<Column, RowFault>();
  for (const [column, text] of typed) {
    const edited = editedCell(leftover, column, text, unit);
    if (edited.ok) cells = { ...cells, ...edited.change.cells };
    else faults.set(column, edited.fault);
  }
  return { change: { cells }, faults };
}
