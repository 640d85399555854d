import type { DraftPiece } from "../engine/cloth/index.ts";
import { hexOf } from "../engine/cloth/index.ts";
import { fromNumber } from "../engine/length/index.ts";
import { type OtherColumn, writeLeftovers } from "../files/index.ts";
import type { MeasuredPhoto, MeasuredPiece } from "./types.ts";

/** What was measured of one photo, with the name of its file. */
export type MeasuredFile = { readonly file: string; readonly measured: MeasuredPhoto };

/** All photos and all pieces as one JSON document, `verso-pieces` version 1; lengths in inches. */
export function writePieces(files: readonly MeasuredFile[]): string {
  const document = {
    format: "verso-pieces",
    version: 1,
    unit: "in",
    photos: files.map(({ file, measured: { cards, residual, warnings } }) => ({
      file,
      cards,
      residual: residual === null ? null : rounded(residual, 3),
      warnings,
    })),
    pieces: files.flatMap(({ measured: { pieces } }, photo) =>
      pieces.map((piece) => ({ photo, ...written(piece) })),
    ),
  };
  return `${JSON.stringify(document)}\n`;
}

function written({ kind, width, height, measured, pixels, colours, busyness, check }: MeasuredPiece) {
  return {
    kind,
    width,
    height,
    measured: { width: rounded(measured.width, 4), height: rounded(measured.height, 4) },
    pixels: pixels.map((place) => place.map((value) => rounded(value, 2))),
    colours: colours.map(({ lab: { l, a, b }, share }) => ({
      lab: [l, a, b].map((value) => rounded(value, 2)),
      share: rounded(share, 3),
    })),
    busyness: rounded(busyness, 2),
    check,
  };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}

/** What is said in a table beside the numbers. */
export type PiecesTableWords = {
  /** A fabric's name until she gives it one; `number` counts all pieces, from 1. */
  readonly fabric: (number: number) => string;
  readonly checkHeading: string;
  readonly check: (piece: MeasuredPiece) => string;
};

/** The pieces as a leftovers table. What is too small to promise any size of is left out. */
export function writePiecesTable(files: readonly MeasuredFile[], words: PiecesTableWords): string {
  const pieces = files
    .flatMap(({ measured }) => measured.pieces)
    .filter(({ width, height }) => Math.min(width, height) > 0);
  const rows = pieces.map((piece, index) =>
    draftOf(piece, { row: index + 2, fabric: words.fabric(index + 1) }),
  );
  const cells = new Map(pieces.map((piece, index) => [index + 2, words.check(piece)]));
  const check: OtherColumn = { heading: words.checkHeading, cells };
  return writeLeftovers(rows, "in", [check]);
}

function draftOf(
  { kind, width, height, colours }: MeasuredPiece,
  named: { row: number; fabric: string },
): DraftPiece {
  const colour = colours[0];
  const [across, down] = [fromNumber(width, "in"), fromNumber(height, "in")];
  return {
    ...named,
    kind,
    count: 1,
    ...(across === null ? {} : { width: across }),
    ...(down === null ? {} : { height: down }),
    ...(colour === undefined ? {} : { colour: hexOf(colour.lab) }),
  };
}
