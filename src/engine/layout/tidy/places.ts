import type { SizedPiece } from "../../cloth/index.ts";
import type { LeafNode, PieceNode } from "../types.ts";
import { held } from "./bough.ts";
import type { Eye } from "./fault.ts";
import { boundsOf, type Limits } from "./resize.ts";
import type { Cell } from "./scene.ts";

/** What lies in each of two cells once they have changed places. */
export type Exchange = {
  readonly at: readonly [number, number];
  readonly nodes: readonly [LeafNode, LeafNode];
  /** Only the fabrics change: whatever holds of the one holds of the other. */
  readonly isPlain: boolean;
};

/** Which cells may change places: those of one size and make, and pieces of which each fits where the other lies. */
export class Places {
  private readonly cells: readonly Cell[];
  private readonly eye: Eye;
  private readonly limits: Limits;
  private readonly mobile: readonly boolean[];
  private readonly makes = new WeakMap<LeafNode, string>();
  private readonly bySize = new Map<string, number[]>();

  constructor(cells: readonly Cell[], eye: Eye, limits: Limits) {
    this.cells = cells;
    this.eye = eye;
    this.limits = limits;
    this.mobile = cells.map(isMobile);
    for (const [at, cell] of cells.entries()) {
      if (!this.mayMove(at)) continue;
      const key = sizeOf(cell.node);
      this.bySize.set(key, [...(this.bySize.get(key) ?? []), at]);
    }
  }

  mayMove(at: number): boolean {
    return this.mobile[at] ?? false;
  }

  /** The cells of its size, which may change places with it as they are. */
  twinsOf(at: number): readonly number[] {
    const cell = this.cells[at];
    return cell === undefined ? [] : (this.bySize.get(sizeOf(cell.node)) ?? []);
  }

  /** `nodes`: what lies in the cells now. Null: they may not change places. */
  exchange(one: number, other: number, nodes: readonly LeafNode[]): Exchange | null {
    const [a, b] = [nodes[one], nodes[other]];
    const [first, second] = [this.cells[one], this.cells[other]];
    if (a === undefined || b === undefined || first === undefined || second === undefined) return null;
    if (!this.mayMove(one) || !this.mayMove(other) || a.kind !== b.kind) return null;
    if (!this.mayLie(a, second) || !this.mayLie(b, first)) return null;
    const at = [one, other] as const;
    if (a.width === b.width && a.height === b.height)
      return { at, nodes: [b, a], isPlain: this.makeOf(a) === this.makeOf(b) };
    if (a.kind !== "piece" || b.kind !== "piece" || first.inSet || second.inSet) return null;
    const [mine, theirs] = [this.fitted(b, a), this.fitted(a, b)];
    return mine === null || theirs === null ? null : { at, nodes: [mine, theirs], isPlain: false };
  }

  /** All that the rules ask of a leaf but its fabric. */
  private makeOf(node: LeafNode): string {
    const before = this.makes.get(node);
    if (before !== undefined) return before;
    const piece = node.kind === "piece" ? this.eye.pieces.get(node.piece) : undefined;
    const make = node.kind === "piece" && piece !== undefined ? pieceMake(node, piece) : JSON.stringify(node);
    this.makes.set(node, make);
    return make;
  }

  /** What she holds dear doesn't come to lie where it is cut off, and what is for there doesn't come away. */
  private mayLie(node: LeafNode, { x, y, right, bottom, node: there }: Cell): boolean {
    const { outline } = this.eye;
    if (node.kind !== "piece" || there.kind !== "piece" || outline === null) return true;
    const use = (id: string) => this.eye.pieces.get(id)?.use;
    if (use(node.piece) === use(there.piece)) return true;
    const isInside = x >= outline.x && y >= outline.y && right <= outline.right && bottom <= outline.bottom;
    return isInside && use(node.piece) !== "edge";
  }

  /** A piece in a cell of nearly its size; null: it doesn't fit, or not without cutting off much. */
  private fitted(node: PieceNode, { width, height }: PieceNode): PieceNode | null {
    const piece = this.eye.pieces.get(node.piece);
    if (piece === undefined || node.copy !== undefined || node.quarter !== undefined) return null;
    const turned = [node.turned, !node.turned].find(
      (way) => this.mayTurn(piece, way, node) && this.fits({ ...node, turned: way, width, height }, piece),
    );
    if (turned === undefined) return null;
    const showsTurn = width !== height || piece.direction !== "none";
    return { ...node, turned: turned && showsTurn, width, height };
  }

  private mayTurn({ direction }: SizedPiece, turned: boolean, node: PieceNode): boolean {
    return direction === "none" || turned === node.turned;
  }

  private fits(node: PieceNode, { width, height, keep }: SizedPiece): boolean {
    const { limits } = this;
    return [true, false].every((wide) => {
      const side = wide ? node.width : node.height;
      if (keep === "whole") return (wide !== node.turned ? width : height) === side + 2 * limits.seam;
      const bounds = boundsOf(node, wide, limits);
      return bounds !== null && side >= bounds.min && side <= bounds.max;
    });
  }
}

/** What stays, what is plain and what is sewn into a set with others stays where it is. */
function isMobile({ node, spot, inSet }: Cell): boolean {
  if (spot === held || node.kind === "cloth") return false;
  return node.kind === "piece" || !inSet;
}

function pieceMake({ turned, quarter, copy }: PieceNode, piece: SizedPiece): string {
  const { width, height, kind, keep, direction, grain, use } = piece;
  return [turned, quarter, copy !== undefined, width, height, kind, keep, direction, grain, use].join();
}

function sizeOf({ kind, width, height }: LeafNode): string {
  return `${kind} ${width} ${height}`;
}
