import type { LayoutNode } from "../../../src/engine/layout/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import {
  type Axis,
  axisOf,
  breakAt,
  type Cell,
  cellsOf,
  endOf,
  inch,
  joinsOf,
  otherAxis,
  type PlacedJoin,
  type Seam,
  seamsOfJoin,
  shown,
  startOf,
} from "./cells.ts";
import { quartered } from "./quarters.ts";
import type { RuleBreak } from "./types.ts";

const longJoin = 18 * inch;
const manySeams = 6;
/** So much longer a giver is left. */
const leastLong = inch;

/**
 * 9. A giver at every long join (over 18 in, or more than 6 seams ending on one side of it): on one of its sides
 * something is left an inch long at least and trimmed after, and there is as much of it: plain cloth, or a piece with
 * an inch to spare. A side gives if one of the parts along it does, or all that lie side by side across it.
 */
export function joinsWithoutGiver(plan: Plan): RuleBreak[] {
  const cells = quartered(cellsOf(plan));
  return joinsOf(plan).flatMap((join) =>
    seamsOfJoin(join)
      .filter((seam) => isLong(seam, cells))
      .filter((seam) => !hasGiver(join, seam, plan))
      .map((seam) => {
        const place = seam.axis === "x" ? { x: seam.at, y: seam.from } : { x: seam.from, y: seam.at };
        return breakAt(
          "giver",
          { ...place, path: seam.path },
          `no giver along ${shown(seam.to - seam.from)} in`,
        );
      }),
  );
}

function isLong(seam: Seam, cells: readonly Cell[]): boolean {
  if (seam.to - seam.from > longJoin) return true;
  const along = otherAxis(seam.axis);
  const touching = cells.filter((cell) => startOf(cell, along) < seam.to && endOf(cell, along) > seam.from);
  const seams = [
    touching.filter((cell) => endOf(cell, seam.axis) === seam.at).length - 1,
    touching.filter((cell) => startOf(cell, seam.axis) === seam.at).length - 1,
  ];
  return Math.max(...seams) > manySeams;
}

function hasGiver({ node }: PlacedJoin, seam: Seam, plan: Plan): boolean {
  const along = otherAxis(seam.axis);
  const sides = [node.parts[seam.index], node.parts[seam.index + 1]];
  return sides.some((side) => side !== undefined && gives(side, along, plan));
}

/** Within a row one is enough: it is trimmed before the row is closed. */
function gives(node: LayoutNode, along: Axis, plan: Plan): boolean {
  if (node.kind === "join" && axisOf(node) === along)
    return node.parts.some((part) => gives(part, along, plan));
  return standsOver(node, along, plan);
}

/** It is still longer when it is laid: at an end of a row, or all that lies side by side. */
function standsOver(node: LayoutNode, along: Axis, plan: Plan): boolean {
  switch (node.kind) {
    case "cloth":
      return leftLong(node, along) >= leastLong;
    case "join":
      return axisOf(node) === along
        ? [node.parts[0], node.parts.at(-1)].some((end) => end !== undefined && standsOver(end, along, plan))
        : node.parts.every((part) => standsOver(part, along, plan));
    case "piece":
      return leftLong(node, along) >= leastLong && spareOf(node, along, plan) >= leftLong(node, along);
    case "unit":
    case "slab":
      return false;
  }
}

type CanBeLong = Extract<LayoutNode, { kind: "piece" | "cloth" }>;

function leftLong({ leftLong: left = {} }: CanBeLong, along: Axis): number {
  return (along === "x" ? left.width : left.height) ?? 0;
}

function spareOf(node: Extract<LayoutNode, { kind: "piece" }>, along: Axis, plan: Plan): number {
  const piece = plan.pieces.find(({ id }) => id === node.piece);
  if (piece === undefined || piece.kind === "crumbs" || piece.keep === "whole" || node.copy !== undefined)
    return 0;
  const has = (along === "x") !== node.turned ? piece.width : piece.height;
  return has - (along === "x" ? node.width : node.height) - 2 * plan.seam;
}
