import type { Plan } from "../../../src/engine/plan/index.ts";
import {
  type Axis,
  breakAt,
  type Cell,
  cellsOf,
  isCutOff,
  neighbours,
  outlineOf,
  shown,
  spanOf,
} from "./cells.ts";
import type { RuleBreak } from "./types.ts";

/**
 * 1. No cell is smaller than a quarter of both its neighbours' sides unless it stands in a set of like pieces: measured
 * from one neighbour to the other, left to right or top to bottom. Spacers and coping strips are meant to be narrow;
 * what lies beside a cell of its own size is no single bit; what is cut off is not seen.
 */
export function lonelyBits(plan: Plan): RuleBreak[] {
  const cells = cellsOf(plan);
  const outline = outlineOf(plan);
  return cells
    .filter((cell) => !cell.inSet && !isSpacer(cell) && !isCutOff(cell, outline) && !hasTwin(cell, cells))
    .flatMap((cell) => lonelyAlong(cell, cells, "x") ?? lonelyAlong(cell, cells, "y") ?? []);
}

function isSpacer({ node }: Cell): boolean {
  return node.kind === "cloth" && node.role !== "plain";
}

function hasTwin(cell: Cell, cells: readonly Cell[]): boolean {
  return (["x", "y"] as const).some((axis) => {
    const { before, after } = neighbours(cell, cells, axis);
    return [...before, ...after].some(
      (other) =>
        other.node.kind === cell.node.kind &&
        other.node.width === cell.node.width &&
        other.node.height === cell.node.height,
    );
  });
}

function lonelyAlong(cell: Cell, cells: readonly Cell[], axis: Axis): RuleBreak[] | null {
  const { before, after } = neighbours(cell, cells, axis);
  const own = spanOf(cell, axis);
  const isSmall = (others: readonly Cell[]) =>
    others.length > 0 && others.every((other) => 4 * own < spanOf(other, axis));
  if (!isSmall(before) || !isSmall(after)) return null;
  return [breakAt("lonely-bit", cell, `${shown(own)} in between much larger ones along ${axis}`)];
}
