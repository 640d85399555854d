import type { Plan } from "../../../src/engine/plan/index.ts";
import {
  type Axis,
  type Box,
  breakAt,
  type Cell,
  cellsOf,
  endOf,
  inch,
  isCutOff,
  otherAxis,
  outlineOf,
  overlap,
  shown,
  spanOf,
  startOf,
} from "./cells.ts";
import type { RuleBreak } from "./types.ts";

const acrossOutline = 4 * inch;
const anywhere = 2 * inch;

/**
 * 3. Nothing under 4 in across at the top's outline, measured at right angles to it: neither what it runs through nor
 * what begins just inside it. Nothing under 2 in finished outside a set, save in the ring that is cut off.
 */
export function slivers(plan: Plan): RuleBreak[] {
  const outline = outlineOf(plan);
  return cellsOf(plan).flatMap((cell) => [
    ...(outline === null ? [] : atOutline(cell, outline)),
    ...(cell.inSet || isCutOff(cell, outline) ? [] : tooThin(cell)),
  ]);
}

function tooThin(cell: Cell): RuleBreak[] {
  const thin = Math.min(cell.node.width, cell.node.height);
  return thin < anywhere ? [breakAt("sliver", cell, `${shown(thin)} in finished`)] : [];
}

function atOutline(cell: Cell, outline: Box): RuleBreak[] {
  return (["x", "y"] as const).flatMap((axis) => {
    if (spanOf(cell, axis) >= acrossOutline || !liesAt(cell, outline, axis)) return [];
    return [breakAt("sliver", cell, `${shown(spanOf(cell, axis))} in across at the top's outline`)];
  });
}

/** It has something inside the outline, and reaches one of the outline's two sides across this axis. */
function liesAt(cell: Cell, outline: Box, axis: Axis): boolean {
  if (overlap(cell, outline, axis) === 0 || overlap(cell, outline, otherAxis(axis)) === 0) return false;
  return startOf(cell, axis) <= startOf(outline, axis) || endOf(cell, axis) >= endOf(outline, axis);
}
