import type { Job, SizedPiece } from "../cloth/index.ts";
import { add, type Finished, finished, type Length, length } from "../length/index.ts";
import type { Side } from "./problems.ts";
import { roleFor } from "./role.ts";
import { smallestCell } from "./stock.ts";
import { boundsOf } from "./tidy/resize.ts";
import type { JoinNode, LayoutNode, LeafNode, PieceNode } from "./types.ts";
import type { Path } from "./walk.ts";

/** By how much a part may become shorter or longer along one side: whole steps of the ruler, never less than none. */
export type Room = { readonly shorter: number; readonly longer: number };

/** A part in the row or column that runs along one side of it. */
export type InRow = {
  readonly path: Path;
  readonly along: Side;
  readonly node: LayoutNode;
  readonly row: JoinNode;
  readonly index: number;
};

/** null: it lies in no row along that side, or in a set of like parts, of which none is larger than the others. */
export function inRowAlong(layout: LayoutNode, path: Path, along: Side): InRow | null {
  const row = nodeOf(layout, path.slice(0, -1));
  const index = path.at(-1);
  if (index === undefined || row.kind !== "join" || row.pattern !== undefined) return null;
  const node = row.parts[index];
  if (node === undefined || sideAlong(row) !== along || isInSet(layout, path)) return null;
  return { path, along, node, row, index };
}

function isInSet(layout: LayoutNode, path: Path): boolean {
  return path.some((_, depth) => {
    const around = nodeOf(layout, path.slice(0, depth));
    return around.kind === "join" && around.pattern !== undefined;
  });
}

/** Along which side of its parts a join runs. */
export function sideAlong({ direction }: JoinNode): Side {
  return direction === "beside" ? "width" : "height";
}

export function nodeOf(layout: LayoutNode, path: Path): LayoutNode {
  return path.reduce((node, index) => (node.kind === "join" ? (node.parts[index] ?? node) : node), layout);
}

/**
 * What cloth and pieces allow: plain cloth down to the smallest cell, pieces as far as they may be trimmed, strips to
 * any length; what is sewn before it is laid, and sets of like parts, keep their size. Whether there is cloth enough,
 * and wide enough, is for the checker to say.
 */
export function roomOf(node: LayoutNode, along: Side, job: Job): Room {
  if (node.kind !== "join") return roomOfLeaf(node, along, job);
  if (node.pattern !== undefined) return none;
  const rooms = node.parts.map((part) => roomOf(part, along, job));
  const together = sideAlong(node) === along ? sumOf : leastOf;
  return {
    shorter: together(rooms.map(({ shorter }) => shorter)),
    longer: together(rooms.map(({ longer }) => longer)),
  };
}

const none: Room = { shorter: 0, longer: 0 };

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}

function leastOf(numbers: readonly number[]): number {
  return Math.min(...numbers);
}

function roomOfLeaf(node: LeafNode, along: Side, job: Job): Room {
  switch (node.kind) {
    case "cloth":
      return {
        shorter: onStep(node[along] - smallestCell(job), job),
        longer: Number.POSITIVE_INFINITY,
      };
    case "piece":
      return roomOfPiece(node, along, job);
    case "unit":
    case "slab":
      return none;
  }
}

function roomOfPiece(node: PieceNode, along: Side, { pieces, seam, step, ...job }: Job): Room {
  const piece = pieces.find(({ id }) => id === node.piece);
  if (piece === undefined || piece.kind === "crumbs" || piece.kind === "triangle") return none;
  const known = new Map<string, SizedPiece>([[piece.id, piece]]);
  const smallest = smallestCell({ pieces, seam, step, ...job });
  const bounds = boundsOf(node, along === "width", { pieces: known, seam, step, smallest });
  if (bounds === null) return none;
  return {
    shorter: onStep(node[along] - bounds.min, { step }),
    longer: onStep(bounds.max - node[along], { step }),
  };
}

function onStep(size: number, { step }: Pick<Job, "step">): number {
  return Math.max(0, Math.floor(size / step) * step);
}

/**
 * The same part, longer (or shorter, below 0) by so much: within it plain cloth gives and takes before pieces do, the
 * largest first. `by`: no more than it has room for.
 */
export function resized(node: LayoutNode, along: Side, by: number, job: Job): LayoutNode {
  if (by === 0) return node;
  if (node.kind !== "join") return resizedLeaf(node, along, by);
  const size = { [along]: longer(node[along], by) };
  if (sideAlong(node) !== along)
    return { ...node, ...size, parts: node.parts.map((part) => resized(part, along, by, job)) };
  return { ...node, ...size, parts: shared(node.parts, { among: node.parts.keys(), along, by }, job) };
}

function resizedLeaf(leaf: LeafNode, along: Side, by: number): LeafNode {
  const size = { width: leaf.width, height: leaf.height, [along]: longer(leaf[along], by) };
  if (leaf.kind !== "cloth" || leaf.role === "coping") return { ...leaf, ...size };
  return { ...leaf, ...size, role: roleFor(size) };
}

function longer(size: Finished, by: number): Finished {
  return finished(add<Length>(size, length(by)));
}

export type Sharing = {
  /** Which of the parts, by their places. */
  readonly among: Iterable<number>;
  readonly along: Side;
  readonly by: number;
};

/** Parts of a row of which some become longer or shorter, by so much in all. */
export function shared(
  parts: readonly LayoutNode[],
  { among, along, by }: Sharing,
  job: Job,
): readonly LayoutNode[] {
  const made = [...parts];
  let rest = by;
  for (const index of givingOrder(parts, among, along)) {
    const part = parts[index];
    if (part === undefined || rest === 0) continue;
    const taken = within(roomOf(part, along, job), rest);
    made[index] = resized(part, along, taken, job);
    rest -= taken;
  }
  return made;
}

function within({ shorter, longer: most }: Room, by: number): number {
  return by < 0 ? -Math.min(shorter, -by) : Math.min(most, by);
}

/** Plain cloth before all else, the largest part first. */
export function givingOrder(
  parts: readonly LayoutNode[],
  among: Iterable<number>,
  along: Side,
): readonly number[] {
  const rank = (index: number) => (parts[index]?.kind === "cloth" ? 0 : 1);
  const size = (index: number) => parts[index]?.[along] ?? 0;
  return [...among].sort((one, other) => rank(one) - rank(other) || size(other) - size(one));
}
