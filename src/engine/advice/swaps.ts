import { type Edges, goodShare, isGood } from "./edges.ts";
import type { Cell, Scene } from "./scene.ts";

const mostRounds = 8;

/** The share of edges told apart that is reached by letting equal pieces change places while that helps. */
export function reachedBySwaps({ cells }: Scene, known: Edges): number {
  const fabrics = [...known.fabrics];
  const groups = groupsOf(cells);
  for (let round = 0; round < mostRounds; round++) {
    if (!groups.map((group) => improve(group, fabrics, known)).includes(true)) break;
  }
  return goodShare(known, fabrics);
}

/** Cells whose pieces may change places: one finished size, nothing cut from a longer piece, no direction. */
function groupsOf(cells: readonly Cell[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const [at, { leaf, parts }] of cells.entries()) {
    const { node } = leaf;
    const piece = parts[0]?.piece;
    if (node.kind !== "piece" || node.copy !== undefined || !piece || piece.direction !== "none") continue;
    const size = `${piece.kind} ${node.width} ${node.height}`;
    groups.set(size, [...(groups.get(size) ?? []), at]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

function improve(group: readonly number[], fabrics: number[], known: Edges): boolean {
  let better = false;
  for (const [index, one] of group.entries()) {
    for (const other of group.slice(index + 1)) better = swapIfBetter(one, other, fabrics, known) || better;
  }
  return better;
}

function swapIfBetter(one: number, other: number, fabrics: number[], known: Edges): boolean {
  if (fabrics[one] === fabrics[other]) return false;
  const before = goodAt(one, other, fabrics, known);
  swap(one, other, fabrics);
  if (goodAt(one, other, fabrics, known) > before) return true;
  swap(one, other, fabrics);
  return false;
}

function swap(one: number, other: number, fabrics: number[]): void {
  const [a = -1, b = -1] = [fabrics[one], fabrics[other]];
  fabrics[one] = b;
  fabrics[other] = a;
}

// An edge between the two is counted twice, before and after alike, and is the same in both.
function goodAt(one: number, other: number, fabrics: readonly number[], known: Edges): number {
  const edges = [...(known.edgesOf[one] ?? []), ...(known.edgesOf[other] ?? [])];
  return edges.reduce((sum, edge) => sum + (isGood(known, fabrics, edge) ? edge.long : 0), 0);
}

/**
 * No exchange of equal pieces gets past this share. Each edge told apart takes as much of the outline of one fabric
 * as of those it is told apart from, so a fabric gives at most the shorter of the two.
 */
export function mostOfHeap({ cells }: Scene, known: Edges): number {
  const outlines = known.labs.map(() => 0);
  for (const [at, { place }] of cells.entries()) {
    const fabric = known.fabrics[at] ?? -1;
    if (fabric >= 0) outlines[fabric] = (outlines[fabric] ?? 0) + 2 * (place.width + place.height);
  }
  const doubled = outlines.reduce((sum, outline, fabric) => {
    const others = outlines.reduce(
      (total, next, other) => total + (known.apart[fabric]?.[other] === true ? next : 0),
      0,
    );
    return sum + Math.min(outline, others);
  }, 0);
  return known.total === 0 ? 1 : Math.min(1, doubled / 2 / known.total);
}
