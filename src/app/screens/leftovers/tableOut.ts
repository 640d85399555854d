import { kindFromSides } from "../../../engine/cloth/index.ts";
import {
  draftOfProject,
  type Leftover,
  type OtherColumn,
  type Project,
  writeLeftovers,
} from "../../../files/index.ts";

// Spreadsheets take a table for UTF-8 only when it begins with this.
const byteOrderMark = "\ufeff";

/** The heap as a leftovers table: what can be read, as it lies there, with her own columns. */
export function tableOf(project: Project): Uint8Array {
  const heap = { ...project.heap, cutting: "clean", reserveBinding: false, reserveLabel: false } as const;
  const pieces = draftOfProject({ ...project, heap }).pieces.map((piece) => {
    const { kind, width, height } = piece;
    if (kind !== undefined) return piece;
    // A table names every kind.
    const told = width === undefined || height === undefined ? "crumbs" : kindFromSides(width, height);
    return { ...piece, kind: told } as const;
  });
  const text = writeLeftovers(pieces, project.settings.unit, otherColumns(project.leftovers));
  return new TextEncoder().encode(byteOrderMark + text);
}

function otherColumns(leftovers: readonly Leftover[]): readonly OtherColumn[] {
  const headings = new Set(leftovers.flatMap(({ others }) => Object.keys(others)));
  return [...headings].map((heading) => ({
    heading,
    cells: new Map(
      leftovers.flatMap(({ others }, index): [number, string][] => {
        const text = others[heading];
        return text === undefined ? [] : [[index + 1, text]];
      }),
    ),
  }));
}
