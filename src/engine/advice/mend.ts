import { type Job, type Lab, plainId } from "../cloth/index.ts";
import { areaOf, length, type Size } from "../length/index.ts";
import { boltLength } from "../supplies/index.ts";
import { areApart, type Edge, type Edges } from "./edges.ts";
import { type Candidate, candidatesFor } from "./palette.ts";
import { type Cell, isCloth, type Scene } from "./scene.ts";
import type { Mend } from "./types.ts";

/** More cells than this share of the pieced ones is another plan and no longer a mend. */
const mostOfCells = 1 / 3;
/** Less than this gained isn't worth a walk to the shop. */
const worthwhile = 0.03;

/** A mend and the cells that it goes into, by their number. */
export type Mended = { readonly mend: Mend; readonly cells: readonly number[] };

/**
 * One fabric added so that `wanted` of the edges are told apart, or as many as it can reach: another plain cloth where
 * that alone does it, as it is bought anyway; else for the cells where it helps most, one after the other.
 */
export function mendFor(scene: Scene, known: Edges, wanted: number): Mended | null {
  const now = shareWith(known, new Set(), []);
  const tries = candidatesFor(known.labs).map((candidate) => tryOf(candidate, scene, known));
  const plain = bestOf(tries.map((one) => plainTry(one, wanted)));
  const pieces = () => bestOf(tries.map((one) => piecesTry(one, wanted)));
  const best = plain !== null && plain.reach >= wanted ? plain : bestOf([plain, pieces()]);
  return best === null || best.reach < now + worthwhile ? null : told(best, scene);
}

type Try = {
  readonly candidate: Candidate;
  readonly scene: Scene;
  readonly known: Edges;
  /** Which fabrics the new one is told apart from. */
  readonly apart: readonly boolean[];
};

type Tried = {
  readonly candidate: Candidate;
  readonly instead: Mend["instead"];
  readonly cells: readonly number[];
  /** What counts of it: no more than was wanted. */
  readonly counts: number;
  readonly reach: number;
  readonly area: number;
};

function tryOf(candidate: Candidate, scene: Scene, known: Edges): Try {
  return { candidate, scene, known, apart: known.labs.map((lab: Lab) => areApart(candidate.lab, lab)) };
}

/** Most of what was wanted, then the least cloth to cut; of equals the first. */
function bestOf(tried: readonly (Tried | null)[]): Tried | null {
  return tried.reduce<Tried | null>((best, next) => {
    if (best === null || next === null) return best ?? next;
    if (next.counts !== best.counts) return next.counts > best.counts ? next : best;
    return next.area < best.area ? next : best;
  }, null);
}

function plainTry({ scene, known, candidate, apart }: Try, wanted: number): Tried | null {
  const cells = [...scene.cells.entries()].flatMap(([at, cell]) => (isBought(cell) ? [at] : []));
  if (cells.length === 0) return null;
  const reach = shareWith(known, new Set(cells), apart);
  return { candidate, instead: "plain", cells, reach, counts: Math.min(reach, wanted), area: 0 };
}

function isBought({ leaf: { node } }: Cell): boolean {
  return node.kind === "cloth" && node.source === "buy" && node.fabric === plainId;
}

function piecesTry({ scene, known, candidate, apart }: Try, wanted: number): Tried | null {
  const free = [...scene.cells.entries()].flatMap(([at, cell]) => (mayGo(cell, scene.job) ? [at] : []));
  const most = Math.floor(scene.cells.filter((cell) => !isCloth(cell)).length * mostOfCells);
  const chosen = new Set<number>();
  let reach = shareWith(known, chosen, apart);
  while (chosen.size < most && reach < wanted) {
    const next = mostHelped(free, chosen, apart, known);
    if (next === null) break;
    chosen.add(next.at);
    reach += next.gain / known.total;
  }
  const cells = [...chosen];
  const area = cells.reduce((sum, at) => sum + cutAreaOf(scene.cells[at]), 0);
  if (cells.length === 0) return null;
  return { candidate, instead: "pieces", cells, reach, counts: Math.min(reach, wanted), area };
}

/** A single plain leftover that she didn't ask for; what is sewn already is worth more than a contrast. */
function mayGo({ leaf, parts }: Cell, { clothWidth }: Job): boolean {
  const piece = parts[0]?.piece;
  if (leaf.node.kind !== "piece" || !piece || piece.use === "must") return false;
  if (Math.min(leaf.cutWidth, leaf.cutHeight) > clothWidth) return false;
  return !["block", "part-block", "half-square-triangle", "triangle"].includes(piece.kind);
}

function cutAreaOf(cell: Cell | undefined): number {
  return cell === undefined ? 0 : cell.leaf.cutWidth * cell.leaf.cutHeight;
}

type Helped = { readonly at: number; readonly gain: number };

function mostHelped(
  free: readonly number[],
  chosen: ReadonlySet<number>,
  apart: readonly boolean[],
  known: Edges,
): Helped | null {
  let best: Helped | null = null;
  for (const at of free) {
    if (chosen.has(at)) continue;
    const gain = gainAt(at, chosen, apart, known);
    if (gain > (best?.gain ?? 0)) best = { at, gain };
  }
  return best;
}

function gainAt(at: number, chosen: ReadonlySet<number>, apart: readonly boolean[], known: Edges): number {
  const with_ = new Set(chosen).add(at);
  return (known.edgesOf[at] ?? []).reduce((sum, edge) => {
    const before = isGoodWith(edge, chosen, apart, known);
    const after = isGoodWith(edge, with_, apart, known);
    return sum + (Number(after) - Number(before)) * edge.long;
  }, 0);
}

/** The new fabric lies in the cells of `changed`, and is not told apart from itself. */
function isGoodWith(
  { one, other }: Edge,
  changed: ReadonlySet<number>,
  apart: readonly boolean[],
  { fabrics, apart: known }: Edges,
): boolean {
  const [a = -1, b = -1] = [fabrics[one], fabrics[other]];
  if (changed.has(one) && changed.has(other)) return false;
  if (changed.has(one)) return apart[b] ?? false;
  if (changed.has(other)) return apart[a] ?? false;
  return known[a]?.[b] ?? false;
}

function shareWith(known: Edges, changed: ReadonlySet<number>, apart: readonly boolean[]): number {
  const good = known.edges.reduce(
    (sum, edge) => sum + (isGoodWith(edge, changed, apart, known) ? edge.long : 0),
    0,
  );
  return known.total === 0 ? 1 : good / known.total;
}

function told({ candidate, instead, cells, reach }: Tried, scene: Scene): Mended {
  const sizes = cells.flatMap((at): Size[] => {
    const leaf = scene.cells[at]?.leaf;
    return leaf === undefined ? [] : [{ width: leaf.cutWidth, height: leaf.cutHeight }];
  });
  const { value, hue, lab } = candidate;
  const { job, plan } = scene;
  const bought = plan.buy.filter(({ use, fabric }) => use === "plain" && fabric === plainId);
  const long =
    instead === "plain" ? length(bought.reduce((sum, row) => sum + row.length, 0)) : boltLength(sizes, job);
  const area = areaOf(sizes.reduce((sum, { width, height }) => sum + width * height, 0));
  return {
    cells,
    mend: { instead, value, hue, lab, reach, cells: cells.length, area, length: long, width: job.clothWidth },
  };
}
