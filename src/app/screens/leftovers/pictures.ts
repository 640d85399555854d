import type { Piece } from "../../../engine/cloth/index.ts";
import { centimetres, inches, type Length, larger, length, type Size } from "../../../engine/length/index.ts";

/** Drawn in the drawing's own units: lengths, from the upper left corner. */
export type PieceShape = {
  readonly kind: "box" | "triangle" | "two-triangles" | "loose";
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
};

/** All the pieces of one row, beside and below one another as they would be laid out to count them. */
export type RowPicture = Size & {
  readonly shapes: readonly PieceShape[];
  /** How many more there are than are drawn. */
  readonly more: number;
};

const gap = inches(3, 4);
const mostDrawn = 24;
/** Pieces are laid beside one another no wider than this, the width of cloth. */
const widestRow = inches(42);

/** A row of the heap as a drawing to scale. Strips and lengths lie down. */
export function pictureOf(piece: Piece): RowPicture {
  const one = lyingSize(piece);
  const drawn = Math.min(piece.count, mostDrawn);
  const columns = columnsFor(one, drawn);
  const kind = shapeKind(piece);
  const shapes = Array.from({ length: drawn }, (_, index): PieceShape => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    return { kind, ...one, x: placeAt(column, one.width), y: placeAt(row, one.height) };
  });
  return {
    width: spanOf(columns, one.width),
    height: spanOf(Math.ceil(drawn / columns), one.height),
    shapes,
    more: piece.count - drawn,
  };
}

function shapeKind({ kind }: Piece): PieceShape["kind"] {
  switch (kind) {
    case "triangle":
      return "triangle";
    case "half-square-triangle":
      return "two-triangles";
    case "crumbs":
      return "loose";
    default:
      return "box";
  }
}

function lyingSize(piece: Piece): Size {
  if (piece.kind === "crumbs") return squareOf(piece.area);
  const { width, height } = piece;
  const lies = (piece.kind === "strip" || piece.kind === "length") && height > width;
  return lies ? { width: height, height: width } : { width, height };
}

/** Nobody knows the shape of crumbs: a square of as much cloth. */
function squareOf(amount: number): Size {
  const side = length(Math.max(1, Math.round(Math.sqrt(amount))));
  return { width: side, height: side };
}

// Strips below one another; everything else in rows, about as wide as they are tall.
function columnsFor({ width, height }: Size, count: number): number {
  const fitting = Math.max(1, Math.floor((widestRow + gap) / (width + gap)));
  const square = Math.ceil(Math.sqrt((count * (height + gap)) / (width + gap)));
  return Math.max(1, Math.min(count, fitting, square));
}

function placeAt(index: number, side: Length): Length {
  return length(index * (side + gap));
}

function spanOf(count: number, side: Length): Length {
  return length(count * side + (count - 1) * gap);
}

/** The corners of a shape, as SVG takes them. */
export function outlineOf({ kind, x, y, width, height }: PieceShape): string {
  // The right angle lies at the lower left.
  return kind === "triangle"
    ? `M${x} ${y}V${y + height}H${x + width}Z`
    : `M${x} ${y}h${width}v${height}h${-width}Z`;
}

/** The seam inside two triangles that are sewn; null: there is none. */
export function seamInside({ kind, x, y, width, height }: PieceShape): string | null {
  return kind === "two-triangles" ? `M${x} ${y + height}L${x + width} ${y}` : null;
}

/** Never so little is drawn across the whole place that crumbs look huge. */
const leastAcross = inches(36);

/** What the place must be wide for all of these to be drawn to one scale. */
export function widthAcross(pictures: readonly Size[]): Length {
  return pictures.reduce((most, { width }) => larger(most, width), leastAcross);
}

/** The pictures of all rows by their ids, and what they are wide together. */
export function picturesOf(rows: readonly { readonly id: string; readonly piece: Piece }[]) {
  const pictures = new Map(rows.map(({ id, piece }) => [id, pictureOnce(piece)]));
  return { pictures, across: widthAcross([...pictures.values()]) };
}

// The same piece is the same picture, so that a row that did not change is not drawn anew.
const drawn = new WeakMap<Piece, RowPicture>();

function pictureOnce(piece: Piece): RowPicture {
  const picture = drawn.get(piece) ?? pictureOf(piece);
  drawn.set(piece, picture);
  return picture;
}

/** A ruler that fits. */
export function rulerFor(across: Length, unit: "in" | "cm"): Length {
  if (unit === "cm") return across > centimetres(160) ? centimetres(50) : centimetres(20);
  return across > inches(60) ? inches(18) : inches(12);
}

/** How much of the whole place a picture takes, 0 to 1. */
export function shareAcross({ width }: Size, across: Length): number {
  return width / across;
}
