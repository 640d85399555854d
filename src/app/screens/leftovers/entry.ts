import { kindFromSides, readColour } from "../../../engine/cloth/index.ts";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import {
  colourWordIn,
  isWaiting,
  type Leftover,
  type LineReading,
  leftoverOf,
  lengthAsMeasured,
  measuredLength,
  type NewLeftover,
  type Project,
  readLine,
  readTableRows,
  type TableProblem,
  withTypedCell,
} from "../../../files/index.ts";
import type { NewRoughStock } from "../../../store/index.ts";

/** The lower-case names of fabrics that have a colour already: what is typed of them takes that one. */
export type KnownFabrics = ReadonlySet<string>;

export function knownFabrics({ leftovers, rough }: Project): KnownFabrics {
  const rows = leftovers.map(({ cells }) => [cells.fabric?.text ?? "", cells.colour?.text ?? ""] as const);
  const stock = rough.map(({ fabric, colour }) => [fabric, colour] as const);
  return new Set(
    [...rows, ...stock].filter(([, colour]) => colour !== "").map(([fabric]) => nameKey(fabric)),
  );
}

function nameKey(fabric: string): string {
  return fabric.trim().replace(/\s+/gu, " ").toLowerCase();
}

export type Entry =
  | { readonly kind: "row"; readonly row: NewLeftover }
  | { readonly kind: "rough"; readonly stock: NewRoughStock };

/** What a line without problems becomes; null: it has some. */
export function entryOf(
  line: string,
  reading: LineReading,
  unit: DisplayUnit,
  known: KnownFabrics,
): Entry | null {
  if (reading.problems.length > 0) return null;
  const { piece, rough } = reading;
  const colour = piece.colour ?? likenessOf(reading, known);
  if (rough === null) {
    const coloured = colour === null ? piece : { ...piece, colour };
    return { kind: "row", row: asTyped(leftoverOf(coloured, unit, line.trim()), reading, unit) };
  }
  const total = reading.parts.find(({ is }) => is === "total")?.text ?? "";
  const stock = {
    kind: "strips",
    fabric: piece.fabric ?? "",
    colour: colour ?? "",
    width: lengthAsMeasured(rough.width, unit),
    total: measuredLength(total, unit) ?? lengthAsMeasured(rough.total, unit),
  } as const;
  return { kind: "rough", stock };
}

const typedColumns = ["width", "height", "count", "area", "weight"] as const;

/** Sizes in the words she wrote them in, where those say the same by themselves. */
function asTyped(row: NewLeftover, { parts }: LineReading, unit: DisplayUnit): NewLeftover {
  let { cells } = row;
  for (const column of typedColumns) {
    const part = parts.find(({ is }) => is === column || (is === "sides" && column !== "count"));
    if (part === undefined || cells[column] === undefined) continue;
    // `9 x 30 cm`: the unit that is written once goes for both.
    const ways = ["", " in", " cm", " mm"].map((more) =>
      withTypedCell(cells, column, part.text + more, unit),
    );
    cells = ways.find((way) => way[column]?.value === row.cells[column]?.value) ?? cells;
  }
  return { ...row, cells };
}

/** A fabric that is new takes the colour its name speaks of, to be changed at any time. */
function likenessOf({ piece, look }: LineReading, known: KnownFabrics): string | null {
  return piece.fabric !== undefined && known.has(nameKey(piece.fabric)) ? null : look;
}

/** The colour a line would be drawn in; null: none is known. */
export function shownColour(reading: LineReading, project: Project): string | null {
  const { piece, look } = reading;
  const fabric = piece.fabric === undefined ? null : nameKey(piece.fabric);
  const same = project.leftovers.find(
    ({ cells }) => cells.colour?.value != null && nameKey(cells.fabric?.text ?? "") === fabric,
  );
  const colour = piece.colour ?? same?.cells.colour?.text ?? look;
  return colour === null ? null : (readColour(colour)?.hex ?? null);
}

export type Pasted = {
  readonly rows: readonly NewLeftover[];
  readonly rough: readonly NewRoughStock[];
  /** Of `rows`, those that wait to be mended. */
  readonly waiting: number;
  /** The whole of it can't be read; then there is nothing else. */
  readonly problem: TableProblem | null;
};

/** A table or lines, whichever it is: good ones to enter, bad ones as they were written, to be mended. */
export function pasted(bytes: Uint8Array, unit: DisplayUnit, known: KnownFabrics): Pasted {
  const table = readTableRows(bytes, unit);
  const ofFile = table.problems.find((problem) => !("row" in problem)) ?? null;
  if (ofFile === null) return { ...counted(withLikenesses(table.rows, known)), rough: [], problem: null };
  if (ofFile.kind !== "no-kind-column" && ofFile.kind !== "no-rows" && ofFile.kind !== "no-size-columns") {
    return { rows: [], rough: [], waiting: 0, problem: ofFile };
  }
  const lines = linesOf(new TextDecoder().decode(bytes), unit, known);
  // Not one line of it reads as a leftover: it was meant as a table.
  const isTable = lines.rows.length === lines.waiting && lines.rough.length === 0 && lines.rows.length > 1;
  return isTable && ofFile.kind === "no-kind-column" && /[,;\t]/.test(firstLine(bytes))
    ? { rows: [], rough: [], waiting: 0, problem: ofFile }
    : lines;
}

/** In a table without colours fabrics that are new take those their names speak of, as in a line. */
function withLikenesses(rows: readonly NewLeftover[], known: KnownFabrics): readonly NewLeftover[] {
  const coloured = new Set(known);
  for (const { cells } of rows)
    if (cells.colour !== undefined) coloured.add(nameKey(cells.fabric?.text ?? ""));
  return rows.map((row) => {
    const fabric = nameKey(row.cells.fabric?.text ?? "");
    const look = coloured.has(fabric) ? null : colourWordIn(fabric);
    if (look === null) return row;
    coloured.add(fabric);
    return { ...row, cells: { ...row.cells, colour: { text: look, value: look } } };
  });
}

function firstLine(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes).trimStart().split("\n")[0] ?? "";
}

function counted(rows: readonly NewLeftover[]) {
  return { rows, waiting: rows.filter(isWaiting).length };
}

function linesOf(text: string, unit: DisplayUnit, known: KnownFabrics): Pasted {
  const coloured = new Set(known);
  const entries = text
    .split(/[\r\n]+/)
    .filter((line) => line.trim() !== "")
    .map((line) => {
      const reading = readLine(line, unit);
      const entry = entryOf(line, reading, unit, coloured);
      if (entry !== null && reading.look !== null) coloured.add(nameKey(reading.piece.fabric ?? ""));
      return entry ?? waitingLine(line);
    });
  return {
    ...counted(entries.flatMap((entry) => (entry.kind === "row" ? [entry.row] : []))),
    rough: entries.flatMap((entry) => (entry.kind === "rough" ? [entry.stock] : [])),
    problem: null,
  };
}

function waitingLine(line: string): Entry {
  return { kind: "row", row: { line: line.trim().slice(0, 2000), cells: {}, others: {} } };
}

/** What a row is, told from its sides where she did not say. */
export function kindShown({ cells }: Pick<Leftover, "cells">) {
  const { kind, width, height, area, weight } = cells;
  if (kind?.value != null) return kind.value;
  if (width?.value != null && height?.value != null) return kindFromSides(width.value, height.value);
  return area?.value != null || weight?.value != null ? "crumbs" : null;
}
