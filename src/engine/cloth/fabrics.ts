import { assert } from "../length/index.ts";
import { readColour } from "./colour.ts";
import type { DraftPiece } from "./draft.ts";
import type { DraftProblem } from "./problems.ts";
import type { Fabric } from "./types.ts";

/** Cloth she gave no colour for is drawn like this. */
export const undyed = "#d8d2c6";
/** The id of the plain cloth to buy. */
export const plainId = "plain";

/** Whether this fabric's colour is only drawn, not known. */
export function isUndyed(fabric: Fabric): boolean {
  return fabric.colour === undyed;
}

/** One fabric of one colour; `null` when `colour` is none. */
export function fabricOf(id: string, name: string, colour: string): Fabric | null {
  const read = readColour(colour);
  return read && { id, name, colour: cssColour(colour, read.hex), colours: [{ lab: read.lab, share: 1 }] };
}

// As she wrote it, unless she left out the #: no drawing would show that.
function cssColour(text: string, hex: string): string {
  const written = text.trim();
  return /^[0-9a-f]{6}$/i.test(written) ? hex : written;
}

export type FabricBook = {
  readonly fabrics: readonly Fabric[];
  /** Fabric id of each piece, in the order of the pieces. */
  readonly ids: readonly string[];
  readonly problems: readonly DraftProblem[];
};

/**
 * One fabric for each name and colour. A name without a colour takes the colour the name has elsewhere; a colour
 * without a name is a fabric of that name; with neither, the cloth is the one undyed fabric, whose name is empty.
 */
export function sortFabrics(pieces: readonly DraftPiece[]): FabricBook {
  const named = coloursByName(pieces);
  const book = new Map<string, Fabric>();
  const taken = new Set([plainId]);
  const ids = pieces.map((piece) => {
    const { name, colour } = clothOf(piece, named);
    const key = JSON.stringify([nameKey(name), readColour(colour)?.hex]);
    const fabric = book.get(key) ?? newFabric(name, colour, taken);
    book.set(key, fabric);
    return fabric.id;
  });
  return {
    fabrics: [...book.values()],
    ids,
    problems: pieces.flatMap((piece) => colourProblems(piece, named)),
  };
}

type FirstColour = { readonly row: number; readonly colour: string };

function coloursByName(pieces: readonly DraftPiece[]): Map<string, FirstColour> {
  const first = new Map<string, FirstColour>();
  for (const piece of pieces) {
    const key = nameKey(fabricName(piece));
    const colour = knownColour(piece);
    if (key !== "" && colour !== null && !first.has(key)) first.set(key, { row: piece.row, colour });
  }
  return first;
}

function clothOf(piece: DraftPiece, named: Map<string, FirstColour>): { name: string; colour: string } {
  const name = fabricName(piece);
  const colour = knownColour(piece);
  if (name === "") return { name: colour ?? "", colour: colour ?? undyed };
  return { name, colour: colour ?? named.get(nameKey(name))?.colour ?? undyed };
}

function newFabric(name: string, colour: string, taken: Set<string>): Fabric {
  const id = freeId(slug(name) || "undyed", taken);
  taken.add(id);
  const fabric = fabricOf(id, name, colour);
  assert(fabric !== null, `${colour} was read as a colour before`);
  return fabric;
}

function freeId(wanted: string, taken: ReadonlySet<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number += 1) id = `${wanted}-${number}`;
  return id;
}

function slug(name: string): string {
  const plainLetters = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plainLetters.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
}

function fabricName(piece: DraftPiece): string {
  return (piece.fabric ?? "").trim().replace(/\s+/gu, " ");
}

function nameKey(name: string): string {
  return name.normalize("NFC").toLowerCase();
}

function knownColour(piece: DraftPiece): string | null {
  const written = piece.colour?.trim() ?? "";
  return written !== "" && readColour(written) !== null ? written : null;
}

function colourProblems(piece: DraftPiece, named: Map<string, FirstColour>): DraftProblem[] {
  const at = { row: piece.row, field: "colour" } as const;
  const first = named.get(nameKey(fabricName(piece)));
  const written = piece.colour?.trim() ?? "";
  if (written === "") return first ? [] : [{ kind: "no-colour", severity: "note", ...at }];
  const read = readColour(written);
  if (!read) return [{ kind: "unknown-colour", severity: "stop", ...at, colour: written }];
  if (!first || readColour(first.colour)?.hex === read.hex) return [];
  const conflict = {
    fabric: fabricName(piece),
    colour: written,
    firstRow: first.row,
    firstColour: first.colour,
  };
  return [{ kind: "colour-conflict", severity: "note", ...at, ...conflict }];
}
