import Papa from "papaparse";
import type { DraftPiece, Fabric, Piece } from "../engine/cloth/index.ts";
import {
  type Area,
  type DisplayUnit,
  typedLength,
  unitsPerCentimetre,
  unitsPerInch,
  unitsPerMillimetre,
} from "../engine/length/index.ts";
import type { OtherColumn } from "./leftovers.ts";
import { type Column, columns } from "./leftovers-columns.ts";

/**
 * Writes a leftovers table: commas, UTF-8, headings first, only the columns that are used. Law: what is written is
 * read back the same, sizes to the last 1/320 mm, save that the rows are numbered anew.
 */
export function writeLeftovers(
  pieces: readonly DraftPiece[],
  unit: DisplayUnit,
  others: readonly OtherColumn[] = [],
): string {
  const used = columns.filter(
    (column) => isNeeded(column) || pieces.some((piece) => piece[column] !== undefined),
  );
  const rows = pieces.map((piece) => [
    ...used.map((column) => cellOf(column, piece, unit)),
    ...others.map(({ cells }) => cells.get(piece.row) ?? ""),
  ]);
  const headings = [...used, ...others.map(({ heading }) => heading)];
  return `${Papa.unparse([headings, ...rows], { newline: "\n" })}\n`;
}

/** The rows of a checked job as she might have written them. */
export function asDraft(pieces: readonly Piece[], fabrics: readonly Fabric[]): DraftPiece[] {
  const byId = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  return pieces.map(({ id: _, fabric: fabricId, washed, name, cloth, ...piece }, index) => {
    const fabric = byId.get(fabricId);
    return {
      ...piece,
      row: index + 2,
      ...(name === "" ? {} : { name }),
      ...(cloth === "" ? {} : { cloth }),
      ...(washed === null ? {} : { washed }),
      ...(fabric === undefined ? {} : { fabric: fabric.name, colour: fabric.colour }),
    };
  });
}

function isNeeded(column: Column): boolean {
  return column === "kind" || column === "width" || column === "height";
}

function cellOf(column: Column, piece: DraftPiece, unit: DisplayUnit): string {
  switch (column) {
    case "width":
    case "height":
      return piece[column] === undefined ? "" : typedLength(piece[column], unit);
    case "area":
      return piece.area === undefined ? "" : exactArea(piece.area);
    case "weight":
      return piece.weight === undefined ? "" : `${piece.weight} g`;
    case "washed":
      return piece.washed === undefined ? "" : piece.washed ? "yes" : "no";
    case "kind":
    case "count":
    case "fabric":
    case "colour":
    case "name":
    case "keep":
    case "use":
    case "direction":
    case "grain":
    case "cloth":
      return String(piece[column] ?? "");
  }
}

export function exactArea(size: Area): string {
  const squareInches = size / unitsPerInch ** 2;
  if (Number.isInteger(squareInches * 16)) return `${squareInches} sq in`;
  if (Number.isInteger(size / unitsPerCentimetre ** 2)) return `${size / unitsPerCentimetre ** 2} cm²`;
  return `${exactDecimal(size, unitsPerMillimetre ** 2)} mm²`;
}

/** `size / units` with every decimal it has; `units` has no prime factors but 2 and 5. */
function exactDecimal(size: number, units: number): string {
  const places = 14;
  const digits = String((BigInt(size) * 10n ** BigInt(places)) / BigInt(units)).padStart(places + 1, "0");
  return `${digits.slice(0, -places)}.${digits.slice(-places)}`.replace(/\.?0+$/, "");
}
