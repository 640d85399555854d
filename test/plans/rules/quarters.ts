import type { Quarter } from "../../../src/engine/layout/index.ts";
import type { Cell, Diagonal } from "./cells.ts";
import { diagonalOf } from "./cells.ts";

/** Units of four half-square triangles, as they lie where a plan does not say: left to right, top to bottom. */
const turnsOf: Readonly<Record<string, readonly [Quarter, Quarter, Quarter, Quarter]>> = {
  pinwheel: [1, 2, 0, 3],
  "broken-dishes": [0, 3, 1, 2],
  diamond: [0, 1, 3, 2],
};

/** A cell and the diagonals that end in its corners. */
export type Quartered = Cell & { readonly diagonals: readonly Diagonal[] };

/** The cells, those of four half-square triangles in their quarters: their inner seams end on the joins round them. */
export function quartered(cells: readonly Cell[]): Quartered[] {
  return cells.flatMap((cell) => {
    const { node } = cell;
    const usual = node.kind === "unit" ? turnsOf[node.pattern] : undefined;
    if (node.kind !== "unit" || usual === undefined) return [{ ...cell, diagonals: diagonalsOf(cell) }];
    return quartersOf(
      cell,
      usual.map((turn, index) => node.rotations?.[index] ?? turn),
    );
  });
}

function quartersOf(cell: Cell, turns: readonly Quarter[]): Quartered[] {
  const [middle, centre] = [(cell.x + cell.right) / 2, (cell.y + cell.bottom) / 2];
  return turns.map((turn, index) => ({
    ...cell,
    ...(index % 2 === 0 ? { right: middle } : { x: middle }),
    ...(index < 2 ? { bottom: centre } : { y: centre }),
    diagonals: [diagonalOf(turn)],
  }));
}

function diagonalsOf({ node, piece }: Cell): readonly Diagonal[] {
  if (node.kind === "piece") {
    return piece?.kind === "half-square-triangle" ? [diagonalOf(node.quarter ?? 0)] : [];
  }
  if (node.kind !== "unit") return [];
  if (node.pattern === "hourglass") return ["falling", "rising"];
  return node.pattern === "half-square-triangle" ? [diagonalOf(node.rotations?.[0] ?? 0)] : [];
}
