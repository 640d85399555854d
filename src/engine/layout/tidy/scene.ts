import type { ClothNode, LayoutNode, LeafNode, Quarter } from "../types.ts";
import type { Bough, Fork, Way } from "./bough.ts";

export type Box = { readonly x: number; readonly y: number; readonly right: number; readonly bottom: number };

/** A cell where it lies, and the leaf it is in. */
export type Cell = Box & {
  readonly node: LeafNode;
  readonly way: Way;
  readonly spot: number;
  readonly cloth: ClothNode | null;
  /** In a set of like pieces. */
  readonly inSet: boolean;
  readonly falling: boolean;
  readonly rising: boolean;
  /** Of a quarter: the unit it is in. */
  readonly whole?: Cell;
};

/** A seam: `upright` at an x, from and to a y. `index`: the part of the fork at `way` before it; −1 inside a leaf. */
export type Line = {
  readonly upright: boolean;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly way: Way;
  readonly index: number;
};

/** The cells on both sides of a seam, each in order along it. */
export type Banks = readonly [readonly Cell[], readonly Cell[]];

/** The cells that have that side there. */
type Index = { get(at: number): readonly Cell[] | undefined };
export type Sides = {
  readonly left: Index;
  readonly right: Index;
  readonly top: Index;
  readonly bottom: Index;
};

/** Cells and seams to look at, and what lies round them. */
export type Scene = {
  readonly root: Bough;
  readonly cells: readonly Cell[];
  readonly sides: Sides;
  /** Units of four half-square triangles in their quarters, all others as they are. */
  readonly quarters: readonly Cell[];
  readonly lines: readonly Line[];
  /** Of each line, units of four half-square triangles in their quarters. */
  readonly banks: readonly Banks[];
};

/** A layout with all that is in it. */
export type WholeScene = Scene & { readonly view: View; readonly quarterSides: Sides };

/**
 * Looks at layouts that are much alike one after the other: what lies where it lay before is not looked at again, nor
 * are its ways made again.
 */
export class Viewer {
  private readonly isHalf: (node: LayoutNode) => boolean;
  private readonly trunk = new Trail([]);
  private readonly seen = new WeakMap<Bough, View>();

  constructor(isHalf: (node: LayoutNode) => boolean) {
    this.isHalf = isHalf;
  }

  sceneOf(root: Bough): WholeScene {
    const view = this.viewOf(root);
    const { cells, lines } = view;
    const quarters = quartersIn(cells);
    const sides = sidesOf(cells);
    const quarterSides = quarters === cells ? sides : sidesOf(quarters);
    const banks = lines.map((line) => banksOf(line, quarterSides));
    return { root, view, cells, sides, quarters, quarterSides, lines, banks };
  }

  viewOf(bough: Bough, x = 0, y = 0, trail = this.trunk): View {
    const before = this.seen.get(bough);
    if (before !== undefined && before.x === x && before.y === y && before.trail === trail) return before;
    const view: View = { bough, x, y, trail, cells: [], lines: [], own: [], parts: [] };
    if (bough.kind === "leaf") this.enter(bough.node, x, y, { view, spot: bough.spot, inSet: false });
    else this.enterParts(bough, view);
    this.seen.set(bough, view);
    return view;
  }

  private enterParts({ beside, parts, width, height }: Fork, view: View): void {
    const { x, y, trail, cells, lines } = view;
    let along = 0;
    for (const [index, part] of parts.entries()) {
      if (index > 0) {
        const line = lineAt({ beside, width, height }, along, { x, y, trail, index: index - 1 });
        lines.push(line);
        view.own.push(line);
      }
      const own = this.viewOf(part, beside ? x + along : x, beside ? y : y + along, trail.at(index));
      view.parts.push(own);
      for (const cell of own.cells) cells.push(cell);
      for (const line of own.lines) lines.push(line);
      along += beside ? part.width : part.height;
    }
  }

  /** What is kept as it was sewn has one way for all that is in it. */
  private enter(node: LayoutNode, x: number, y: number, { view, spot, inSet }: Belonging): void {
    if (node.kind !== "join") {
      const { falling, rising } = this.diagonals(node);
      const [right, bottom, { way }] = [x + node.width, y + node.height, view.trail];
      const cloth = node.kind === "cloth" ? node : null;
      view.cells.push({ x, y, right, bottom, node, way, spot, cloth, inSet, falling, rising });
      return;
    }
    const beside = node.direction === "beside";
    const belonging = { view, spot, inSet: inSet || node.pattern !== undefined };
    let along = 0;
    for (const [index, part] of node.parts.entries()) {
      if (index > 0)
        view.lines.push(lineAt({ ...node, beside }, along, { x, y, trail: view.trail, index: -1 }));
      this.enter(part, beside ? x + along : x, beside ? y : y + along, belonging);
      along += beside ? part.width : part.height;
    }
  }

  private diagonals(node: LeafNode): Diagonals {
    if (node.kind === "piece") return this.isHalf(node) ? oneDiagonal(node.quarter ?? 0) : noDiagonal;
    if (node.kind !== "unit") return noDiagonal;
    if (node.pattern === "hourglass") return { falling: true, rising: true };
    if (node.pattern === "half-square-triangle") return oneDiagonal(node.rotations?.[0] ?? 0);
    return noDiagonal;
  }
}

/** What a bough shows where it lies. */
export type View = {
  readonly bough: Bough;
  readonly x: number;
  readonly y: number;
  readonly trail: Trail;
  readonly cells: Cell[];
  readonly lines: Line[];
  /** Of the lines, those between its parts. */
  readonly own: Line[];
  readonly parts: View[];
};
type Belonging = { readonly view: View; readonly spot: number; readonly inSet: boolean };

/** A way, made once. */
export class Trail {
  readonly way: Way;
  private readonly on: Trail[] = [];

  constructor(way: Way) {
    this.way = way;
  }

  at(index: number): Trail {
    const known = this.on[index];
    if (known !== undefined) return known;
    const made = new Trail([...this.way, index]);
    this.on[index] = made;
    return made;
  }
}

type Crossed = { readonly beside: boolean; readonly width: number; readonly height: number };
type LineAt = { readonly x: number; readonly y: number; readonly trail: Trail; readonly index: number };

export function lineAt(
  { beside, width, height }: Crossed,
  along: number,
  { x, y, trail, index }: LineAt,
): Line {
  const { way } = trail;
  return beside
    ? { upright: true, at: x + along, from: y, to: y + height, way, index }
    : { upright: false, at: y + along, from: x, to: x + width, way, index };
}

type Diagonals = { readonly falling: boolean; readonly rising: boolean };
const noDiagonal: Diagonals = { falling: false, rising: false };

function oneDiagonal(quarter: Quarter): Diagonals {
  return { falling: quarter % 2 === 1, rising: quarter % 2 === 0 };
}

const usualTurns: Readonly<Record<string, readonly [Quarter, Quarter, Quarter, Quarter]>> = {
  pinwheel: [1, 2, 0, 3],
  "broken-dishes": [0, 3, 1, 2],
  diamond: [0, 1, 3, 2],
};

function turnsOf(node: LeafNode): readonly Quarter[] | null {
  if (node.kind !== "unit") return null;
  const usual = usualTurns[node.pattern];
  return usual === undefined ? null : usual.map((turn, at) => node.rotations?.[at] ?? turn);
}

export function quartersIn(cells: readonly Cell[]): readonly Cell[] {
  return cells.some(({ node }) => turnsOf(node) !== null) ? cells.flatMap(quartersOf) : cells;
}

function quartersOf(cell: Cell): Cell[] {
  const turns = turnsOf(cell.node);
  if (turns === null) return [cell];
  const [middle, centre] = [(cell.x + cell.right) / 2, (cell.y + cell.bottom) / 2];
  return turns.map((turn, at) => ({
    ...cell,
    whole: cell,
    ...(at % 2 === 0 ? { right: middle } : { x: middle }),
    ...(at < 2 ? { bottom: centre } : { y: centre }),
    ...oneDiagonal(turn),
  }));
}

export function sidesOf(cells: readonly Cell[]): Sides {
  const left = new Map<number, Cell[]>();
  const right = new Map<number, Cell[]>();
  const top = new Map<number, Cell[]>();
  const bottom = new Map<number, Cell[]>();
  for (const cell of cells) {
    file(left, cell.x, cell);
    file(right, cell.right, cell);
    file(top, cell.y, cell);
    file(bottom, cell.bottom, cell);
  }
  return { left, right, top, bottom };
}

function file(index: Map<number, Cell[]>, at: number, cell: Cell): void {
  const row = index.get(at);
  if (row === undefined) index.set(at, [cell]);
  else row.push(cell);
}

const none: readonly Cell[] = [];

/** What touches a box before it and after it, left to right (`wide`) or top to bottom. */
export function before(box: Box, wide: boolean, { right, bottom }: Sides): readonly Cell[] {
  return wide
    ? (right.get(box.x) ?? none).filter((cell) => cell.y < box.bottom && cell.bottom > box.y)
    : (bottom.get(box.y) ?? none).filter((cell) => cell.x < box.right && cell.right > box.x);
}

export function after(box: Box, wide: boolean, { left, top }: Sides): readonly Cell[] {
  return wide
    ? (left.get(box.right) ?? none).filter((cell) => cell.y < box.bottom && cell.bottom > box.y)
    : (top.get(box.bottom) ?? none).filter((cell) => cell.x < box.right && cell.right > box.x);
}

export function banksOf({ at, from, to, upright }: Line, { left, right, top, bottom }: Sides): Banks {
  const [ones, others] = upright ? [right, left] : [bottom, top];
  return [bank(ones.get(at), from, to, upright), bank(others.get(at), from, to, upright)];
}

function bank(cells: readonly Cell[] | undefined, from: number, to: number, upright: boolean): Cell[] {
  if (cells === undefined) return [];
  if (upright)
    return cells.filter((cell) => cell.y < to && cell.bottom > from).sort((one, other) => one.y - other.y);
  return cells.filter((cell) => cell.x < to && cell.right > from).sort((one, other) => one.x - other.x);
}

export function span(box: Box, wide: boolean): number {
  return wide ? box.right - box.x : box.bottom - box.y;
}
