import { inches, type Length, length, type Size } from "../length/index.ts";
import { type CheckedSized, type Heap, isSized } from "./checker-input.ts";
import type { Cell } from "./checker-tree.ts";
import type { LayoutProblem, Side } from "./problems.ts";
import type { PieceNode } from "./types.ts";

export type PieceCell = Cell<PieceNode>;

/** Half an inch, in centimetre jobs too. */
export const mostTrim = inches(1, 2);

/** What a cell needs of a piece, in the piece's own width and height as its row gives them. */
export function needOf(cell: PieceCell): Size {
  return cell.node.turned ? swapped(cell.cut) : cell.cut;
}

/** The same with what is left long: as much has to be there. */
export function takenFrom(cell: PieceCell): Size {
  return cell.node.turned ? swapped(cell.taken) : cell.taken;
}

/** Each leftover lies within its cloth, the right way up, trimmed no more than may be. */
export function pieceProblems(cells: readonly Cell[], heap: Heap): LayoutProblem[] {
  return cells.filter(isPieceCell).flatMap((cell) => problemsOf(cell, heap));
}

export function isPieceCell(cell: Cell): cell is PieceCell {
  return cell.node.kind === "piece";
}

function problemsOf(cell: PieceCell, heap: Heap): LayoutProblem[] {
  const { path, node } = cell;
  const piece = heap.get(node.piece);
  if (piece === undefined) return [{ kind: "unknown-piece", path, piece: node.piece }];
  if (!isSized(piece)) return [{ kind: "crumbs-as-piece", path, piece: piece.id }];
  return [
    ...useProblems(piece, cell),
    ...turnProblems(piece, cell),
    ...squareProblems(piece, cell),
    ...clothProblems(piece, cell),
  ];
}

function useProblems({ id, kind, use }: CheckedSized, { path }: PieceCell): LayoutProblem[] {
  const problems: LayoutProblem[] = [];
  if (kind === "length") problems.push({ kind: "length-as-piece", path, piece: id });
  if (use === "keep-back" || use === "give-away") {
    problems.push({ kind: "not-to-be-used", path, piece: id, use });
  }
  return problems;
}

function turnProblems(piece: CheckedSized, { path, node }: PieceCell): LayoutProblem[] {
  const problems: LayoutProblem[] = [];
  const { quarter } = node;
  if (quarter !== undefined && (piece.kind !== "half-square-triangle" || !isQuarter(quarter))) {
    problems.push({ kind: "wrong-quarter", path, piece: piece.id });
  }
  const turned = node.turned || (quarter !== undefined && quarter !== 0);
  if (piece.direction === "one-way" && turned) {
    problems.push({ kind: "one-way-turned", path, piece: piece.id });
  }
  return problems;
}

export function isQuarter(quarter: number): boolean {
  return quarter === 0 || quarter === 1 || quarter === 2 || quarter === 3;
}

function squareProblems({ id, kind }: CheckedSized, { path, node }: PieceCell): LayoutProblem[] {
  if (kind !== "half-square-triangle" || node.width === node.height) return [];
  const actual = { width: node.width, height: node.height };
  return [{ kind: "half-square-triangle-not-square", path, piece: id, actual }];
}

function clothProblems(piece: CheckedSized, cell: PieceCell): LayoutProblem[] {
  if (piece.kind === "triangle") return triangleProblems(piece, cell);
  const small = smallProblems(piece, cell);
  // Cells of one copy are held against it together, where they are counted.
  if (small.length > 0 || (cell.node.copy !== undefined && mayBeCutUp(piece))) return small;
  return fewest(axesOf(piece).map((along) => trimProblems(piece, cell, along)));
}

/** The largest rectangles of a right-angled triangle have a corner on its long side: a / width + b / height ≤ 1. */
function triangleProblems(piece: CheckedSized, cell: PieceCell): LayoutProblem[] {
  const { path } = cell;
  const legs = { width: piece.width, height: piece.height };
  const need = takenFrom(cell);
  if (need.width * legs.height + need.height * legs.width > legs.width * legs.height) {
    return [{ kind: "triangle-too-small", path, piece: piece.id, needed: cell.cut, legs }];
  }
  if (piece.keep !== "whole") return [];
  return [
    {
      kind: "not-whole",
      path,
      piece: piece.id,
      side: "width",
      needed: cell.cut.width,
      has: hasOf(piece, cell).width,
    },
  ];
}

function smallProblems(piece: CheckedSized, cell: PieceCell): LayoutProblem[] {
  const size = hasOf(piece, cell);
  return sides.flatMap((side): LayoutProblem[] => {
    const [needed, has] = [cell.taken[side], size[side]];
    if (needed <= has) return [];
    return [{ kind: "piece-too-small", path: cell.path, piece: piece.id, side, needed, has }];
  });
}

/** Trims of one cell, should `along` be the side the piece may be shortened on. `along` is the piece's own side. */
export function trimProblems(piece: CheckedSized, cell: PieceCell, along: Side | null): LayoutProblem[] {
  const need = needOf(cell);
  return sides.flatMap((side): LayoutProblem[] => {
    const [needed, has] = [need[side], piece[side]];
    if (side === along || needed >= has) return [];
    const at = { path: cell.path, piece: piece.id, side: cell.node.turned ? otherSide(side) : side };
    if (mustStayWhole(piece)) return [{ kind: "not-whole", ...at, needed, has }];
    const most = trimAllowed(has);
    const trimmed = length(has - needed);
    return trimmed <= most ? [] : [{ kind: "trimmed-too-much", ...at, trimmed, most }];
  });
}

/** In all, off one dimension of a piece: at most ½ in and at most a tenth of it. */
export function trimAllowed(side: Length): Length {
  return length(Math.min(mostTrim, Math.floor(side / 10)));
}

/** Points are lost where a block is trimmed: only where she allows it. A half-square triangle is never cut up. */
export function mustStayWhole({ kind, keep }: CheckedSized): boolean {
  return keep === "whole" || (kind === "half-square-triangle" && keep === "cut");
}

/** May this piece give several cells? */
export function mayBeCutUp({ kind, keep }: CheckedSized): boolean {
  return keep === "cut" && kind !== "half-square-triangle" && kind !== "triangle";
}

/** On which of the piece's own sides any length may be cut off: its longer one, if it is a strip or may be cut. */
export function axesOf(piece: CheckedSized): readonly (Side | null)[] {
  const free = mayBeCutUp(piece) || (piece.kind === "strip" && piece.keep === "trim");
  if (!free) return [null];
  if (piece.width === piece.height) return sides;
  return [piece.width > piece.height ? "width" : "height"];
}

/** Where a square piece may be cut along either side, the reading that leaves least to complain of. */
export function fewest(readings: readonly LayoutProblem[][]): LayoutProblem[] {
  return readings.reduce((best, next) => (next.length < best.length ? next : best), readings[0] ?? []);
}

export const sides: readonly Side[] = ["width", "height"];

function otherSide(side: Side): Side {
  return side === "width" ? "height" : "width";
}

function hasOf(piece: CheckedSized, cell: PieceCell): Size {
  return cell.node.turned ? swapped(piece) : piece;
}

function swapped({ width, height }: Size): Size {
  return { width: height, height: width };
}
