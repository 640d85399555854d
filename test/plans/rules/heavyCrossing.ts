import type { Plan } from "../../../src/engine/plan/index.ts";
import { breakAt, cellsOf } from "./cells.ts";
import { type Quartered, quartered } from "./quarters.ts";
import type { RuleBreak } from "./types.ts";

const mostSeams = 4;

type Point = { readonly x: number; readonly y: number };
/** The four cells round a point, clockwise from the upper left; undefined: outside the back. */
type Round = readonly [
  Quartered | undefined,
  Quartered | undefined,
  Quartered | undefined,
  Quartered | undefined,
];

/**
 * 5. At most four seams come together in a point, diagonals counted: an ordinary crossing has four. The middle of a
 * pinwheel is that unit's own affair, and so is the tip of a diamond on its edge: it can't be had without, and where
 * the other side brings no seam to it the plan could do nothing better.
 */
export function heavyCrossings(plan: Plan): RuleBreak[] {
  const cells = quartered(cellsOf(plan));
  return cornersOf(cells).flatMap((point) => {
    const round = cellsRound(point, cells);
    if (round.some((cell) => cell === undefined) || isOfOneUnit(round)) return [];
    const seams = straightSeams(round) + diagonalsAt(point, round);
    const path = round[3]?.path ?? [];
    return seams <= mostSeams ? [] : [breakAt("heavy-crossing", { ...point, path }, `${seams} seams meet`)];
  });
}

/** Whether the point lies inside a unit, or on its edge against one whole cell. */
function isOfOneUnit(round: Round): boolean {
  const owners = round.map((cell) => (cell === undefined ? "" : cell.path.join(".")));
  const different = [...new Set(owners)];
  if (different.length !== 2) return different.length === 1;
  const partsOf = (owner: string) => new Set(round.filter((_, index) => owners[index] === owner));
  const [unit, whole] = different.map((owner) => partsOf(owner).size).sort((one, other) => other - one);
  return unit === 2 && whole === 1 && round.some((cell) => cell?.node.kind === "unit");
}

function cornersOf(cells: readonly Quartered[]): Point[] {
  const points = new Map<string, Point>();
  for (const { x, y, right, bottom } of cells) {
    for (const corner of [
      { x, y },
      { x: right, y },
      { x, y: bottom },
      { x: right, y: bottom },
    ]) {
      points.set(`${corner.x} ${corner.y}`, corner);
    }
  }
  return [...points.values()];
}

function cellsRound({ x, y }: Point, cells: readonly Quartered[]): Round {
  const near = cells.filter((cell) => cell.x <= x && cell.right >= x && cell.y <= y && cell.bottom >= y);
  const at = (left: boolean, above: boolean) =>
    near.find((cell) => (left ? cell.x < x : cell.right > x) && (above ? cell.y < y : cell.bottom > y));
  return [at(true, true), at(false, true), at(false, false), at(true, false)];
}

function straightSeams(round: Round): number {
  return round.filter((cell, index) => cell !== round[(index + 1) % 4]).length;
}

function diagonalsAt({ x, y }: Point, round: Round): number {
  const [upperLeft, upperRight, lowerRight, lowerLeft] = round;
  const ends = [
    upperLeft?.right === x && upperLeft.bottom === y && upperLeft.diagonals.includes("falling"),
    upperRight?.x === x && upperRight.bottom === y && upperRight.diagonals.includes("rising"),
    lowerRight?.x === x && lowerRight.y === y && lowerRight.diagonals.includes("falling"),
    lowerLeft?.right === x && lowerLeft.y === y && lowerLeft.diagonals.includes("rising"),
  ];
  return ends.filter((end) => end === true).length;
}
