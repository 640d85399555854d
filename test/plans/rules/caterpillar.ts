import type { Plan } from "../../../src/engine/plan/index.ts";
import {
  axisOf,
  type Box,
  breakAt,
  type Cell,
  cellsOf,
  endOf,
  inch,
  isCloth,
  isCutOff,
  joinsOf,
  neighbours,
  otherAxis,
  outlineOf,
  type PlacedJoin,
  shown,
  sideOf,
  spanOf,
  startOf,
} from "./cells.ts";
import type { RuleBreak } from "./types.ts";

const narrow = 4 * inch;
const longest = 30 * inch;

/**
 * 2. A pieced strip under 4 in wide is at most 30 in long or has plain cloth on both sides: all along it, where the
 * back does not end there. A row of a set is no strip of its own.
 */
export function caterpillars(plan: Plan): RuleBreak[] {
  const cells = cellsOf(plan);
  const outline = outlineOf(plan);
  return joinsOf(plan)
    .filter(({ node }) => sideOf(node, otherAxis(axisOf(node))) < narrow)
    .flatMap((join) => piecedRuns(join, cells).map((run) => ({ run, join })))
    .filter(({ run }) => !run.some(({ inSet }) => inSet) && !isCutOff(boxOf(run), outline))
    .filter(({ run, join }) => !isPlainAlong(boxOf(run), cells, join))
    .map(({ run, join }) => {
      const long = spanOf(boxOf(run), axisOf(join.node));
      return breakAt("caterpillar", { ...boxOf(run), path: join.path }, `${shown(long)} in of bits`);
    });
}

/** Stretches of two leftovers or more, longer than they may be. */
function piecedRuns(join: PlacedJoin, cells: readonly Cell[]): Cell[][] {
  const axis = axisOf(join.node);
  const inside = cells.filter(({ path }) => join.path.every((part, depth) => path[depth] === part));
  const runs: Cell[][] = [[]];
  for (const cell of inside) {
    if (isCloth(cell)) runs.push([]);
    else runs.at(-1)?.push(cell);
  }
  return runs.filter((run) => run.length > 1 && spanOf(boxOf(run), axis) > longest);
}

function boxOf(cells: readonly Box[]): Box {
  return {
    x: Math.min(...cells.map(({ x }) => x)),
    y: Math.min(...cells.map(({ y }) => y)),
    right: Math.max(...cells.map(({ right }) => right)),
    bottom: Math.max(...cells.map(({ bottom }) => bottom)),
  };
}

function isPlainAlong(run: Box, cells: readonly Cell[], { node }: PlacedJoin): boolean {
  const across = otherAxis(axisOf(node));
  const { before, after } = neighbours(run, cells, across);
  const atEdge =
    startOf(run, across) === 0 || cells.every((cell) => endOf(cell, across) <= endOf(run, across));
  return !atEdge && [...before, ...after].every(isCloth);
}
