import { finished, type Length, length, type Size } from "../length/index.ts";
import { type CheckedSized, type Heap, isSized } from "./checker-input.ts";
import type { LayoutProblem, TreePath } from "./problems.ts";
import type { UnitNode } from "./types.ts";

// Square blocks on their points in a line, touching point to point. Plain squares cut twice, corner to corner, fill the
// notches between them with their outer sides out; two squares cut once fill the four corners.

/** A cut is never short of the rule by a rounding of double precision. */
const rounding = 1e-6;

/** Two triangles beside each block, then the slanting rows to one another, then the last corners. */
export function seamsOnPoint(
  unit: UnitNode,
  seam: Length,
  heap: Heap,
): { readonly joins: number; readonly sewn: number } {
  const blocks = countOf(unit.pieces);
  const side = heap.get(unit.pieces[0]?.piece ?? "");
  const along = side !== undefined && isSized(side) ? side.width : 0;
  const slant = Math.round(Math.SQRT2 * (Math.min(unit.width, unit.height) + 2 * seam));
  const triangles = 4 + 2 * (blocks - 1);
  return { joins: triangles + blocks - 1, sewn: triangles * along + (blocks - 1) * slant };
}

/** Made of the right parts, no smaller than the blocks on their points, no larger than the triangles reach. */
export function onPointProblems(
  unit: UnitNode,
  path: TreePath,
  { seam, heap }: { readonly seam: Length; readonly heap: Heap },
): LayoutProblem[] {
  const side = sideOfBlocks(unit, heap);
  const squares = plainSquares(unit);
  const between = Math.ceil((countOf(unit.pieces) - 1) / 2);
  if (side === null || squares?.length !== 2 + between || unit.rotations !== undefined)
    return [{ kind: "wrong-unit-parts", path, pattern: unit.pattern }];
  const blocks = { count: countOf(unit.pieces), side: side - 2 * seam };
  const reach = reachOf(squares, { ...blocks, between, seam });
  return sizeProblems(unit, path, { blocks, reach });
}

/** In cut size; null: not all blocks, not square, or not all alike. */
function sideOfBlocks({ pieces }: UnitNode, heap: Heap): number | null {
  const rows = pieces.flatMap(({ piece, count }) => {
    const row = heap.get(piece);
    return row !== undefined && isSized(row) && count >= 1 ? [row] : [];
  });
  const [first] = rows;
  if (first === undefined || rows.length < pieces.length) return null;
  return rows.every((row) => mayStand(row) && row.width === first.width) ? first.width : null;
}

function mayStand({ kind, width, height }: CheckedSized): boolean {
  return width === height && (kind === "block" || kind === "part-block" || kind === "square");
}

/** Sides of the plain squares, largest first; null: one is not square. */
function plainSquares({ cloth }: UnitNode): number[] | null {
  if (cloth.some(({ width, height, count }) => width !== height || !(count >= 1))) return null;
  // More than a line could ever take is as wrong as one too many.
  const sides = cloth.flatMap(({ width, count }) =>
    Array.from({ length: Math.min(count, 200) }, () => width),
  );
  return sides.toSorted((one, other) => other - one);
}

type Line = {
  readonly count: number;
  /** A block's side, finished. */
  readonly side: number;
  /** Squares that fill the notches. */
  readonly between: number;
  readonly seam: number;
};

/** How far the triangles reach from the line's middle to its long edges, and, both ways together, to its raw corners. */
type Reach = { readonly toEdge: number; readonly toCorner: number };

function reachOf(squares: readonly number[], { side, between, seam }: Line): Reach {
  const [quartered, halved] = [squares.slice(0, between), squares.slice(between)];
  // A quarter is half its square high; its right angle lies over the point by a seam's allowance each way.
  const toEdge = Math.min(...quartered, Number.MAX_SAFE_INTEGER) / 2 - Math.SQRT2 * seam - seam;
  // From a block's middle over the seam at its side, then as high as half a square is over its long side.
  const outward = side / 2 - seam + Math.min(...halved) / Math.SQRT2;
  return { toEdge, toCorner: Math.SQRT2 * outward - 2 * seam };
}

type Limits = { readonly blocks: Pick<Line, "count" | "side">; readonly reach: Reach };

function sizeProblems(unit: UnitNode, path: TreePath, { blocks, reach }: Limits): LayoutProblem[] {
  const [long, deep] = [Math.max(unit.width, unit.height), Math.min(unit.width, unit.height)];
  const diagonal = Math.SQRT2 * blocks.side;
  const least = { long: blocks.count * diagonal, deep: diagonal };
  // The corner lies half the depth to the side and as far along from the middle of the last block.
  const toEnd = (long - (blocks.count - 1) * diagonal) / 2;
  const fits =
    long >= least.long - rounding &&
    deep >= least.deep - rounding &&
    deep / 2 <= reach.toEdge + rounding &&
    toEnd + deep / 2 <= reach.toCorner + rounding;
  if (fits) return [];
  const most = {
    deep: 2 * Math.min(reach.toEdge, reach.toCorner - diagonal / 2),
    long: 2 * (reach.toCorner - deep / 2) + (blocks.count - 1) * diagonal,
  };
  return [
    {
      kind: "wrong-unit-size",
      path,
      pattern: unit.pattern,
      actual: { width: unit.width, height: unit.height },
      smallest: sizeOf(unit, { long: Math.ceil(least.long), deep: Math.ceil(least.deep) }),
      largest: sizeOf(unit, { long: Math.floor(most.long), deep: Math.floor(most.deep) }),
    },
  ];
}

function sizeOf({ width, height }: UnitNode, { long, deep }: { long: number; deep: number }) {
  const [wide, high] = width >= height ? [long, deep] : [deep, long];
  const size: Size<ReturnType<typeof finished>> = {
    width: finished(length(Math.max(0, wide))),
    height: finished(length(Math.max(0, high))),
  };
  return size;
}

function countOf(pieces: UnitNode["pieces"]): number {
  return pieces.reduce((total, { count }) => total + count, 0);
}
