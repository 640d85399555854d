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
  joinsOf,
  otherAxis,
  overlap,
  type PlacedJoin,
  type Seam,
  seamsOf,
  shown,
  sideOf,
  spanOf,
  startOf,
} from "./cells.ts";
import { quartered } from "./quarters.ts";
import type { RuleBreak } from "./types.ts";

const apart = inch;
const apartWhereLarge = 2 * inch;
const large = 8 * inch;
const halvesApart = 6 * inch;
/** Of an all-over, where nobody can look for each of them. */
const mayMiss = 0.03;

/**
 * 4. Across a join, seams meet exactly or are at least 1 in apart (2 where the cells on both sides exceed 8 in along
 * it); in an all-over at most 3 % of the meetings miss. The halves of a cross's row down lie 6 in apart or more, or
 * there is one half: a plan has no word for a match that is marked.
 */
export function nearMisses(plan: Plan): RuleBreak[] {
  const cells = quartered(cellsOf(plan));
  const lines = seamsOf(plan).map((seam) => ({ seam, ...endsAt(seam, cells) }));
  const misses = lines.flatMap(({ seam, before, after }) => missesAt(seam, before, after));
  const meetings = lines.reduce((sum, { before, after }) => sum + meetingsIn(before, after), 0);
  const few = plan.style === "all-over" && misses.length <= mayMiss * meetings;
  return [...(few ? [] : misses), ...(plan.style === "cross" ? halvesInLine(plan) : [])];
}

/** Where a seam ends on another, and the cells to its sides as long as they lie along that. */
type End = { readonly at: number; readonly smaller: number };

function endsAt(seam: Seam, cells: readonly Cell[]): { before: End[]; after: End[] } {
  const along = otherAxis(seam.axis);
  const touching = cells.filter((cell) => startOf(cell, along) < seam.to && endOf(cell, along) > seam.from);
  return {
    before: endsOf(
      touching.filter((cell) => endOf(cell, seam.axis) === seam.at),
      along,
    ),
    after: endsOf(
      touching.filter((cell) => startOf(cell, seam.axis) === seam.at),
      along,
    ),
  };
}

function endsOf(cells: readonly Cell[], along: "x" | "y"): End[] {
  const inOrder = [...cells].sort((one, other) => startOf(one, along) - startOf(other, along));
  return inOrder.slice(1).map((cell, index) => {
    const last = inOrder[index] ?? cell;
    return { at: startOf(cell, along), smaller: Math.min(spanOf(last, along), spanOf(cell, along)) };
  });
}

function missesAt(seam: Seam, before: readonly End[], after: readonly End[]): RuleBreak[] {
  return before.flatMap((one) =>
    after
      .map((other) => ({ other, by: Math.abs(one.at - other.at) }))
      .filter(({ other, by }) => by > 0 && by < needed(one, other))
      .map(({ by }) => {
        const place = seam.axis === "x" ? { x: seam.at, y: one.at } : { x: one.at, y: seam.at };
        return breakAt("near-miss", { ...place, path: seam.path }, `seams ${shown(by)} in apart`);
      }),
  );
}

function needed(one: End, other: End): number {
  return Math.min(one.smaller, other.smaller) > large ? apartWhereLarge : apart;
}

/** Each end of a seam on a join, two that meet exactly counted once. */
function meetingsIn(before: readonly End[], after: readonly End[]): number {
  return new Set([...before, ...after].map(({ at }) => at)).size;
}

// ---- The halves of a cross

function halvesInLine(plan: Plan): RuleBreak[] {
  const pieced = cellsOf(plan).filter((cell) => !isCloth(cell));
  // Only what spreads over most of the back is the cross itself.
  const wide = joinsOf(plan).filter(({ node }) =>
    (["x", "y"] as const).every((axis) => 2 * sideOf(node, axis) > sideOf(plan.layout, axis)),
  );
  return wide.flatMap((join) => {
    const row = rowThrough(join, pieced);
    if (row === null) return [];
    const axis = axisOf(join.node);
    const first = pieced.filter((cell) => isWithin(cell, join) && endOf(cell, axis) <= startOf(row, axis));
    const second = pieced.filter((cell) => isWithin(cell, join) && startOf(cell, axis) >= endOf(row, axis));
    return tooNear(first, second, join);
  });
}

/** The part of the join that is pieced nearly from side to side, between others that are not. */
function rowThrough(join: PlacedJoin, pieced: readonly Cell[]): Box | null {
  const across = otherAxis(axisOf(join.node));
  const rows = boxesOf(join).filter((box) => {
    const inside = pieced.filter((cell) => overlap(cell, box, "x") > 0 && overlap(cell, box, "y") > 0);
    return inside.length > 1 && reach(inside, across) >= 0.8 * sideOf(join.node, across);
  });
  const [row] = rows;
  return rows.length === 1 && row !== undefined ? row : null;
}

function boxesOf({ node, x, y }: PlacedJoin): Box[] {
  let at = { x: Number(x), y: Number(y) };
  return node.parts.map((part) => {
    const box = { ...at, right: at.x + part.width, bottom: at.y + part.height };
    at = node.direction === "beside" ? { ...at, x: box.right } : { ...at, y: box.bottom };
    return box;
  });
}

function reach(cells: readonly Box[], axis: "x" | "y"): number {
  return (
    Math.max(...cells.map((cell) => endOf(cell, axis))) -
    Math.min(...cells.map((cell) => startOf(cell, axis)))
  );
}

function isWithin({ path }: Cell, join: PlacedJoin): boolean {
  return join.path.every((part, depth) => path[depth] === part);
}

function tooNear(first: readonly Cell[], second: readonly Cell[], join: PlacedJoin): RuleBreak[] {
  if (first.length === 0 || second.length === 0) return [];
  const across = otherAxis(axisOf(join.node));
  const from = (cells: readonly Cell[]) => Math.min(...cells.map((cell) => startOf(cell, across)));
  const by = Math.abs(from(first) - from(second));
  if (by >= halvesApart) return [];
  return [breakAt("near-miss", join, `the halves of the cross lie ${shown(by)} in apart`)];
}
