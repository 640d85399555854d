import type { CheckedPiece, CheckInput, JoinNode, LayoutNode } from "../../src/engine/layout/index.ts";
import { finished, inches, type Length, length } from "../../src/engine/length/index.ts";

/** The layout with the node at `path` exchanged; throws where there is none, so that a table can't quietly miss. */
export function at(
  input: CheckInput,
  path: readonly number[],
  change: (node: LayoutNode) => LayoutNode,
): CheckInput {
  return { ...input, layout: changed(input.layout, path, change) };
}

function changed(
  node: LayoutNode,
  path: readonly number[],
  change: (node: LayoutNode) => LayoutNode,
): LayoutNode {
  const [index, ...rest] = path;
  if (index === undefined) return change(node);
  const part = asJoin(node).parts[index];
  if (part === undefined) throw new Error(`no part ${path.join(".")}`);
  return { ...asJoin(node), parts: asJoin(node).parts.with(index, changed(part, rest, change)) };
}

export function asJoin(node: LayoutNode): JoinNode {
  if (node.kind !== "join") throw new Error(`a ${node.kind} is no join`);
  return node;
}

export function withParts(
  input: CheckInput,
  path: readonly number[],
  change: (parts: readonly LayoutNode[]) => readonly LayoutNode[],
): CheckInput {
  return at(input, path, (node) => ({ ...asJoin(node), parts: change(asJoin(node).parts) }));
}

/** Moves the seam between two neighbours: one grows by what the other loses, in eighths of an inch. */
export function seamMoved(
  input: CheckInput,
  path: readonly number[],
  first: number,
  eighths = 1,
): CheckInput {
  return seamMovedBy(input, { path, first, by: inches(eighths, 8) });
}

export function seamMovedBy(
  input: CheckInput,
  { path, first, by }: { path: readonly number[]; first: number; by: Length },
): CheckInput {
  const side = asJoin(nodeAt(input.layout, path)).direction === "beside" ? "width" : "height";
  const moved = at(input, [...path, first], (node) => resized(node, side, by));
  return at(moved, [...path, first + 1], (node) => resized(node, side, length(-by)));
}

export function nodeAt(node: LayoutNode, path: readonly number[]): LayoutNode {
  return path.reduce((found: LayoutNode, index) => {
    const part = asJoin(found).parts[index];
    if (part === undefined) throw new Error(`no part ${path.join(".")}`);
    return part;
  }, node);
}

export function resized(node: LayoutNode, side: "width" | "height", by: Length): LayoutNode {
  return { ...node, [side]: finished(length(node[side] + by)) };
}

/** The heap with one row changed. */
export function withRow(input: CheckInput, id: string, change: Partial<CheckedPiece>): CheckInput {
  if (!input.pieces.some((piece) => piece.id === id)) throw new Error(`no row ${id}`);
  const pieces = input.pieces.map((piece) =>
    piece.id === id ? ({ ...piece, ...change } as CheckedPiece) : piece,
  );
  return { ...input, pieces };
}
