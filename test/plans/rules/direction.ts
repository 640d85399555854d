import type { Grain, Piece } from "../../../src/engine/cloth/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import { breakAt, type Cell, cellsOf } from "./cells.ts";
import type { RuleBreak } from "./types.ts";

/**
 * 7. One-way prints stand upright, stripes run all one way within a row, and neither unknown grain nor bias lies on the
 * outside of the back.
 */
export function brokenDirections(plan: Plan): RuleBreak[] {
  const cells = cellsOf(plan);
  return [
    ...cells.flatMap((cell) => fallenPrint(cell, plan)),
    ...mixedStripes(cells),
    ...cells.filter((cell) => isOutside(cell, plan)).flatMap((cell) => looseGrain(cell, plan)),
  ];
}

/** Patterns in which the cloth lies all ways round. */
const turning: readonly string[] = [
  "pinwheel",
  "broken-dishes",
  "diamond",
  "hourglass",
  "square-in-square",
  "on-point",
];

function fallenPrint(cell: Cell, plan: Plan): RuleBreak[] {
  const { node } = cell;
  const fallen = () => [breakAt("direction", cell, "a one-way print does not stand upright")];
  if (node.kind === "piece") {
    const turned = node.turned || (node.quarter ?? 0) !== 0;
    return turned && cell.piece?.direction === "one-way" ? fallen() : [];
  }
  const turns = node.kind === "unit" && turning.includes(node.pattern);
  return turns && piecesIn(cell, plan).some(({ direction }) => direction === "one-way") ? fallen() : [];
}

/** A row: what is sewn side by side in one join. */
function mixedStripes(cells: readonly Cell[]): RuleBreak[] {
  const rows = new Map<string, Cell[]>();
  for (const cell of cells) {
    if (cell.node.kind !== "piece" || cell.piece?.direction !== "stripe") continue;
    const row = cell.path.slice(0, -1).join();
    rows.set(row, [...(rows.get(row) ?? []), cell]);
  }
  return [...rows.values()].flatMap(([first, ...rest]) =>
    rest
      .filter(({ node }) => stripesRunDown(node) !== (first && stripesRunDown(first.node)))
      .map((cell) => breakAt("direction", cell, "stripes run two ways in one row")),
  );
}

function stripesRunDown(node: Cell["node"]): boolean {
  return node.kind === "piece" && !node.turned;
}

function isOutside({ x, y, right, bottom }: Cell, { layout }: Plan): boolean {
  return x === 0 || y === 0 || right === layout.width || bottom === layout.height;
}

function looseGrain(cell: Cell, plan: Plan): RuleBreak[] {
  const loose = piecesIn(cell, plan).find((piece) => !isFirm(piece, cell));
  return loose === undefined
    ? []
    : [breakAt("direction", cell, `${loose.id}: ${loose.grain} grain on the outside`)];
}

// A slab is sewn from bits lying any way; its outside is nobody's grain.
function isFirm({ kind, grain }: Piece, { node }: Cell): boolean {
  if (node.kind === "slab") return false;
  // Its centre lies inside whatever happens.
  if (node.kind === "unit" && node.pattern === "square-in-square" && kind !== "triangle") return true;
  if (kind !== "triangle" || node.kind !== "unit") return grain === "straight" || grain === "legs";
  return grain === outerGrain(node.pattern);
}

/** Which sides of its triangles lie on the outside of a unit. */
function outerGrain(pattern: string): Grain {
  return pattern === "hourglass" ? "long-side" : "legs";
}

function piecesIn({ node, piece }: Cell, plan: Plan): Piece[] {
  if (node.kind !== "unit" && node.kind !== "slab") return piece === null ? [] : [piece];
  const ids = new Set((node.pieces ?? []).map((part) => part.piece));
  const found = plan.pieces.filter(({ id }) => ids.has(id));
  return found.length > 0 || piece === null ? found : [piece];
}
