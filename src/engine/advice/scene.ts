import { type Fabric, fabricValue, isUndyed, type Job, type Piece } from "../cloth/index.ts";
import { type LeafNode, leavesOf, type PlacedLeaf } from "../layout/index.ts";
import { add } from "../length/index.ts";
import { type Sewn, sewnByStep } from "../sewing/index.ts";
import type { AdvisedPlan, PlaceOfCell, Where } from "./types.ts";

/** What lies in a cell: a leftover, or cloth to buy (`piece` is null). */
export type Part = { readonly piece: Piece | null; readonly fabric: string };

export type Cell = {
  readonly leaf: PlacedLeaf;
  readonly place: PlaceOfCell;
  readonly parts: readonly Part[];
  /** The fabric one sees; null: its colour isn't known. */
  readonly fabric: Fabric | null;
  /** The steps it goes through, the last one of the sewing first. */
  readonly steps: readonly string[];
};

/** Two cells and how long they touch, or one cell that is sewn of several parts (`long` is 0). */
export type Meeting = {
  readonly one: number;
  readonly other: number;
  readonly long: number;
  readonly step: string | null;
};

export type Scene = {
  readonly plan: AdvisedPlan;
  readonly job: Job;
  readonly cells: readonly Cell[];
  readonly meetings: readonly Meeting[];
};

export function sceneOf(plan: AdvisedPlan, job: Job): Scene {
  const chains = stepsOfLeaves(plan, job);
  const pieces = new Map(job.pieces.map((piece) => [piece.id, piece]));
  const fabrics = new Map(job.fabrics.map((fabric) => [fabric.id, fabric]));
  const cells = leavesOf(plan.layout, job).map((leaf, index): Cell => {
    const parts = partsOf(leaf.node, pieces);
    const fabric = fabrics.get(parts[0]?.fabric ?? "");
    const place = { ...sizeOf(leaf.node), x: add(leaf.x, job.seam), y: add(leaf.y, job.seam) };
    const known = fabric === undefined || isUndyed(fabric) ? null : fabric;
    return { leaf, place, parts, fabric: known, steps: chains[index] ?? [] };
  });
  return { plan, job, cells, meetings: meetingsOf(cells) };
}

function sizeOf({ width, height }: LeafNode) {
  return { width, height };
}

function partsOf(node: LeafNode, pieces: ReadonlyMap<string, Piece>): readonly Part[] {
  const leftovers = (ids: readonly string[]) =>
    ids.flatMap((id): Part[] => {
      const piece = pieces.get(id);
      return piece === undefined ? [] : [{ piece, fabric: piece.fabric }];
    });
  const cloth = ({ fabric, source }: { fabric: string; source: "buy" | { piece: string } }): Part[] =>
    source === "buy" ? [{ piece: null, fabric }] : leftovers([source.piece]);
  switch (node.kind) {
    case "piece":
      return leftovers([node.piece]);
    case "cloth":
      return cloth(node);
    case "unit":
      return [...leftovers(node.pieces.map(({ piece }) => piece)), ...node.cloth.flatMap(cloth)];
    case "slab":
      return leftovers([
        ...(node.crumbs === undefined ? [] : [node.crumbs]),
        ...(node.pieces ?? []).map(({ piece }) => piece),
      ]);
  }
}

/** For each leaf, left to right and top to bottom, the steps it goes through; the back itself first. */
function stepsOfLeaves({ layout }: AdvisedPlan, job: Job): readonly (readonly string[])[] {
  const made = [...sewnByStep(layout, job)];
  const ids = new Map(made.map(([id, sewn]) => [sewn, id]));
  const root = made.at(-1)?.[1];
  const chains: string[][] = [];
  const visit = (sewn: Sewn, above: readonly string[]): void => {
    const id = ids.get(sewn);
    const steps = id === undefined ? above : [...above, id];
    if ("parts" in sewn) for (const part of sewn.parts) visit(part, steps);
    else chains.push([...steps]);
  };
  if (root !== undefined) visit(root, []);
  return chains;
}

function meetingsOf(cells: readonly Cell[]): readonly Meeting[] {
  const inside = cells.flatMap(({ parts, steps }, at): Meeting[] =>
    parts.length > 1 ? [{ one: at, other: at, long: 0, step: steps.at(-1) ?? null }] : [],
  );
  return [...inside, ...edgesBetween(cells)];
}

function edgesBetween(cells: readonly Cell[]): readonly Meeting[] {
  const sorted = [...cells.entries()].toSorted(([, a], [, b]) => a.place.x - b.place.x);
  return sorted.flatMap(([one, cell], at) => {
    const right = cell.place.x + cell.place.width;
    const found: Meeting[] = [];
    for (const [other, next] of sorted.slice(at + 1)) {
      if (next.place.x > right) break;
      const long = sharedEdge(cell.place, next.place);
      if (long > 0) found.push({ one, other, long, step: lastCommon(cell.steps, next.steps) });
    }
    return found;
  });
}

/** The step that sews two cells together is the smallest one that holds both. */
function lastCommon(one: readonly string[], other: readonly string[]): string | null {
  return one.findLast((step, index) => other[index] === step) ?? null;
}

function sharedEdge(one: PlaceOfCell, other: PlaceOfCell): number {
  const across = overlap(one.x, one.width, other.x, other.width);
  const down = overlap(one.y, one.height, other.y, other.height);
  if (across === 0) return Math.max(0, down);
  return down === 0 ? Math.max(0, across) : 0;
}

function overlap(start: number, long: number, otherStart: number, otherLong: number): number {
  return Math.min(start + long, otherStart + otherLong) - Math.max(start, otherStart);
}

export function isCloth({ leaf }: Cell): boolean {
  return leaf.node.kind === "cloth";
}

/** L* of what one sees; null where its colour isn't known. */
export function seenValue({ fabric }: Cell): number | null {
  return fabric === null ? null : fabricValue(fabric);
}

/** Cells by their number, the leftovers in them that `concerns` picks, and the steps. */
export function whereOf(
  scene: Scene,
  cells: Iterable<number>,
  steps: Iterable<string | null>,
  concerns: (part: Part) => boolean = () => true,
): Where {
  const numbers = [...new Set(cells)].toSorted((a, b) => a - b);
  const there = numbers.flatMap((at) => scene.cells[at] ?? []);
  const ids = new Set(there.flatMap(({ parts }) => parts.filter(concerns).map(({ piece }) => piece?.id)));
  return {
    cells: there.map(({ place }) => place),
    pieces: scene.job.pieces.flatMap(({ id }) => (ids.has(id) ? [id] : [])),
    steps: [...new Set([...steps].filter((step) => step !== null))].toSorted((a, b) => Number(a) - Number(b)),
  };
}
