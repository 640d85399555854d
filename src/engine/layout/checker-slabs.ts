import { areaOf } from "../length/index.ts";
import { type CheckedPiece, type Heap, isSized } from "./checker-input.ts";
import type { Cell } from "./checker-tree.ts";
import type { LayoutProblem, TreePath } from "./problems.ts";
import type { SlabNode } from "./types.ts";

/** Slabs are made of crumbs or of pieces that may be cut up, and together are no larger than those. */
export function slabProblems(cells: readonly Cell[], heap: Heap): LayoutProblem[] {
  const slabs = cells.flatMap(({ node, path }) => (node.kind === "slab" ? [{ slab: node, path }] : []));
  return [...slabs.flatMap(({ slab, path }) => partProblems(slab, path, heap)), ...areaProblems(slabs, heap)];
}

type Placed = { readonly slab: SlabNode; readonly path: TreePath };

function partProblems({ crumbs, pieces = [] }: SlabNode, path: TreePath, heap: Heap): LayoutProblem[] {
  if (crumbs === undefined && pieces.length === 0) return [{ kind: "slab-of-nothing", path }];
  const ofCrumbs = crumbs === undefined ? [] : [problemOf(crumbs, path, { heap, asCrumbs: true })];
  const ofPieces = pieces.map(({ piece, count }) =>
    count >= 1
      ? problemOf(piece, path, { heap, asCrumbs: false })
      : [{ kind: "slab-not-from-crumbs" as const, path, piece }],
  );
  return [...ofCrumbs, ...ofPieces].flat();
}

function problemOf(
  id: string,
  path: TreePath,
  { heap, asCrumbs }: { readonly heap: Heap; readonly asCrumbs: boolean },
): LayoutProblem[] {
  const row = heap.get(id);
  if (row === undefined) return [{ kind: "unknown-piece", path, piece: id }];
  if (row.use === "keep-back" || row.use === "give-away") {
    return [{ kind: "not-to-be-used", path, piece: id, use: row.use }];
  }
  const right = asCrumbs ? row.kind === "crumbs" : mayGoIntoSlab(row);
  return right ? [] : [{ kind: "slab-not-from-crumbs", path, piece: id }];
}

/** A slab is sewn by eye and trimmed: what must stay whole is lost in it. */
function mayGoIntoSlab({ kind, keep }: CheckedPiece): boolean {
  return kind !== "crumbs" && kind !== "length" && keep !== "whole";
}

/** A physical limit only: sewing takes about half of it, but how much is hers. */
function areaProblems(slabs: readonly Placed[], heap: Heap): LayoutProblem[] {
  const groups = new Map<string, Placed[]>();
  for (const [index, placed] of slabs.entries()) {
    const key = placed.slab.crumbs ?? `${index}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [placed]);
    else group.push(placed);
  }
  return [...groups.values()].flatMap((group) => areaProblem(group, heap));
}

function areaProblem(group: readonly Placed[], heap: Heap): LayoutProblem[] {
  const [first] = group;
  if (first === undefined) return [];
  const needed = group.reduce((total, { slab }) => total + slab.width * slab.height, 0);
  const has =
    group.reduce((total, { slab }) => total + areaOfPieces(slab, heap), 0) + areaOfCrumbs(first.slab, heap);
  if (needed <= has) return [];
  return [{ kind: "slab-too-large", path: first.path, needed: areaOf(needed), has: areaOf(has) }];
}

function areaOfCrumbs({ crumbs }: SlabNode, heap: Heap): number {
  const row = crumbs === undefined ? undefined : heap.get(crumbs);
  return row?.kind === "crumbs" ? row.area * row.count : 0;
}

function areaOfPieces({ pieces = [] }: SlabNode, heap: Heap): number {
  return pieces.reduce((total, { piece, count }) => {
    const row = heap.get(piece);
    if (row === undefined || !isSized(row)) return total;
    return total + (row.width * row.height * count) / (row.kind === "triangle" ? 2 : 1);
  }, 0);
}
