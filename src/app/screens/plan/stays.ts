import {
  leavesOf,
  type PieceNode,
  type PlacedLeaf,
  type Stays,
  withPieceAt,
} from "../../../engine/layout/index.ts";
import { type PlanDocument, readPlan, type StayingCells } from "../../../files/index.ts";
import { textOf } from "./planText.ts";

/** A cell of a plan by its place in the tree. */
export type Cell = PlacedLeaf & { readonly key: string };

const cells = new WeakMap<PlanDocument, readonly Cell[]>();

/** The plan's cells, in the order in which a drawing of it shows them. */
export function cellsOf(plan: PlanDocument): readonly Cell[] {
  const known = cells.get(plan);
  if (known !== undefined) return known;
  const found = leavesOf(plan.layout, plan).map((leaf) => ({ ...leaf, key: leaf.path.join(" ") }));
  cells.set(plan, found);
  return found;
}

/** What is told to the solver; null where nothing stays, or the plan they are of can't be read any more. */
export function staysFrom(staying: StayingCells | null): Stays | null {
  if (staying === null || staying.cells.length === 0) return null;
  const plan = planOf(staying.plan);
  const paths = staying.cells.map((key) => key.split(" ").map(Number));
  return plan === null ? null : { layout: plan.layout, paths };
}

const read = new Map<string, PlanDocument | null>();

function planOf(text: string): PlanDocument | null {
  const known = read.get(text);
  if (known !== undefined) return known;
  const plan = readPlan(text);
  const document = plan.ok ? plan.value : null;
  // One text at a time is remembered: they are long.
  read.clear();
  read.set(text, document);
  return document;
}

/** Which cells of a plan are those that stay: by their place, size and piece, whatever tree they are in. */
export function stayingIn(plan: PlanDocument, staying: StayingCells | null): ReadonlySet<string> {
  const earlier = staying === null ? null : planOf(staying.plan);
  if (staying === null || earlier === null) return new Set();
  const kept = new Set(staying.cells);
  const wanted = new Set(
    cellsOf(earlier)
      .filter(({ key }) => kept.has(key))
      .map(placeOf),
  );
  return new Set(
    cellsOf(plan)
      .filter((cell) => wanted.has(placeOf(cell)))
      .map(({ key }) => key),
  );
}

function placeOf({ node, x, y }: Cell): string {
  const what = node.kind === "piece" ? node.piece : node.kind;
  return [what, x, y, node.width, node.height].join(" ");
}

/** The same with a cell of this plan more, or one less; null when nothing stays. */
export function toggled(plan: PlanDocument, staying: StayingCells | null, cell: Cell): StayingCells | null {
  const now = new Set(stayingIn(plan, staying));
  if (!now.delete(cell.key)) now.add(cell.key);
  const cells = cellsOf(plan).flatMap(({ key }) => (now.has(key) ? [key] : []));
  return cells.length === 0 ? null : { plan: textOf(plan), cells };
}

/** What stays already, and another piece in the place of that cell. */
export function withAnother(
  plan: PlanDocument,
  staying: StayingCells | null,
  { cell, piece }: { readonly cell: Cell; readonly piece: PieceNode },
): StayingCells {
  const now = stayingIn(plan, staying);
  const { layout } = withPieceAt(plan.layout, cell.path, piece);
  const cells = cellsOf(plan).flatMap(({ key }) => (now.has(key) || key === cell.key ? [key] : []));
  return { plan: textOf({ ...plan, layout }), cells };
}

/** How many of those that should stay this plan has not got. */
export function letGoIn(plan: PlanDocument, staying: StayingCells | null): number {
  return Math.max(0, (staying?.cells.length ?? 0) - stayingIn(plan, staying).size);
}

/** The cell at a place of the back, in exact lengths from its raw upper left corner. */
export function cellAt(plan: PlanDocument, x: number, y: number): Cell | null {
  const [left, top] = [x - plan.seam, y - plan.seam];
  const found = cellsOf(plan).find(
    (cell) =>
      left >= cell.x && left < cell.x + cell.node.width && top >= cell.y && top < cell.y + cell.node.height,
  );
  return found ?? null;
}
