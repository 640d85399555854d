import type { Job } from "../cloth/index.ts";
import { finished, length } from "../length/index.ts";
import type { Stays } from "./stays.ts";
import { type Face, stockOf } from "./stock.ts";
import type { LayoutNode, PieceNode } from "./types.ts";
import type { Path } from "./walk.ts";

/**
 * What of her heap may lie in a cell just as large as the cell is, each as it would lie there: what loses least by it
 * first. Cells that are part of something sewn, and triangles, have no other choice.
 */
export function choicesFor(cell: LayoutNode, job: Job): readonly PieceNode[] {
  if (cell.kind !== "cloth" && (cell.kind !== "piece" || cell.quarter !== undefined)) return [];
  const [width, height] = [cell.width / job.step, cell.height / job.step];
  const own = cell.kind === "piece" ? cell.piece : null;
  const seen = new Set<string>(own === null ? [] : [own]);
  return stockOf(job)
    .faces.filter((face) => face.lot.cells === 1 && fits(face, width, height))
    .sort((one, other) => one.lot.area - other.lot.area)
    .filter(({ lot: { piece } }) => piece.kind !== "half-square-triangle" && isFirst(seen, piece.id))
    .map(({ lot: { piece }, turned }) => ({
      kind: "piece",
      piece: piece.id,
      turned,
      width: finished(length(cell.width)),
      height: finished(length(cell.height)),
    }));
}

function fits({ minWidth, maxWidth, minHeight, maxHeight }: Face, width: number, height: number): boolean {
  return width >= minWidth && width <= maxWidth && height >= minHeight && height <= maxHeight;
}

function isFirst(seen: Set<string>, id: string): boolean {
  if (seen.has(id)) return false;
  seen.add(id);
  return true;
}

/**
 * The layout with another piece in one cell. It is not whole: the piece may lie elsewhere too. It says what stays, and
 * the next plan is made round that.
 */
export function withPieceAt(layout: LayoutNode, path: Path, piece: PieceNode): Stays {
  return { layout: replaced(layout, path, piece), paths: [path] };
}

function replaced(node: LayoutNode, [at, ...rest]: Path, piece: PieceNode): LayoutNode {
  if (at === undefined) return piece;
  if (node.kind !== "join") return node;
  return {
    ...node,
    parts: node.parts.map((part, index) => (index === at ? replaced(part, rest, piece) : part)),
  };
}
