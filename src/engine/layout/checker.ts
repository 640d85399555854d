import { cellProblems } from "./checker-cells.ts";
import { clothProblems } from "./checker-cloth.ts";
import { countProblems } from "./checker-counts.ts";
import { type CheckInput, heapOf } from "./checker-input.ts";
import { pieceProblems } from "./checker-pieces.ts";
import { slabProblems } from "./checker-slabs.ts";
import { surveyTree } from "./checker-tree.ts";
import { unitProblems } from "./checker-units.ts";
import type { LayoutProblem } from "./problems.ts";

export type { BoughtCloth, CheckedPiece, CheckInput } from "./checker-input.ts";
export { deepestJoin, mostCells } from "./checker-tree.ts";

/**
 * Holds a layout against everything it must keep, from what the plan's file says alone, and shares nothing with what
 * made it. An empty list: it can be sewn. Never throws, whatever the tree; where sizes or depth leave nothing to hold
 * the cells against, only the tree's own problems are named.
 */
export function checkLayout(input: CheckInput): LayoutProblem[] {
  const { cells, problems, sound } = surveyTree(input);
  if (!sound) return [...problems];
  const heap = heapOf(input.pieces);
  return [
    ...problems,
    ...cellProblems(cells, input, heap),
    ...pieceProblems(cells, heap),
    ...countProblems(cells, input, heap),
    ...clothProblems(cells, input, heap),
    ...unitProblems(cells, input, heap),
    ...slabProblems(cells, heap),
  ];
}
