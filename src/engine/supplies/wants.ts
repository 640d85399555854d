import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  type ClothSource,
  type LayoutNode,
  leavesOf,
  type Path,
  type PlacedLeaf,
  takenSizeOf,
} from "../layout/index.ts";
import type { Cut } from "../length/index.ts";

/** One rectangle of plain cloth that the layout wants, in cut size. */
export type Want = {
  /** The cell it is for, or the unit it goes into. */
  readonly path: Path;
  readonly fabric: string;
  readonly source: ClothSource;
  /** With what is left long. */
  readonly width: Cut;
  readonly height: Cut;
};

/** All plain cloth of the layout, cell by cell and unit by unit in the order of its leaves. */
export function wantsOf(layout: LayoutNode, job: Pick<Job, "seam">): readonly Want[] {
  return leavesOf(layout, job).flatMap(wantsOfLeaf);
}

/** One want for a cell of cloth; for a unit one for each rectangle that goes into it. */
function wantsOfLeaf(leaf: PlacedLeaf): readonly Want[] {
  const { node, path } = leaf;
  if (node.kind === "cloth") {
    return [{ path, fabric: node.fabric, source: node.source, ...takenSizeOf(leaf) }];
  }
  if (node.kind !== "unit") return [];
  return node.cloth.flatMap(({ fabric, source, width, height, count }) =>
    Array.from({ length: count }, () => ({ path, fabric, source, width, height })),
  );
}

/** Her lengths that may be used, the ones she wants used first before others, then small ones before large ones. */
export function usableLengths(job: Job): readonly SizedPiece[] {
  const rank = (piece: SizedPiece) => uses.indexOf(piece.use);
  const size = (piece: SizedPiece) => piece.width * piece.height;
  return job.pieces
    .filter((piece) => piece.kind !== "crumbs")
    .filter((piece) => piece.kind === "length" && uses.includes(piece.use))
    .toSorted((a, b) => rank(a) - rank(b) || size(a) - size(b));
}

const uses: readonly SizedPiece["use"][] = ["must", "first", "yes", "edge", "if-needed"];
