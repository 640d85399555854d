import { inches, type Length, length, type Size } from "../length/index.ts";
import type { CheckInput } from "./checker-input.ts";
import type { LayoutProblem, Side, TreePath } from "./problems.ts";
import type { JoinNode, LayoutNode, LeafNode, LeftLong, Seams } from "./types.ts";

/** No back needs more; a file that does would only keep the machine busy. */
export const deepestJoin = 500;
export const mostCells = 20_000;

/** A leaf as it lies: its place, its cut size, and what smallest size it is held to. */
export type Cell<N extends LeafNode = LeafNode> = {
  readonly node: N;
  readonly path: TreePath;
  /** From the layout's upper left corner, finished. */
  readonly x: Length;
  readonly y: Length;
  /** The cell and the nearest seam on each of its four sides. */
  readonly cut: Size;
  /** What is cut out for it: where it is left long beside a long join, more than that. */
  readonly taken: Size;
  /** It lies at the edge of the back. */
  readonly outer: boolean;
  /** It lies in a join with a pattern: one of a set of like pieces. */
  readonly inSet: boolean;
};

/** A join and what it measures before it is sewn in: its own seams are as long as its cut size across them. */
export type Joined = { readonly node: JoinNode; readonly cut: Size };

export type Survey = {
  readonly cells: readonly Cell[];
  readonly joins: readonly Joined[];
  readonly problems: readonly LayoutProblem[];
  /** False where sizes or depth leave nothing to hold the cells against. */
  readonly sound: boolean;
};

/**
 * Walks the tree once: exact tiling, equal edges, seams, flatness of nesting. Lists every leaf with its cut size,
 * reckoned from the seams of the joins above it and not from anything the plan says.
 */
export function surveyTree(input: CheckInput): Survey {
  const found: Found = { cells: [], joins: [], problems: [], nodes: 0, sound: true };
  found.problems.push(...rootProblems(input));
  const { seam } = input;
  visit(
    {
      node: input.layout,
      path: [],
      x: length(0),
      y: length(0),
      seams: { left: seam, right: seam, top: seam, bottom: seam },
      outer: { left: true, right: true, top: true, bottom: true },
      inSet: false,
    },
    input,
    found,
  );
  return found;
}

type Found = {
  cells: Cell[];
  joins: Joined[];
  problems: LayoutProblem[];
  nodes: number;
  sound: boolean;
};

type Outer = Readonly<Record<keyof Seams, boolean>>;

type Visit = {
  readonly node: LayoutNode;
  readonly path: TreePath;
  readonly x: Length;
  readonly y: Length;
  readonly seams: Seams;
  readonly outer: Outer;
  readonly inSet: boolean;
};

function rootProblems({ layout, back, seam }: CheckInput): LayoutProblem[] {
  const expected = { width: length(back.width - 2 * seam), height: length(back.height - 2 * seam) };
  if (layout.width === expected.width && layout.height === expected.height) return [];
  return [{ kind: "layout-not-the-back", path: [], expected, actual: sizeOf(layout) }];
}

function visit(at: Visit, input: CheckInput, found: Found): void {
  if (!isSound(at, input.seam, found)) return;
  const { node, path } = at;
  if (node.kind !== "join") {
    found.cells.push(cellOf(at, node));
    return;
  }
  found.joins.push({ node, cut: cutOf(at) });
  found.problems.push(...joinProblems(node, path, input));
  let { x, y } = at;
  for (const [index, part] of node.parts.entries()) {
    visit(partOf(at, node, { index, part, x, y }), input, found);
    if (node.direction === "beside") x = length(x + whole(part.width));
    else y = length(y + whole(part.height));
  }
}

function isSound(at: Visit, seam: Length, found: Found): boolean {
  const problem = unsound(at, seam, found);
  if (problem === undefined) return true;
  if (found.sound || problem.kind === "size-not-positive") found.problems.push(problem);
  found.sound = false;
  return false;
}

function unsound({ node, path }: Visit, seam: Length, found: Found): LayoutProblem | undefined {
  found.nodes += 1;
  if (found.nodes > 2 * mostCells) return { kind: "too-many-cells", path: [], most: mostCells };
  if (path.length > deepestJoin) return { kind: "too-deep", path, most: deepestJoin };
  if (!isSize(node.width) || !isSize(node.height)) {
    return { kind: "size-not-positive", path, actual: sizeOf(node) };
  }
  if (node.kind !== "join" || isSize(node.seam + 1)) return undefined;
  return { kind: "wrong-seam", path, expected: seam, actual: node.seam };
}

/** Far above any back, and small enough that no sum of cells overflows. */
const longest = inches(100_000);

function isSize(size: number): boolean {
  return Number.isSafeInteger(size) && size > 0 && size <= longest;
}

/** A part that is no length is a problem of its own; what lies after it keeps a place. */
function whole(size: Length): number {
  return isSize(size) ? size : 0;
}

function cellOf(at: Visit, node: LeafNode): Cell {
  const { path, x, y, outer, inSet } = at;
  const atEdge = outer.left || outer.right || outer.top || outer.bottom;
  const cut = cutOf(at);
  return { node, path, x, y, cut, taken: takenOf(node, cut), outer: atEdge, inSet };
}

function takenOf(node: LeafNode, cut: Size): Size {
  const { width = 0, height = 0 } = leftLongOf(node);
  return { width: length(cut.width + width), height: length(cut.height + height) };
}

/** Nothing of what is sewn before it is laid. */
export function leftLongOf(node: LeafNode): LeftLong {
  return node.kind === "piece" || node.kind === "cloth" ? (node.leftLong ?? {}) : {};
}

function cutOf({ node, seams }: Visit): Size {
  return {
    width: length(node.width + seams.left + seams.right),
    height: length(node.height + seams.top + seams.bottom),
  };
}

type Part = {
  readonly index: number;
  readonly part: LayoutNode;
  readonly x: Length;
  readonly y: Length;
};

/** A part inherits what surrounds its join, save on the sides where it is sewn to a neighbour. */
function partOf(at: Visit, join: JoinNode, { index, part, x, y }: Part): Visit {
  const [before, after]: [keyof Seams, keyof Seams] =
    join.direction === "beside" ? ["left", "right"] : ["top", "bottom"];
  const seams = { ...at.seams };
  const outer = { ...at.outer };
  if (index > 0) {
    seams[before] = join.seam;
    outer[before] = false;
  }
  if (index < join.parts.length - 1) {
    seams[after] = join.seam;
    outer[after] = false;
  }
  const inSet = at.inSet || join.pattern !== undefined;
  return { node: part, path: [...at.path, index], x, y, seams, outer, inSet };
}

function joinProblems(join: JoinNode, path: TreePath, input: CheckInput): LayoutProblem[] {
  return [
    ...partCountProblems(join, path),
    ...sumProblems(join, path),
    ...edgeProblems(join, path),
    ...seamProblems(join, path, input),
    ...nestingProblems(join, path),
  ];
}

function partCountProblems(join: JoinNode, path: TreePath): LayoutProblem[] {
  return join.parts.length >= 2 ? [] : [{ kind: "too-few-parts", path, parts: join.parts.length }];
}

function sumProblems(join: JoinNode, path: TreePath): LayoutProblem[] {
  const along = sideAlong(join);
  const actual = length(join.parts.reduce((total, part) => total + whole(part[along]), 0));
  const expected = join[along];
  if (actual === expected) return [];
  return [{ kind: "parts-do-not-add-up", path, direction: join.direction, expected, actual }];
}

function edgeProblems(join: JoinNode, path: TreePath): LayoutProblem[] {
  const side: Side = sideAlong(join) === "width" ? "height" : "width";
  const expected = join[side];
  return join.parts.flatMap((part, index): LayoutProblem[] => {
    const actual = part[side];
    if (actual === expected) return [];
    return [{ kind: "edges-not-equal", path: [...path, index], side, expected, actual }];
  });
}

function seamProblems(join: JoinNode, path: TreePath, input: CheckInput): LayoutProblem[] {
  const plain = join.parts.every((part) => part.kind === "cloth");
  const expected = plain ? input.plainSeam : input.seam;
  return join.seam === expected ? [] : [{ kind: "wrong-seam", path, expected, actual: join.seam }];
}

function nestingProblems(join: JoinNode, path: TreePath): LayoutProblem[] {
  return join.parts.flatMap((part, index): LayoutProblem[] => {
    const flat = part.kind === "join" && part.direction === join.direction && part.seam === join.seam;
    if (!flat || part.pattern !== undefined) return [];
    return [{ kind: "join-not-flattened", path: [...path, index], direction: join.direction }];
  });
}

function sideAlong(join: JoinNode): Side {
  return join.direction === "beside" ? "width" : "height";
}

function sizeOf(node: Size): Size {
  return { width: node.width, height: node.height };
}
