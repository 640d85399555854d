import { type Finished, finished, type Length, length, type Size } from "../length/index.ts";
import { type CheckedSized, type CheckInput, type Heap, isSized } from "./checker-input.ts";
import { onPointProblems, seamsOnPoint } from "./checker-on-point.ts";
import { isQuarter, trimAllowed } from "./checker-pieces.ts";
import type { Cell } from "./checker-tree.ts";
import type { LayoutProblem, TreePath } from "./problems.ts";
import type { UnitNode } from "./types.ts";

/** A row that a unit takes from, and how many. */
type Taken = { readonly piece: CheckedSized; readonly count: number };

/** What one side of a unit may finish at. Not whole units of length: diagonals are not. */
type Range = { readonly least: number; readonly most: number };

type Ruler = { readonly seam: Length; readonly step: Length };

type Pattern = {
  /** Half-square triangles that lie in it, each with its turn. */
  readonly turns: number;
  /** Prints with an up lie in it all ways round. */
  readonly turnsCloth: boolean;
  /** Sides of the square it makes of these pieces; null: they do not make it. */
  readonly side: (pieces: readonly Taken[], ruler: Ruler) => Range | null;
};

/** The units known here, each with its own formula (derived from the right isosceles triangle). */
const patterns: ReadonlyMap<string, Pattern> = new Map<string, Pattern>([
  ["half-square-triangle", { turns: 1, turnsCloth: false, side: halfSquareTriangle }],
  ["hourglass", { turns: 0, turnsCloth: true, side: hourglass }],
  ["pinwheel", { turns: 4, turnsCloth: true, side: fourHalfSquareTriangles }],
  ["broken-dishes", { turns: 4, turnsCloth: true, side: fourHalfSquareTriangles }],
  ["diamond", { turns: 4, turnsCloth: true, side: fourHalfSquareTriangles }],
  ["square-in-square", { turns: 0, turnsCloth: true, side: squareInSquare }],
]);

/** Seams inside one unit of a known pattern, and how long they are together as they are sewn. */
export function seamsInside(
  unit: UnitNode,
  seam: Length,
  heap: Heap,
): { readonly joins: number; readonly sewn: number } {
  if (unit.pattern === "on-point") return seamsOnPoint(unit, seam, heap);
  const side = unit.width + 2 * seam;
  const diagonal = Math.round(Math.SQRT2 * side);
  if (unit.pattern === "half-square-triangle") return { joins: 1, sewn: diagonal };
  // Two pairs along half a diagonal each, then the whole diagonal.
  if (unit.pattern === "hourglass") return { joins: 3, sewn: 2 * diagonal };
  if (unit.pattern === "square-in-square") return { joins: 4, sewn: 4 * centreOf(unit, heap) };
  // Two short seams and one across; each pair of triangles adds the diagonal of a quarter.
  const pairs = trianglesOf(unit, heap) / 2;
  const quarter = unit.width / 2 + 2 * seam;
  return { joins: 3 + pairs, sewn: 2 * quarter + side + pairs * Math.round(Math.SQRT2 * quarter) };
}

/** How wide the square in the middle is, cut: each corner is sewn along one of its sides. */
function centreOf(unit: UnitNode, heap: Heap): number {
  const centre = takenBy(unit, heap).find(({ piece }) => piece.kind !== "triangle");
  return centre?.piece.width ?? 0;
}

function trianglesOf(unit: UnitNode, heap: Heap): number {
  const triangles = unit.pieces.filter(({ piece }) => heap.get(piece)?.kind === "triangle");
  return triangles.reduce((total, { count }) => total + count, 0);
}

/** Whatever has a diagonal inside: made of the right pieces and no larger than they give. */
export function unitProblems(cells: readonly Cell[], input: CheckInput, heap: Heap): LayoutProblem[] {
  return cells.flatMap(({ node, path }) =>
    node.kind === "unit" ? problemsOf(node, path, { input, heap }) : [],
  );
}

type Held = { readonly input: CheckInput; readonly heap: Heap };

function problemsOf(unit: UnitNode, path: TreePath, { input, heap }: Held): LayoutProblem[] {
  if (unit.pattern === "on-point") {
    const uses = unit.pieces.flatMap(({ piece }) => useProblems(piece, path, { heap, turnsCloth: true }));
    return [...uses, ...onPointProblems(unit, path, { seam: input.seam, heap })];
  }
  const pattern = patterns.get(unit.pattern);
  if (pattern === undefined) return [{ kind: "unknown-pattern", path, pattern: unit.pattern }];
  const problems = unit.pieces.flatMap(({ piece }) => useProblems(piece, path, { heap, ...pattern }));
  const side = turnsAreRight(unit, pattern) ? pattern.side(takenBy(unit, heap), input) : null;
  if (side === null || unit.cloth.length > 0) {
    return [...problems, { kind: "wrong-unit-parts", path, pattern: unit.pattern }];
  }
  return [...problems, ...sizeProblems(unit, path, side)];
}

function useProblems(
  id: string,
  path: TreePath,
  { heap, turnsCloth }: { readonly heap: Heap; readonly turnsCloth: boolean },
): LayoutProblem[] {
  const piece = heap.get(id);
  if (piece === undefined) return [{ kind: "unknown-piece", path, piece: id }];
  const problems: LayoutProblem[] = [];
  if (piece.use === "keep-back" || piece.use === "give-away") {
    problems.push({ kind: "not-to-be-used", path, piece: id, use: piece.use });
  }
  if (piece.direction === "one-way" && turnsCloth) {
    problems.push({ kind: "one-way-turned", path, piece: id });
  }
  return problems;
}

function turnsAreRight({ rotations }: UnitNode, { turns }: Pattern): boolean {
  return rotations === undefined || (rotations.length === turns && rotations.every(isQuarter));
}

function takenBy(unit: UnitNode, heap: Heap): Taken[] {
  return unit.pieces.flatMap(({ piece, count }) => {
    const row = heap.get(piece);
    return row !== undefined && isSized(row) && count >= 1 ? [{ piece: row, count }] : [];
  });
}

function sizeProblems(unit: UnitNode, path: TreePath, { least, most }: Range): LayoutProblem[] {
  const fits = [unit.width, unit.height].every((side) => side >= least && side <= most);
  if (fits && unit.width === unit.height) return [];
  return [
    {
      kind: "wrong-unit-size",
      path,
      pattern: unit.pattern,
      actual: { width: unit.width, height: unit.height },
      smallest: square(Math.ceil(least)),
      largest: square(Math.floor(most)),
    },
  ];
}

function square(side: number): Size<Finished> {
  return { width: finished(length(side)), height: finished(length(side)) };
}

// ---- The formulas

function halfSquareTriangle(pieces: readonly Taken[], ruler: Ruler): Range | null {
  if (countOf(pieces) !== 2) return null;
  return allFit(pieces.map(({ piece }) => rangeOfTriangle(piece, ruler, squareOfLegs(piece, ruler))));
}

/** Each quarter is one sewn half-square triangle, or two triangles still to be sewn. */
function fourHalfSquareTriangles(pieces: readonly Taken[], ruler: Ruler): Range | null {
  const quarters = pieces.reduce((total, { piece, count }) => total + count / trianglesIn(piece), 0);
  if (quarters !== 4) return null;
  const range = allFit(pieces.map(({ piece }) => rangeOfQuarter(piece, ruler)));
  return range && { least: 2 * range.least, most: 2 * range.most };
}

function hourglass(pieces: readonly Taken[], ruler: Ruler): Range | null {
  if (countOf(pieces) !== 4) return null;
  return allFit(pieces.map(({ piece }) => rangeOfTriangle(piece, ruler, squareOfLongSides(piece, ruler))));
}

/**
 * A square on its point, and four triangles with their right angles in the block's corners. From the middle to a raw
 * corner it is half the square, and the height of a triangle over its long side, less the seam.
 */
function squareInSquare(pieces: readonly Taken[], ruler: Ruler): Range | null {
  const corners = pieces.filter(({ piece }) => piece.kind === "triangle");
  const [centre, ...more] = pieces.filter(({ piece }) => piece.kind !== "triangle");
  if (centre?.count !== 1 || more.length > 0 || countOf(corners) !== 4 || !isSquare(centre.piece))
    return null;
  const side = centre.piece.width - 2 * ruler.seam;
  const toRawCorner = (leg: number) => side / 2 + leg / Math.SQRT2 - ruler.seam;
  const range = allFit(
    corners.map(({ piece }) =>
      rangeOfTriangle(piece, ruler, Math.SQRT2 * toRawCorner(piece.width) - 2 * ruler.seam),
    ),
  );
  // In a smaller block the square would lose its points.
  return range && { ...range, least: Math.max(range.least, Math.SQRT2 * side) };
}

function isSquare({ width, height }: Size): boolean {
  return width === height;
}

function trianglesIn({ kind }: CheckedSized): number {
  return kind === "triangle" ? 2 : 1;
}

function rangeOfQuarter(piece: CheckedSized, ruler: Ruler): Range | null {
  if (piece.kind === "triangle") return rangeOfTriangle(piece, ruler, squareOfLegs(piece, ruler));
  if (piece.kind !== "half-square-triangle" || piece.width !== piece.height) return null;
  const most = piece.width - 2 * ruler.seam;
  return { least: piece.keep === "trim" ? most - trimAllowed(piece.width) : most, most };
}

/** Two triangles sewn along their long sides: leg − s (2 + √2). */
function squareOfLegs({ width }: Size, { seam }: Ruler): number {
  return width - seam * (2 + Math.SQRT2);
}

/** Four triangles, their long sides outside: leg × √2 − s (2 + 2 √2). */
function squareOfLongSides({ width }: Size, { seam }: Ruler): number {
  return width * Math.SQRT2 - seam * (2 + 2 * Math.SQRT2);
}

/** No diagonal ends on the ruler's step, so a unit of triangles is trimmed to it, and a little more if need be. */
function rangeOfTriangle(piece: CheckedSized, { step }: Ruler, most: number): Range | null {
  if (piece.kind !== "triangle" || piece.width !== piece.height) return null;
  return { least: most - step - trimAllowed(piece.width), most };
}

function countOf(pieces: readonly Taken[]): number {
  return pieces.reduce((total, { count }) => total + count, 0);
}

/** What all of the pieces can give. */
function allFit(ranges: readonly (Range | null)[]): Range | null {
  let all: Range = { least: 0, most: Number.MAX_SAFE_INTEGER };
  for (const range of ranges) {
    if (range === null) return null;
    all = { least: Math.max(all.least, range.least), most: Math.min(all.most, range.most) };
  }
  return all;
}
