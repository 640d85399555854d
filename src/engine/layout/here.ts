import type { Job } from "../cloth/index.ts";
import type { Stays } from "./stays.ts";
import { type Face, stockOf } from "./stock.ts";
import type { LayoutNode, PieceNode } from "./types.ts";
import type { Path, PlacedLeaf } from "./walk.ts";

/**
 * What of her heap may lie in a cell just as large as the cell is, each as it would lie there; what loses least by it
 * first. What has bias or unknown grain outside may not lie at the edge of the back, where it would stretch. Cells that
 * are part of something sewn, and triangles, have no other choice.
 */
export function choicesFor(cell: PlacedLeaf, layout: LayoutNode, job: Job): readonly PieceNode[] {
  if (!mayChange(cell.node)) return [];
  const { width, height } = cell.node;
  const own = cell.node.kind === "piece" ? cell.node.piece : null;
  const choices = new Map<string, PieceNode>();
  for (const { lot, turned } of facesFor(cell, isAtEdge(cell, layout), job)) {
    const piece = lot.piece.id;
    if (piece !== own && !choices.has(piece))
      choices.set(piece, { kind: "piece", piece, turned, width, height });
  }
  return [...choices.values()];
}

function mayChange(node: LayoutNode): boolean {
  return node.kind === "cloth" || (node.kind === "piece" && node.quarter === undefined);
}

/** Whether a cell lies at the edge of the back. */
export function isAtEdge({ node, x, y }: PlacedLeaf, { width, height }: LayoutNode): boolean {
  return x === 0 || y === 0 || x + node.width === width || y + node.height === height;
}

/** The smallest piece first. What needs a coping strip beside it, or has a diagonal, is no cell by itself. */
function facesFor({ node }: PlacedLeaf, atEdge: boolean, job: Job): readonly Face[] {
  const [width, height] = [node.width / job.step, node.height / job.step];
  return stockOf(job)
    .faces.filter((face) => {
      const { piece, cells } = face.lot;
      if (cells > 1 || piece.kind === "half-square-triangle") return false;
      return fits(face, width, height) && (!atEdge || piece.grain === "straight");
    })
    .sort((one, other) => one.lot.area - other.lot.area);
}

/** Whether a leftover, as it lies, may be cut to a cell of so many steps. */
export function fits(
  { minWidth, maxWidth, minHeight, maxHeight }: Face,
  width: number,
  height: number,
): boolean {
  return width >= minWidth && width <= maxWidth && height >= minHeight && height <= maxHeight;
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
