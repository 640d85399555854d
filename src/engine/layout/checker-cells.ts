import { inches, type Length, length } from "../length/index.ts";
import { type CheckInput, type Heap, isSized } from "./checker-input.ts";
import { mustStayWhole } from "./checker-pieces.ts";
import { type Cell, leftLongOf } from "./checker-tree.ts";
import type { LayoutProblem, Side } from "./problems.ts";

const sides: readonly Side[] = ["width", "height"];
const inch = inches(1);
/** One to two inches are left, as sewing to the inch goes: common practice. */
export const leastLeftLong = inch;

/** Every cell lies on the ruler's step and is large enough to be sewn. */
export function cellProblems(cells: readonly Cell[], input: CheckInput, heap: Heap): LayoutProblem[] {
  const oddWholes = cells.filter((cell) => isOffStep(cell, input.step) && isWhole(cell, heap));
  return cells.flatMap((cell) => [
    ...stepProblems(cell, input.step, { heap, oddWholes }),
    ...smallestProblems(cell, input, heap),
    ...leftLongProblems(cell),
  ]);
}

type Excuses = { readonly heap: Heap; readonly oddWholes: readonly Cell[] };

function stepProblems(cell: Cell, step: Length, { heap, oddWholes }: Excuses): LayoutProblem[] {
  if (!isOffStep(cell, step) || isWhole(cell, heap)) return [];
  if (cell.node.kind === "cloth" && oddWholes.some((odd) => isBeside(cell, odd))) return [];
  return sides.flatMap((side): LayoutProblem[] => {
    const size = cell.node[side];
    return size % step === 0 ? [] : [{ kind: "off-step", ...nameOf(cell), side, size, step }];
  });
}

function leftLongProblems(cell: Cell): LayoutProblem[] {
  const leftLong = leftLongOf(cell.node);
  return sides.flatMap((side): LayoutProblem[] => {
    const left = leftLong[side];
    if (left === undefined || left >= leastLeftLong) return [];
    return [{ kind: "left-too-short", ...nameOf(cell), side, left, least: leastLeftLong }];
  });
}

function isOffStep({ node }: Cell, step: Length): boolean {
  return node.width % step !== 0 || node.height % step !== 0;
}

/** Only what is left whole may be of a size the ruler does not show: it came so. */
function isWhole({ node }: Cell, heap: Heap): boolean {
  if (node.kind === "piece") return staysWhole(node.piece, heap);
  return node.kind === "unit" && node.pieces.some(({ piece }) => staysWhole(piece, heap));
}

function staysWhole(id: string, heap: Heap): boolean {
  const piece = heap.get(id);
  return piece !== undefined && isSized(piece) && mustStayWhole(piece);
}

/** The spacer that takes the difference: it touches the whole piece, or is sewn into the same row. */
function isBeside(cell: Cell, odd: Cell): boolean {
  const row = cell.path.slice(0, -1);
  const inRow = odd.path.length === cell.path.length && row.every((part, depth) => odd.path[depth] === part);
  return inRow || touches(cell, odd);
}

function touches(a: Cell, b: Cell): boolean {
  const across = Math.min(rightOf(a), rightOf(b)) - Math.max(a.x, b.x);
  const down = Math.min(bottomOf(a), bottomOf(b)) - Math.max(a.y, b.y);
  return Math.min(across, down) === 0 && Math.max(across, down) > 0;
}

function rightOf({ x, node }: Cell): number {
  return x + node.width;
}

function bottomOf({ y, node }: Cell): number {
  return y + node.height;
}

function smallestProblems(cell: Cell, input: CheckInput, heap: Heap): LayoutProblem[] {
  const smallest = smallestOf(cell, input, heap);
  return sides.flatMap((side): LayoutProblem[] => {
    const size = cell.node[side];
    return size >= smallest ? [] : [{ kind: "under-smallest", ...nameOf(cell), side, size, smallest }];
  });
}

/** 1 in in a set of like pieces and in the outer ring; elsewhere what a piece at the floor shows once it is sewn. */
function smallestOf(cell: Cell, input: CheckInput, heap: Heap): Length {
  if (cell.inSet || (mayBeCutOff(cell, heap) && isInRing(cell, input))) return inch;
  // Half an inch is the two seams of a piece; where seams are wider (0.75 cm), they are.
  const seams = Math.max(inches(1, 2), 2 * input.seam);
  return length(Math.max(inch, input.floor - seams));
}

function mayBeCutOff({ node }: Cell, heap: Heap): boolean {
  return node.kind === "cloth" || (node.kind === "piece" && heap.get(node.piece)?.use === "edge");
}

function isInRing(cell: Cell, input: CheckInput): boolean {
  return cell.outer || (input.top != null && isOutsideTop(cell, input, input.top));
}

type Outline = { readonly width: Length; readonly height: Length };

function isOutsideTop(cell: Cell, { back, seam }: CheckInput, top: Outline): boolean {
  // The top's outline in the layout's own measure, which begins one seam inside the raw edge.
  const left = (back.width - top.width) / 2 - seam;
  const above = (back.height - top.height) / 2 - seam;
  return (
    rightOf(cell) <= left ||
    cell.x >= left + top.width ||
    bottomOf(cell) <= above ||
    cell.y >= above + top.height
  );
}

function nameOf({ node, path }: Cell): { path: Cell["path"]; piece?: string } {
  return node.kind === "piece" ? { path, piece: node.piece } : { path };
}
