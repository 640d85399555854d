import type { SizedPiece } from "../../cloth/index.ts";
import { finished, inches, length } from "../../length/index.ts";
import type { PieceNode } from "../types.ts";
import {
  type Bough,
  clothIn,
  clothLeaf,
  composed,
  type Fork,
  holds,
  isFixed,
  type Joiner,
  type Leaf,
} from "./bough.ts";

/** What a size may become: the heap, and the ruler. */
export type Limits = {
  readonly pieces: ReadonlyMap<string, SizedPiece>;
  readonly seam: number;
  readonly step: number;
  readonly smallest: number;
  /** The fabric that can be bought. */
  readonly plain: string;
  /** The widest cell that one width of cloth gives. */
  readonly room: number;
  readonly joiner: Joiner;
  /** May the cloth of a row's end reach further in? */
  readonly endsGrow?: boolean;
};

/** The same part, longer or shorter by so much along one axis; null where its cloth doesn't allow it. */
export function resized(bough: Bough, wide: boolean, by: number, limits: Limits): Bough | null {
  if (holds(bough)) return null;
  if (bough.kind === "fork") return resizedFork(bough, wide, by, limits);
  const long = (wide ? bough.width : bough.height) + by;
  return clothIn(bough) === null
    ? resizedPiece(bough, wide, long, limits)
    : resizedCloth(bough, wide, long, limits);
}

function resizedFork(fork: Fork, wide: boolean, by: number, limits: Limits): Bough | null {
  if (fork.beside === wide) return oneResized(fork, wide, by, limits);
  const parts = fork.parts.map((part) => resized(part, wide, by, limits));
  const whole = parts.filter((part) => part !== null);
  return whole.length === parts.length ? limits.joiner(fork.beside, whole) : null;
}

/** Cloth gives way before pieces do. */
function oneResized(fork: Fork, wide: boolean, by: number, limits: Limits): Bough | null {
  const order = [...fork.parts.keys()].sort((a, b) => rank(fork.parts[a]) - rank(fork.parts[b]));
  for (const at of order) {
    const part = fork.parts[at];
    const other = part === undefined ? null : resized(part, wide, by, limits);
    if (other !== null) return limits.joiner(fork.beside, fork.parts.with(at, other));
  }
  return null;
}

function rank(bough: Bough | undefined): number {
  return bough !== undefined && clothIn(bough) !== null ? 0 : 1;
}

/**
 * Of what is composed, only a plain part may give way, and only one that is bought may grow; but a row's end may reach
 * further in, where that is asked for, as a gap beside it would.
 */
function resizedCloth(leaf: Leaf, wide: boolean, long: number, limits: Limits): Leaf | null {
  const cloth = clothIn(leaf);
  if (cloth === null || cloth.role === "coping") return null;
  const now = wide ? leaf.width : leaf.height;
  const mayGrow = cloth.fabric === limits.plain;
  const isEnd = limits.endsGrow === true && leaf.spot === composed && cloth.role === "spacer";
  if (isEnd && (long < now || long > 8 * inches(1))) return null;
  if (leaf.spot === composed && !isEnd) {
    if (cloth.role !== "plain" || long < 4 * inches(1) || (long > now && !mayGrow)) return null;
  }
  const across = wide ? leaf.height : leaf.width;
  if (long < limits.smallest || Math.min(long, across) > limits.room) return null;
  const size = wide ? { width: long, height: leaf.height } : { width: leaf.width, height: long };
  const made = clothLeaf(cloth.fabric, { ...size, spot: leaf.spot });
  return leaf.spot === composed && !isEnd
    ? { ...made, node: { ...made.node, role: "plain" } as typeof cloth }
    : made;
}

function resizedPiece(leaf: Leaf, wide: boolean, long: number, limits: Limits): Leaf | null {
  const { node } = leaf;
  if (node.kind !== "piece" || isFixed(leaf)) return null;
  const bounds = boundsOf(node, wide, limits);
  if (bounds === null || long < bounds.min || long > bounds.max) return null;
  const size = wide ? { width: long, height: leaf.height } : { width: leaf.width, height: long };
  return {
    ...leaf,
    ...size,
    node: { ...node, width: finished(length(size.width)), height: finished(length(size.height)) },
  };
}

/** Shortest and longest that a piece's cell may be; null for what is never trimmed. */
export function boundsOf(
  node: PieceNode,
  wide: boolean,
  { pieces, seam, step, smallest }: Pick<Limits, "pieces" | "seam" | "step" | "smallest">,
): { readonly min: number; readonly max: number } | null {
  const piece = pieces.get(node.piece);
  if (piece === undefined || piece.kind === "half-square-triangle" || piece.keep === "whole") return null;
  const has = wide !== node.turned ? piece.width : piece.height;
  const max = Math.floor((has - 2 * seam) / step) * step;
  if (isCutAlong(piece, node.turned, wide)) {
    // Of a strip that gives several cells each may only become shorter: the next one begins where it ends.
    return { min: smallest, max: node.copy === undefined ? max : wide ? node.width : node.height };
  }
  const least = has - Math.min(inches(1, 2), has / 10) - 2 * seam;
  return { min: Math.max(smallest, Math.ceil(least / step) * step), max };
}

/** A strip is cut to any length along its longer side. */
export function isCutAlong(piece: SizedPiece, turned: boolean, wide: boolean): boolean {
  if (piece.kind !== "strip" && piece.keep !== "cut") return false;
  if (piece.keep === "whole" || piece.width === piece.height) return false;
  return (piece.width > piece.height !== turned) === wide;
}
