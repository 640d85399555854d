import type { Fabric, Kind, Piece } from "../cloth/index.ts";
import type { LeafNode, PieceNode, Quarter, SlabNode, UnitNode } from "../layout/index.ts";
import { type Length, length } from "../length/index.ts";
import type { Patch, Point, Rect } from "./types.ts";

/** A leftover as a drawing needs it. */
export type DrawnPiece = Pick<Piece, "id" | "kind" | "fabric" | "direction">;

/** The heap as a drawing needs it. */
export type Cloths = {
  readonly pieces: ReadonlyMap<string, DrawnPiece>;
  readonly fabrics: ReadonlyMap<string, Fabric>;
};

export function clothsOf(job: {
  readonly pieces: readonly DrawnPiece[];
  readonly fabrics: readonly Fabric[];
}): Cloths {
  return {
    pieces: new Map(job.pieces.map((piece) => [piece.id, piece])),
    fabrics: new Map(job.fabrics.map((fabric) => [fabric.id, fabric])),
  };
}

/** The cloth that shows in a leaf's rectangle, in patches that tile it. */
export function patchesOf(node: LeafNode, rect: Rect, cloths: Cloths): readonly Patch[] {
  switch (node.kind) {
    case "cloth":
      return [patch(whole, rect, colourOf(node.fabric, cloths))];
    case "piece":
      return patchesOfPiece(node, rect, cloths);
    case "unit":
      return patchesOfUnit(node, rect, cloths);
    case "slab":
      return patchesOfSlab(node, rect, cloths);
  }
}

// Shapes inside a cell are drawn in a square of side 1 and stretched over it.
type Corner = readonly [number, number];
type Outline = readonly Corner[];
type Colour = Pick<Patch, "fabric" | "lab" | "piece">;

const whole: Outline = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const upperLeft: Outline = [
  [0, 0],
  [1, 0],
  [0, 1],
];
const lowerRight: Outline = [
  [1, 0],
  [1, 1],
  [0, 1],
];

function patchesOfPiece(node: PieceNode, rect: Rect, cloths: Cloths): Patch[] {
  const piece = cloths.pieces.get(node.piece);
  const colours = coloursOfPiece(piece, cloths);
  if (piece?.kind !== "half-square-triangle") return [patch(whole, rect, first(colours))];
  return halfSquare(node.quarter ?? 0, rect, colours);
}

/** At no turn the first colour lies in the upper left corner; each quarter turns it clockwise. */
function halfSquare(quarter: Quarter, rect: Rect, colours: readonly Colour[]): Patch[] {
  const [one = unknown, other = secondTone(one)] = colours;
  return [patch(turned(upperLeft, quarter), rect, one), patch(turned(lowerRight, quarter), rect, other)];
}

function patchesOfUnit(node: UnitNode, rect: Rect, cloths: Cloths): Patch[] {
  const parts = partsOfUnit(node, cloths);
  const colours = parts.map((part) => first(part.colours));
  switch (node.pattern) {
    case "half-square-triangle":
      return halfSquare(node.rotations?.[0] ?? 0, rect, colours);
    case "hourglass":
      return hourglassSides.map((side, i) => patch(turned(topQuarter, side), rect, cyclic(colours, i)));
    case "square-in-square":
      return squareInSquare(rect, colours);
    case "on-point":
      return onPoint(node, rect, colours);
    default:
      return inGrid(squaresOf(parts), node, rect);
  }
}

/** Two triangles of one cloth lie across from each other. */
const hourglassSides = [0, 2, 1, 3] as const;

type UnitPart = { readonly kind: Kind | "cloth"; readonly colours: readonly Colour[] };

function partsOfUnit(node: UnitNode, cloths: Cloths): UnitPart[] {
  const pieces = node.pieces.flatMap(({ piece, count }) => {
    const found = cloths.pieces.get(piece);
    const part: UnitPart = { kind: found?.kind ?? "odd", colours: coloursOfPiece(found, cloths) };
    return Array.from({ length: count }, () => part);
  });
  const cloth = node.cloth.flatMap(({ fabric, count }) => {
    const part: UnitPart = { kind: "cloth", colours: [colourOf(fabric, cloths)] };
    return Array.from({ length: count }, () => part);
  });
  return [...pieces, ...cloth];
}

/** Loose triangles are sewn in pairs first, one of the first half of them to one of the second. */
function squaresOf(parts: readonly UnitPart[]): readonly UnitPart[] {
  const triangles = parts.filter(({ kind }) => kind === "triangle").map(({ colours }) => first(colours));
  const half = Math.ceil(triangles.length / 2);
  const pairs = triangles.slice(0, half).map((one, index): UnitPart => {
    const other = triangles[half + index];
    return { kind: "half-square-triangle", colours: other ? [one, other] : [one] };
  });
  return [...parts.filter(({ kind }) => kind !== "triangle"), ...pairs];
}

/** How half-square triangles lie in a pattern that doesn't say: read line by line. */
const usualTurns: Readonly<Record<string, readonly Quarter[]>> = {
  pinwheel: [1, 2, 0, 3],
  "broken-dishes": [0, 3, 1, 2],
  diamond: [0, 1, 3, 2],
};

const topQuarter: Outline = [
  [0, 0],
  [1, 0],
  [0.5, 0.5],
];
const cornerHalf: Outline = [
  [0, 0],
  [0.5, 0],
  [0, 0.5],
];
const diamond: Outline = [
  [0.5, 0],
  [1, 0.5],
  [0.5, 1],
  [0, 0.5],
];

function squareInSquare(rect: Rect, [middle = unknown, ...corners]: readonly Colour[]): Patch[] {
  const around = corners.length > 0 ? corners : [secondTone(middle)];
  return [
    patch(diamond, rect, middle),
    ...[0, 1, 2, 3].map((corner) => patch(turned(cornerHalf, corner), rect, cyclic(around, corner))),
  ];
}

/** Blocks standing on a corner, side by side, with the setting triangles' cloth between them and in the corners. */
function onPoint(node: UnitNode, rect: Rect, colours: readonly Colour[]): Patch[] {
  const blocks = node.pieces.reduce((total, { count }) => total + count, 0);
  const setting = colours[blocks] ?? secondTone(first(colours));
  const standing = node.width < node.height;
  return inLine(blocks).map(({ outline, block }) =>
    patch(
      standing ? outline.map(([x, y]): Corner => [y, x]) : outline,
      rect,
      block === null ? setting : cyclic(colours, block),
    ),
  );
}

/** Outlines of so many blocks on point in a line across, and of what lies between them; `block` null: plain. */
function inLine(blocks: number): { readonly outline: Outline; readonly block: number | null }[] {
  const at = (halves: number) => halves / (2 * blocks);
  const edges = [0, 1] as const;
  const standing = Array.from({ length: blocks }, (_, block) => {
    const [left, middle, right] = [at(2 * block), at(2 * block + 1), at(2 * block + 2)];
    const outline: Outline = [
      [middle, 0],
      [right, 0.5],
      [middle, 1],
      [left, 0.5],
    ];
    return { block, outline };
  });
  const between = Array.from({ length: blocks - 1 }, (_, block) =>
    edges.map(
      (edge): Outline => [
        [at(2 * block + 1), edge],
        [at(2 * block + 3), edge],
        [at(2 * block + 2), 0.5],
      ],
    ),
  ).flat();
  const corners = edges.flatMap((end) =>
    edges.map(
      (edge): Outline => [
        [end, edge],
        [end === 0 ? at(1) : 1 - at(1), edge],
        [end, 0.5],
      ],
    ),
  );
  return [...standing, ...[...between, ...corners].map((outline) => ({ outline, block: null }))];
}

/** Like parts in equal rows, read line by line: how sets with diagonals inside are laid. */
function inGrid(parts: readonly UnitPart[], { pattern, rotations }: UnitNode, rect: Rect): Patch[] {
  const columns = columnsFor(parts.length, rect);
  const rows = Math.ceil(parts.length / columns);
  return parts.flatMap(({ kind, colours }, index) => {
    const row = slice(rect, Math.floor(index / columns), rows, false);
    const place = slice(row, index % columns, columns, true);
    if (kind !== "half-square-triangle") return [patch(whole, place, first(colours))];
    return halfSquare(rotations?.[index] ?? usualTurns[pattern]?.[index] ?? 0, place, colours);
  });
}

function columnsFor(count: number, { width, height }: Rect): number {
  const fitting = Array.from({ length: count }, (_, index) => index + 1).filter(
    (columns) => count % columns === 0,
  );
  const squareness = (columns: number) => Math.abs(Math.log((width / columns / height) * (count / columns)));
  return fitting.reduce((best, next) => (squareness(next) < squareness(best) ? next : best), 1);
}

function slice(rect: Rect, index: number, count: number, across: boolean): Rect {
  const side = across ? rect.width : rect.height;
  const from = Math.round((side * index) / count);
  const part = length(Math.round((side * (index + 1)) / count) - from);
  return across
    ? { ...rect, x: length(rect.x + from), width: part }
    : { ...rect, y: length(rect.y + from), height: part };
}

// One slanted cut down the middle, then odd ones to either side, as crumbs are sewn by eye.
const byEye: readonly Outline[] = [
  [
    [0, 0],
    [0.42, 0],
    [0.3896, 0.38],
    [0, 0.3],
  ],
  [
    [0, 0.3],
    [0.3896, 0.38],
    [0.3704, 0.62],
    [0, 0.68],
  ],
  [
    [0, 0.68],
    [0.3704, 0.62],
    [0.34, 1],
    [0, 1],
  ],
  [
    [0.42, 0],
    [1, 0],
    [1, 0.34],
    [0.4008, 0.24],
  ],
  [
    [0.4008, 0.24],
    [1, 0.34],
    [1, 0.52],
    [0.3752, 0.56],
  ],
  [
    [0.3752, 0.56],
    [1, 0.52],
    [1, 0.76],
    [0.3544, 0.82],
  ],
  [
    [0.3544, 0.82],
    [1, 0.76],
    [1, 1],
    [0.34, 1],
  ],
];

/** How a slab will look can't be known; that it is many bits in no order can be shown. */
function patchesOfSlab(node: SlabNode, rect: Rect, cloths: Cloths): Patch[] {
  const ids = [
    ...(node.crumbs === undefined ? [] : [node.crumbs]),
    ...(node.pieces ?? []).map((p) => p.piece),
  ];
  const colours = ids.flatMap((id) => coloursOf(cloths.pieces.get(id)?.fabric ?? "", cloths));
  const turns = Math.round((rect.x / 8128) * 3 + (rect.y / 8128) * 5);
  return byEye.map((outline, index) =>
    patch(turned(outline, turns), rect, cyclic(colours, index * 3 + turns)),
  );
}

const unknown: Colour = { fabric: "", lab: null };

function colourOf(fabric: string, cloths: Cloths): Colour {
  return first(coloursOf(fabric, cloths));
}

function coloursOfPiece(piece: DrawnPiece | undefined, cloths: Cloths): readonly Colour[] {
  const colours = coloursOf(piece?.fabric ?? "", cloths);
  return piece === undefined ? colours : colours.map((colour) => ({ ...colour, piece: piece.id }));
}

function coloursOf(fabric: string, cloths: Cloths): readonly Colour[] {
  const colours = cloths.fabrics.get(fabric)?.colours ?? [];
  return colours.length === 0 ? [{ fabric, lab: null }] : colours.map(({ lab }) => ({ fabric, lab }));
}

/** The other half of a sewn triangle of which one colour is known: the same hue, plainly lighter or darker. */
function secondTone({ fabric, lab }: Colour): Colour {
  if (lab === null) return { fabric, lab };
  return { fabric, lab: { l: lab.l > 65 ? lab.l - 22 : lab.l + 24, a: lab.a * 0.6, b: lab.b * 0.6 } };
}

function first(colours: readonly Colour[]): Colour {
  return colours[0] ?? unknown;
}

function cyclic(colours: readonly Colour[], index: number): Colour {
  return colours[index % Math.max(1, colours.length)] ?? unknown;
}

/** Quarter turns clockwise about the middle of the square. */
function turned(outline: Outline, turns: number): Outline {
  return turns % 4 === 0
    ? outline
    : turned(
        outline.map(([x, y]) => [1 - y, x]),
        (turns % 4) - 1,
      );
}

function patch(outline: Outline, rect: Rect, colour: Colour): Patch {
  return { outline: outline.map((corner) => pointIn(rect, corner)), ...colour };
}

function pointIn(rect: Rect, [x, y]: Corner): Point {
  return { x: along(rect.x, rect.width, x), y: along(rect.y, rect.height, y) };
}

function along(from: Length, side: Length, share: number): Length {
  return length(from + Math.round(side * share));
}
