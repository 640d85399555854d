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
 * pinwheel is that unit's own affair.
 */
export function heavyCrossings(plan: Plan): RuleBreak[] {
  const cells = quartered(cellsOf(plan));
  return cornersOf(cells).flatMap((point) => {
    const round = cellsRound(point, cells);
    if (round.some((cell) => cell === undefined) || new Set(round.map((cell) => cell?.node)).size === 1)
      return [];
    const seams = straightSeams(round) + diagonalsAt(point, round);
    const path = round[3]?.path ?? [];
    return seams <= mostSeams ? [] : [breakAt("heavy-crossing", { ...point, path }, `${seams} seams meet`)];
  });
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
