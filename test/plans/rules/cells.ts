import type { Fabric, Piece } from "../../../src/engine/cloth/index.ts";
import {
  type JoinNode,
  type LayoutNode,
  type LeafNode,
  nodesOf,
  type Path,
  type Placed,
  type Quarter,
} from "../../../src/engine/layout/index.ts";
import { inches, length, toNumber } from "../../../src/engine/length/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import type { Rule, RuleBreak } from "./types.ts";

// What the ten rules look at: a plan as she sees it on the table, in layout coordinates of 1/320 mm.

export const inch: number = inches(1);

/** `x`: from left to right, so a seam across it is upright. */
export type Axis = "x" | "y";

export type Box = { readonly x: number; readonly y: number; readonly right: number; readonly bottom: number };

/** A leaf where it lies. */
export type Cell = Box & {
  readonly node: LeafNode;
  readonly path: Path;
  readonly cutWidth: number;
  readonly cutHeight: number;
  /** Its fabric: of its first piece, where it is sewn from several. */
  readonly fabric: Fabric | null;
  readonly piece: Piece | null;
  /** Stands in a set of like pieces: a join above it has a pattern. */
  readonly inSet: boolean;
};

export function cellsOf(plan: Plan): Cell[] {
  const placed = nodesOf(plan.layout, plan);
  const sets = placed.filter(({ node }) => node.kind === "join" && node.pattern !== undefined);
  return placed.flatMap(({ node, path, x, y, cutWidth, cutHeight }) => {
    if (node.kind === "join") return [];
    const inSet = sets.some((set) => set.path.every((part, depth) => path[depth] === part));
    const place = { x, y, right: x + node.width, bottom: y + node.height, cutWidth, cutHeight };
    return [{ node, path, ...place, inSet, ...clothOf(node, plan) }];
  });
}

function clothOf(node: LeafNode, plan: Plan): Pick<Cell, "fabric" | "piece"> {
  const id = pieceOf(node);
  const piece = plan.pieces.find((one) => one.id === id) ?? null;
  const fabric = node.kind === "cloth" ? node.fabric : piece?.fabric;
  return { piece, fabric: plan.fabrics.find((one) => one.id === fabric) ?? null };
}

function pieceOf(node: LeafNode): string | undefined {
  switch (node.kind) {
    case "piece":
      return node.piece;
    case "unit":
      return node.pieces[0]?.piece;
    case "slab":
      return node.crumbs ?? node.pieces?.[0]?.piece;
    case "cloth":
      return node.source === "buy" ? undefined : node.source.piece;
  }
}

export function isCloth({ node }: Pick<Cell, "node">): boolean {
  return node.kind === "cloth";
}

export type PlacedJoin = Placed<JoinNode>;

export function joinsOf(plan: Plan): PlacedJoin[] {
  return nodesOf(plan.layout, plan).flatMap((placed) =>
    placed.node.kind === "join" ? [{ ...placed, node: placed.node }] : [],
  );
}

/** The axis along which a join lays its parts. */
export function axisOf({ direction }: JoinNode): Axis {
  return direction === "beside" ? "x" : "y";
}

export function otherAxis(axis: Axis): Axis {
  return axis === "x" ? "y" : "x";
}

export function sideOf(node: Pick<LayoutNode, "width" | "height">, axis: Axis): number {
  return axis === "x" ? node.width : node.height;
}

export function startOf(box: Box, axis: Axis): number {
  return axis === "x" ? box.x : box.y;
}

export function endOf(box: Box, axis: Axis): number {
  return axis === "x" ? box.right : box.bottom;
}

export function spanOf(box: Box, axis: Axis): number {
  return endOf(box, axis) - startOf(box, axis);
}

/** How much of an edge two boxes share that lie one after the other along `axis`; 0: they don't touch so. */
export function sharedEdge(before: Box, after: Box, axis: Axis): number {
  if (endOf(before, axis) !== startOf(after, axis)) return 0;
  return overlap(before, after, otherAxis(axis));
}

export function overlap(one: Box, other: Box, axis: Axis): number {
  const from = Math.max(startOf(one, axis), startOf(other, axis));
  return Math.max(0, Math.min(endOf(one, axis), endOf(other, axis)) - from);
}

/** What touches a cell before it (left, above) and after it (right, below). */
export function neighbours(cell: Box, cells: readonly Cell[], axis: Axis): { before: Cell[]; after: Cell[] } {
  return {
    before: cells.filter((other) => sharedEdge(other, cell, axis) > 0),
    after: cells.filter((other) => sharedEdge(cell, other, axis) > 0),
  };
}

/** A seam: where it lies across its axis, and from where to where it runs. */
export type Seam = {
  /** `x`: it is upright, at that x. */
  readonly axis: Axis;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly path: Path;
  /** Which part of the join comes before it. */
  readonly index: number;
};

export function seamsOfJoin({ node, x, y, path }: PlacedJoin): Seam[] {
  const axis = axisOf(node);
  const across = otherAxis(axis);
  const from = across === "x" ? x : y;
  let at: number = axis === "x" ? x : y;
  return node.parts.slice(0, -1).map((part, index) => {
    at += sideOf(part, axis);
    return { axis, at, from, to: from + sideOf(node, across), path, index };
  });
}

export function seamsOf(plan: Plan): Seam[] {
  return joinsOf(plan).flatMap(seamsOfJoin);
}

/** The top's outline in layout coordinates; null: no top, no outline. */
export function outlineOf({ top, back, seam }: Plan): Box | null {
  if (top === null) return null;
  const x = (back.width - top.width) / 2 - seam;
  const y = (back.height - top.height) / 2 - seam;
  return { x, y, right: x + top.width, bottom: y + top.height };
}

/** Wholly where it is cut away after quilting. */
export function isCutOff(box: Box, outline: Box | null): boolean {
  return outline !== null && (overlap(box, outline, "x") === 0 || overlap(box, outline, "y") === 0);
}

/** In which direction the diagonal of a half-square triangle runs. */
export type Diagonal = "falling" | "rising";

/** No turn: the first colour in the upper left corner, so the seam rises from left to right. */
export function diagonalOf(quarter: Quarter): Diagonal {
  return quarter % 2 === 0 ? "rising" : "falling";
}

export function breakAt(rule: Rule, { path, x, y }: Pick<Cell, "path" | "x" | "y">, said: string): RuleBreak {
  return { rule, path, x: shown(x), y: shown(y), said };
}

/** In inches, for a message. */
export function shown(units: number): number {
  return Math.round(toNumber(length(Math.round(units)), "in") * 1000) / 1000;
}
