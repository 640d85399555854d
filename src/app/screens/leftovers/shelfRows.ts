import type { Piece } from "../../../engine/cloth/index.ts";
import type { Leftover, Project } from "../../../files/index.ts";
import { heapOf } from "./heap.ts";

/** A row of the shelf, to be shown. */
export type ShelfRow = {
  readonly id: string;
  /** With its fabric's name; `null`: it can't be worked with, and `text` is what she wrote. */
  readonly piece: (Omit<Piece, "fabric"> & { readonly fabric: string }) | null;
  readonly text: string;
  /** As CSS; `null`: none is known. */
  readonly colour: string | null;
  /** Which back it comes from, or what she noted. */
  readonly note: string;
};

/** All rows, the last laid first. */
export function shelfRows(shelf: Project): readonly ShelfRow[] {
  const { rows, colours } = heapOf(shelf);
  const byId = new Map(rows.map((row) => [row.id, row]));
  return shelf.leftovers.toReversed().map((leftover) => {
    const row = byId.get(leftover.id);
    return {
      id: leftover.id,
      piece: row === undefined ? null : { ...row.piece, fabric: row.fabric.name },
      text: textOf(leftover),
      colour: colours.get(leftover.id) ?? null,
      note: leftover.cells.name?.text ?? "",
    };
  });
}

function textOf({ line, cells }: Leftover): string {
  return line !== ""
    ? line
    : Object.values(cells)
        .map(({ text }) => text)
        .join(" ");
}
