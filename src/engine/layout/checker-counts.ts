import { areaOf, length } from "../length/index.ts";
import {
  type CheckedPiece,
  type CheckedSized,
  type CheckInput,
  type Heap,
  isSized,
} from "./checker-input.ts";
import {
  axesOf,
  fewest,
  isPieceCell,
  mayBeCutUp,
  type PieceCell,
  takenFrom,
  trimProblems,
} from "./checker-pieces.ts";
import type { Cell } from "./checker-tree.ts";
import type { CountProblem, LayoutProblem, Side, TreePath } from "./problems.ts";
import type { SlabNode } from "./types.ts";

/** One use of a row: a whole copy (`copy` absent) or a part of the copy it names. */
type UseOf = {
  readonly piece: string;
  readonly path: TreePath;
  readonly copy?: number;
  readonly count: number;
};

/** No row is used more often than it exists, no copy is longer than it is, and `unused` is the rest. */
export function countProblems(cells: readonly Cell[], input: CheckInput, heap: Heap): LayoutProblem[] {
  const uses = cells.flatMap(usesIn);
  const used = countUsed(uses, heap, cells);
  return [
    ...uses.flatMap((use) => copyRangeProblems(use, heap)),
    ...overuseProblems(uses, used, heap),
    ...copyProblems(cells, heap),
    ...unusedProblems(input, used, heap),
  ];
}

function usesIn({ node, path }: Cell): UseOf[] {
  switch (node.kind) {
    case "piece":
      return [{ piece: node.piece, path, count: 1, ...(node.copy === undefined ? {} : { copy: node.copy }) }];
    case "cloth":
      return node.source === "buy" ? [] : [{ ...node.source, path, count: 1 }];
    case "unit":
      return [
        ...node.pieces.map((part) => ({ ...part, path })),
        ...node.cloth.flatMap(({ source }) => (source === "buy" ? [] : [{ ...source, path, count: 1 }])),
      ];
    case "slab":
      return (node.pieces ?? []).map((part) => ({ ...part, path }));
  }
}

/** Leaves without a copy count one each, a copy counts once however many cells it gives. */
function countUsed(uses: readonly UseOf[], heap: Heap, cells: readonly Cell[]): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  const seen = new Map<string, Set<number>>();
  for (const { piece, copy, count } of uses) {
    const copies = seen.get(piece) ?? new Set();
    const counts = copy === undefined ? count : copies.has(copy) ? 0 : 1;
    if (copy !== undefined) seen.set(piece, copies.add(copy));
    used.set(piece, (used.get(piece) ?? 0) + counts);
  }
  for (const [id, bags] of bagsUsed(cells, heap)) used.set(id, bags);
  return used;
}

/** Crumbs count by the bag: as many as the slabs made of them cover. */
function bagsUsed(cells: readonly Cell[], heap: Heap): Map<string, number> {
  const covered = new Map<string, number>();
  for (const { node } of cells) {
    if (node.kind !== "slab" || node.crumbs === undefined) continue;
    covered.set(node.crumbs, (covered.get(node.crumbs) ?? 0) + areaOfSlab(node));
  }
  const bags = new Map<string, number>();
  for (const [id, area] of covered) {
    const crumbs = heap.get(id);
    if (crumbs?.kind === "crumbs") bags.set(id, Math.max(1, Math.ceil(area / crumbs.area)));
  }
  return bags;
}

function areaOfSlab({ width, height }: SlabNode): number {
  return areaOf(width * height);
}

function copyRangeProblems({ piece, path, copy }: UseOf, heap: Heap): CountProblem[] {
  const row = heap.get(piece);
  if (copy === undefined || row === undefined) return [];
  if (Number.isInteger(copy) && copy >= 1 && copy <= row.count) return [];
  return [{ kind: "copy-out-of-range", path, piece, copy, count: row.count }];
}

function overuseProblems(
  uses: readonly UseOf[],
  used: ReadonlyMap<string, number>,
  heap: Heap,
): CountProblem[] {
  return [...used].flatMap(([piece, times]): CountProblem[] => {
    const row = heap.get(piece);
    if (row === undefined || times <= row.count) return [];
    const last = uses.findLast((use) => use.piece === piece);
    return [{ kind: "used-too-often", path: last?.path ?? [], piece, used: times, count: row.count }];
  });
}

/** Cells that name a copy: it must be a piece she may cut, give several cells, and be long enough for them all. */
function copyProblems(cells: readonly Cell[], heap: Heap): LayoutProblem[] {
  return [...copiesOf(cells)].flatMap(([, group]) => {
    const [first] = group;
    const row = first && heap.get(first.node.piece);
    return row && isSized(row) ? problemsOfCopy(row, group) : [];
  });
}

function copiesOf(cells: readonly Cell[]): Map<string, PieceCell[]> {
  const groups = new Map<string, PieceCell[]>();
  for (const cell of cells.filter(isPieceCell)) {
    const { piece, copy } = cell.node;
    if (copy === undefined) continue;
    const key = `${copy} of ${piece}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [cell]);
    else group.push(cell);
  }
  return groups;
}

function problemsOfCopy(row: CheckedSized, group: readonly PieceCell[]): LayoutProblem[] {
  const [first] = group;
  if (first?.node.copy === undefined) return [];
  const at = { path: first.path, piece: row.id, copy: first.node.copy };
  if (!mayBeCutUp(row)) return [{ kind: "copy-of-uncut-piece", ...at }];
  if (group.length === 1) return [{ kind: "copy-gives-one-cell", ...at }];
  return fewest(
    axesOf(row).map((along) => [
      ...group.flatMap((cell) => trimProblems(row, cell, along)),
      ...lengthProblems(row, group, along ?? "width"),
    ]),
  );
}

function lengthProblems(row: CheckedSized, group: readonly PieceCell[], along: Side): CountProblem[] {
  const needed = length(group.reduce((total, cell) => total + takenFrom(cell)[along], 0));
  const has = row[along];
  const last = group.at(-1);
  if (needed <= has || last?.node.copy === undefined) return [];
  return [{ kind: "copy-too-short", path: last.path, piece: row.id, copy: last.node.copy, needed, has }];
}

function unusedProblems(
  { unused }: CheckInput,
  used: ReadonlyMap<string, number>,
  heap: Heap,
): LayoutProblem[] {
  if (unused === undefined) return [];
  const said = new Map<string, number>();
  for (const { piece, count } of unused) said.set(piece, (said.get(piece) ?? 0) + count);
  const unknown = [...said.keys()].filter((piece) => !heap.has(piece));
  return [
    ...unknown.map((piece): LayoutProblem => ({ kind: "unknown-piece", path: [], piece })),
    ...[...heap.values()].flatMap((row) => unusedProblem(row, used, said)),
  ];
}

function unusedProblem(
  { id, count }: CheckedPiece,
  used: ReadonlyMap<string, number>,
  said: ReadonlyMap<string, number>,
): CountProblem[] {
  const expected = Math.max(0, count - (used.get(id) ?? 0));
  const actual = said.get(id) ?? 0;
  return expected === actual ? [] : [{ kind: "wrong-unused", path: [], piece: id, expected, actual }];
}
