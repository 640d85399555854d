import { type Area, areaOf, inches, type Length, length, type Size } from "../length/index.ts";
import {
  type CheckedPiece,
  type CheckedSized,
  type CheckInput,
  type Heap,
  heapOf,
  isSized,
} from "./checker-input.ts";
import { axesOf, isPieceCell, mayBeCutUp, type PieceCell, takenFrom } from "./checker-pieces.ts";
import { type Cell, type Joined, surveyTree } from "./checker-tree.ts";
import { seamsInside } from "./checker-units.ts";
import type { JoinNode, UnitNode } from "./types.ts";

export type CheckedFigures = {
  /** Finished area of the cells of leftovers, of all that could show. 0 to 1 where no crumbs are used. */
  readonly covered: number;
  readonly plain: Area;
  readonly plainCells: number;
  /** Of the finished area of the pieces used one by one. */
  readonly trimWaste: number;
  /** Seams to sew; those inside units too, those inside slabs not. */
  readonly joins: number;
  /** Of those seams as they are sewn, from raw edge to raw edge; diagonals to the nearest 1/320 mm. */
  readonly seamLength: Length;
};

/**
 * A plan's figures once more, from the layout alone, by the definitions of the format. Holds for layouts that
 * `checkLayout` has nothing against.
 */
export function figuresOf(input: CheckInput): CheckedFigures {
  const { cells, joins } = surveyTree(input);
  const heap = heapOf(input.pieces);
  const plain = cells.filter(({ node }) => node.kind === "cloth");
  const units = cells.flatMap(({ node }) => (node.kind === "unit" ? [node] : []));
  return {
    covered: coveredOf(cells, input, heap),
    plain: areaOf(sum(plain.map(({ node }) => areaIn(node)))),
    plainCells: plain.length,
    trimWaste: trimWasteOf(cells, input, heap),
    ...seamsOf(joins, units, (unit) => seamsInside(unit, input.seam, heap)),
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, next) => total + next, 0);
}

function areaIn({ width, height }: Size): number {
  return width * height;
}

// ---- Covered

function coveredOf(cells: readonly Cell[], input: CheckInput, heap: Heap): number {
  const shown = sum(cells.map((cell) => shownOf(cell, heap)));
  const heapArea = sum(
    input.pieces.filter(mayShow).map((piece) => piece.count * finishedOf(piece, input.seam)),
  );
  const most = Math.min(heapArea, areaIn(input.layout));
  return most > 0 ? shown / most : 0;
}

function shownOf({ node }: Cell, heap: Heap): number {
  switch (node.kind) {
    case "piece":
    case "slab":
      return areaIn(node);
    case "unit":
      return areaIn(node) * shareOfPieces(node, heap);
    case "cloth":
      return 0;
  }
}

/** By cut area: a unit's pieces against the cloth sewn in with them. */
function shareOfPieces({ pieces, cloth }: UnitNode, heap: Heap): number {
  const ofPieces = sum(pieces.map(({ piece, count }) => count * cutAreaOf(heap.get(piece))));
  const ofCloth = sum(cloth.map((one) => one.count * areaIn(one)));
  return ofPieces > 0 ? ofPieces / (ofPieces + ofCloth) : 0;
}

function mayShow(piece: CheckedPiece): piece is CheckedSized {
  const stays = piece.use === "keep-back" || piece.use === "give-away";
  return isSized(piece) && piece.kind !== "length" && !stays;
}

function cutAreaOf(piece: CheckedPiece | undefined): number {
  if (piece === undefined || !isSized(piece)) return 0;
  return areaIn(piece) / (piece.kind === "triangle" ? 2 : 1);
}

/** What shows once every side is sewn. The sides of a triangle move in by the seam too: it shrinks about its incircle. */
function finishedOf(piece: CheckedSized, seam: Length): number {
  const { width, height } = piece;
  if (piece.kind !== "triangle") return Math.max(0, width - 2 * seam) * Math.max(0, height - 2 * seam);
  const incircle = (width + height - Math.hypot(width, height)) / 2;
  return (areaIn(piece) / 2) * (Math.max(0, incircle - seam) / incircle) ** 2;
}

// ---- Trim waste

/**
 * What is trimmed off the pieces used and is too small for the shelf. The pieces of a unit count among those used, but
 * what its diagonals take is no trim; slabs are not counted.
 */
function trimWasteOf(cells: readonly Cell[], input: CheckInput, heap: Heap): number {
  const used = cutFrom(cells.filter(isPieceCell), heap);
  const finished =
    sum(used.map(({ piece }) => finishedOf(piece, input.seam))) +
    sum(cells.map(({ node }) => (node.kind === "unit" ? finishedOfUnit(node, input.seam, heap) : 0)));
  return finished > 0 ? sum(used.map(wasteOf)) / finished : 0;
}

function finishedOfUnit({ pieces }: UnitNode, seam: Length, heap: Heap): number {
  return sum(
    pieces.map(({ piece, count }) => {
      const row = heap.get(piece);
      return row !== undefined && isSized(row) ? count * finishedOf(row, seam) : 0;
    }),
  );
}

/** One piece of the heap and the cells cut from it. */
type Used = { readonly piece: CheckedSized; readonly cells: readonly [PieceCell, ...PieceCell[]] };

function cutFrom(cells: readonly PieceCell[], heap: Heap): Used[] {
  const copies = new Map<string, [PieceCell, ...PieceCell[]]>();
  for (const [index, cell] of cells.entries()) {
    const { piece, copy } = cell.node;
    const key = copy === undefined ? `leaf ${index}` : `${copy} of ${piece}`;
    const group = copies.get(key);
    if (group === undefined) copies.set(key, [cell]);
    else group.push(cell);
  }
  return [...copies.values()].flatMap((group) => {
    const piece = heap.get(group[0].node.piece);
    return piece !== undefined && isSized(piece) ? [{ piece, cells: group }] : [];
  });
}

function wasteOf({ piece, cells }: Used): number {
  const inCells = sum(cells.map(({ cut }) => areaIn(cut)));
  return cutAreaOf(piece) - inCells - backToShelf({ piece, cells });
}

/** The end of a piece that is cut across its longer side goes back if it is at least 2 × 5 in. */
function backToShelf({ piece, cells }: Used): number {
  const ends = axesOf(piece).flatMap((along) => {
    if (along === null || !(mayBeCutUp(piece) || piece.kind === "strip")) return [];
    const left = piece[along] - sum(cells.map((cell) => takenFrom(cell)[along]));
    const across = along === "width" ? piece.height : piece.width;
    const kept = Math.min(left, across) >= inches(2) && Math.max(left, across) >= inches(5);
    return kept ? [left * across] : [];
  });
  return Math.max(0, ...ends);
}

// ---- Seams

function seamsOf(
  joins: readonly Joined[],
  units: readonly UnitNode[],
  inside: (unit: UnitNode) => { readonly joins: number; readonly sewn: number },
): { joins: number; seamLength: Length } {
  const inUnits = units.map(inside);
  const between = sum(joins.map(({ node }) => node.parts.length - 1));
  const sewn = sum(joins.map(({ node, cut }) => (node.parts.length - 1) * cut[sideAcross(node)]));
  return {
    joins: between + sum(inUnits.map((unit) => unit.joins)),
    seamLength: length(Math.round(sewn + sum(inUnits.map((unit) => unit.sewn)))),
  };
}

function sideAcross({ direction }: JoinNode): "width" | "height" {
  return direction === "beside" ? "height" : "width";
}
