import type { SizedPiece } from "../../../src/engine/cloth/index.ts";
import type { JoinNode, LayoutNode } from "../../../src/engine/layout/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import { type Axis, axisOf, breakAt, type Cell, cellsOf, inch, otherAxis, shown, sideOf } from "./cells.ts";
import type { RuleBreak } from "./types.ts";

/** So little plain cloth is no reason to trim. */
const littleCloth = 6 * inch * inch;
const smallest = 2 * inch;

/**
 * 6. No trim unless leaving the piece as it is would need more than 6 sq in of plain cloth or one more cut; a big piece
 * isn't cut while a smaller one of its fabric, which lies unused, serves. Cutting a strip to length is no trim, nor is
 * what the ruler's step takes.
 */
export function sillyCuts(plan: Plan): RuleBreak[] {
  const cells = cellsOf(plan);
  return [...cells.flatMap((cell) => sillyTrims(cell, plan)), ...bigForSmall(cells, plan)];
}

function sillyTrims(cell: Cell, plan: Plan): RuleBreak[] {
  return (["x", "y"] as const).flatMap((axis) => {
    const spare = spareOf(cell, axis, plan);
    if (spare <= 0) return [];
    const needed = clothToLeaveIt(cell, { axis, by: spare, plan });
    if (needed > littleCloth) return [];
    return [breakAt("silly-cut", cell, `${shown(spare)} in trimmed along ${axis} for nothing`)];
  });
}

/** What is trimmed off a cell's piece along one axis, in whole steps; 0 for whatever is not trimmed. */
function spareOf(
  { node, piece, ...cell }: Pick<Cell, "node" | "piece" | "cutWidth" | "cutHeight">,
  axis: Axis,
  plan: Plan,
): number {
  if (node.kind !== "piece" || piece === null || piece.kind === "crumbs") return 0;
  if (isCutToLength(piece, node.turned, axis)) return 0;
  const has = (axis === "x") !== node.turned ? piece.width : piece.height;
  const spare = has - (axis === "x" ? cell.cutWidth : cell.cutHeight);
  return Math.floor(spare / plan.step) * plan.step;
}

function isCutToLength(piece: SizedPiece, turned: boolean, axis: Axis): boolean {
  if (piece.kind !== "strip" && piece.keep !== "cut") return false;
  const along = piece.width > piece.height ? "x" : "y";
  return piece.width === piece.height || (along === axis) !== turned;
}

type Growth = { readonly axis: Axis; readonly by: number; readonly plan: Plan };

/**
 * Plain cloth that it would take if the cell grew, up to where some other plain cloth can give way. Infinite: nothing
 * gives way, or another cell would have to be cut.
 */
function clothToLeaveIt(cell: Cell, growth: Growth): number {
  let needed = 0;
  for (let depth = cell.path.length - 1; depth >= 0; depth--) {
    const join = nodeAt(growth.plan.layout, cell.path.slice(0, depth));
    const own = cell.path[depth];
    if (join?.kind !== "join") return Number.POSITIVE_INFINITY;
    const others = join.parts.filter((_, index) => index !== own);
    if (axisOf(join) === growth.axis) {
      if (others.some((other) => givesWay(other, growth))) return needed;
    } else {
      needed += others.reduce((sum, other) => sum + clothToGrow(other, growth), 0);
    }
  }
  return Number.POSITIVE_INFINITY;
}

function nodeAt(layout: LayoutNode, path: readonly number[]): LayoutNode | undefined {
  return path.reduce<LayoutNode | undefined>(
    (node, index) => (node?.kind === "join" ? node.parts[index] : undefined),
    layout,
  );
}

/** Plain cloth that can be that much smaller without becoming a sliver. */
function givesWay(node: LayoutNode, { axis, by }: Growth): boolean {
  return node.kind === "cloth" && node.role !== "coping" && sideOf(node, axis) - by >= smallest;
}

function clothToGrow(node: LayoutNode, growth: Growth): number {
  if (node.kind === "cloth") return growth.by * sideOf(node, otherAxis(growth.axis));
  if (node.kind === "join") return clothToGrowJoin(node, growth);
  return node.kind === "piece" && spareOfNode(node, growth) >= growth.by ? 0 : Number.POSITIVE_INFINITY;
}

function clothToGrowJoin(join: JoinNode, growth: Growth): number {
  const each = join.parts.map((part) => clothToGrow(part, growth));
  return axisOf(join) === growth.axis ? Math.min(...each) : each.reduce((sum, one) => sum + one, 0);
}

/** Of a neighbour; two piecing seams are assumed round it, or it may be that much less. */
function spareOfNode(node: Extract<LayoutNode, { kind: "piece" }>, { axis, plan }: Growth): number {
  const piece = plan.pieces.find(({ id }) => id === node.piece) ?? null;
  const cut = { cutWidth: node.width + 2 * plan.seam, cutHeight: node.height + 2 * plan.seam };
  return spareOf({ node, piece, ...cut }, axis, plan);
}

// ---- A big piece cut while a smaller one serves

/** A piece that gives several cells is cut anyway. Each small one that lies unused stands in for one big one. */
function bigForSmall(cells: readonly Cell[], plan: Plan): RuleBreak[] {
  const left = unusedOf(plan);
  return cells.flatMap((cell) => {
    const { piece, node } = cell;
    if (node.kind !== "piece" || node.copy !== undefined || piece === null || piece.kind === "crumbs")
      return [];
    if (!isCutUp(cell, piece)) return [];
    const at = left.findIndex(
      (other) => other.fabric === piece.fabric && areaOf(other) < areaOf(piece) && serves(other, cell),
    );
    const [smaller] = at < 0 ? [] : left.splice(at, 1);
    if (smaller === undefined) return [];
    return [breakAt("silly-cut", cell, `${piece.id} is cut while ${smaller.id} serves`)];
  });
}

/** More than a trim comes off it. */
function isCutUp({ cutWidth, cutHeight }: Cell, piece: SizedPiece): boolean {
  return (
    areaOf(piece) - cutWidth * cutHeight > inch * Math.max(piece.width, piece.height) * 0.5 + inch * inch
  );
}

/** Every single one she would gladly use, and that lies unused. */
function unusedOf({ pieces, unused }: Plan): SizedPiece[] {
  return unused.flatMap(({ piece: id, count }) => {
    const piece = pieces.find((one) => one.id === id);
    if (piece === undefined || piece.kind === "crumbs") return [];
    return ["must", "first", "yes"].includes(piece.use) ? Array.from({ length: count }, () => piece) : [];
  });
}

/** The cell can be had of it, with no more trimmed than may be; a strip is cut to any length. */
function serves(piece: SizedPiece, { node, cutWidth, cutHeight }: Cell): boolean {
  if (piece.kind === "triangle" || piece.kind === "half-square-triangle" || piece.kind === "length")
    return false;
  const ways = [{ width: piece.width, height: piece.height, turned: false }];
  if (piece.direction === "none") ways.push({ width: piece.height, height: piece.width, turned: true });
  return ways.some(({ width, height, turned }) => {
    const fits = (has: number, needs: number, axis: Axis) =>
      has >= needs &&
      (has - needs <= mayTrim(has, piece) || (piece.keep !== "whole" && isCutToLength(piece, turned, axis)));
    return node.kind === "piece" && fits(width, cutWidth, "x") && fits(height, cutHeight, "y");
  });
}

function mayTrim(side: number, piece: SizedPiece): number {
  return piece.keep === "whole" ? 0 : Math.min(inch / 2, Math.floor(side / 10));
}

function areaOf({ width, height }: SizedPiece): number {
  return width * height;
}
