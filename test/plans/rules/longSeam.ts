import type { Plan } from "../../../src/engine/plan/index.ts";
import {
  type Axis,
  type Box,
  breakAt,
  cellsOf,
  endOf,
  inch,
  isCutOff,
  otherAxis,
  outlineOf,
  type Seam,
  seamsOf,
  shown,
  sideOf,
  startOf,
} from "./cells.ts";
import type { RuleBreak } from "./types.ts";

const offCentre = 3 * inch;
const offOutline = 1.5 * inch;

/**
 * 8. Long seams (half the side or more, those that run on in one line together) lie at least 3 in off both centre
 * lines, and none runs along the top's outline within 1 1/2 in of it; blocks lie at least 2 in inside it (1 in at home
 * and by hand). Which way a frame's rollers take them is a matter of loading, and of the words: any plan can be loaded
 * sideways.
 */
export function wrongLongSeams(plan: Plan): RuleBreak[] {
  const outline = outlineOf(plan);
  const long = inOneLine(seamsOf(plan)).filter((seam) => isLong(seam, plan));
  return [
    ...long.flatMap((seam) => onCentre(seam, plan)),
    ...(outline === null ? [] : long.flatMap((seam) => alongOutline(seam, outline))),
    ...(outline === null ? [] : blocksOutside(plan, outline)),
  ];
}

/** Seams of several joins that lie end to end are one seam to the eye and to the fold. */
function inOneLine(seams: readonly Seam[]): Seam[] {
  const sorted = [...seams].sort((one, other) => one.at - other.at || one.from - other.from);
  const lines: Seam[] = [];
  for (const seam of sorted) {
    const before = lines.findIndex(
      ({ axis, at, to }) => axis === seam.axis && at === seam.at && to >= seam.from,
    );
    const line = lines[before];
    if (line === undefined) lines.push(seam);
    else lines[before] = { ...line, to: Math.max(line.to, seam.to) };
  }
  return lines;
}

function isLong({ axis, from, to }: Seam, { layout }: Plan): boolean {
  return 2 * (to - from) >= sideOf(layout, otherAxis(axis));
}

function onCentre(seam: Seam, { layout }: Plan): RuleBreak[] {
  const off = Math.abs(seam.at - sideOf(layout, seam.axis) / 2);
  return off >= offCentre ? [] : [broken(seam, `${shown(off)} in off the centre line`)];
}

function alongOutline(seam: Seam, outline: Box): RuleBreak[] {
  const sides = [startOf(outline, seam.axis), endOf(outline, seam.axis)];
  const off = Math.min(...sides.map((side) => Math.abs(seam.at - side)));
  return off >= offOutline ? [] : [broken(seam, `${shown(off)} in from the top's outline`)];
}

function broken({ axis, at, from, path }: Seam, said: string): RuleBreak {
  return breakAt("long-seam", axis === "x" ? { x: at, y: from, path } : { x: from, y: at, path }, said);
}

function blocksOutside(plan: Plan, outline: Box): RuleBreak[] {
  const inside = plan.top?.method === "frame" ? 2 * inch : inch;
  return cellsOf(plan)
    .filter(
      ({ node, piece }) => node.kind === "piece" && (piece?.kind === "block" || piece?.kind === "part-block"),
    )
    .filter((cell) => !isCutOff(cell, outline) || cell.piece?.use !== "edge")
    .flatMap((cell) => {
      const within = Math.min(...(["x", "y"] as const).map((axis) => distanceInside(cell, outline, axis)));
      return within >= inside
        ? []
        : [breakAt("long-seam", cell, `a block ${shown(within)} in inside the outline`)];
    });
}

function distanceInside(cell: Box, outline: Box, axis: Axis): number {
  return Math.min(startOf(cell, axis) - startOf(outline, axis), endOf(outline, axis) - endOf(cell, axis));
}
