import type { ClothRegion, JoinDirection, OnPointRegion } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";
import { type Cut, type Finished, finished, length, roundUpTo, sum, toFinished } from "../length/index.ts";
import { settingSquaresFor } from "../units/index.ts";
import { type Ground, stayingIn } from "./ground.ts";
import type { Face, Lot } from "./stock.ts";
import type { Leaf, Twig } from "./twig.ts";
import type { ClothNode, LayoutNode, LeafNode, UnitNode } from "./types.ts";
import { mapLeaves } from "./walk.ts";

/** Makes the layout of a composition and what the solver put into its pieced regions, in the order they stand there. */
export function settle(region: Ground, twigs: readonly Twig[], job: Job): LayoutNode {
  const cells = new Map<string, number>();
  for (const twig of twigs) countCells(twig, cells);
  for (const node of stayingIn(region)) countStaying(node, cells);
  const queue = [...twigs];
  return settled(region, queue, { job, cells });
}

/** Makes the layout of what one region is filled with; `rest`: all that lies elsewhere. */
export function settleOne(
  twig: Twig,
  fabric: string,
  { rest, job }: { rest: LayoutNode; job: Job },
): LayoutNode {
  const cells = new Map<string, number>();
  countCells(twig, cells);
  countStaying(rest, cells);
  return grow(twig, fabric, { job, cells });
}

/** How many cells each strip gives. */
type Ledger = { readonly job: Job; readonly cells: ReadonlyMap<string, number> };

function stripName({ piece, copy }: { readonly piece: string; readonly copy?: number }): string {
  return `${copy} of ${piece}`;
}

function stripOf({ piece, copy }: Lot): string {
  return stripName({ piece: piece.id, copy });
}

function countCells(twig: Twig, cells: Map<string, number>): void {
  if (twig.kind === "fork") for (const part of twig.parts) countCells(part, cells);
  else if (twig.face?.lot.roll) count(stripOf(twig.face.lot), cells);
}

function countStaying(node: LayoutNode, cells: Map<string, number>): void {
  if (node.kind === "join") for (const part of node.parts) countStaying(part, cells);
  else if (node.kind === "piece" && node.copy !== undefined) count(stripName(node), cells);
}

function count(strip: string, cells: Map<string, number>): void {
  cells.set(strip, (cells.get(strip) ?? 0) + 1);
}

function settled(region: Ground, queue: Twig[], ledger: Ledger): LayoutNode {
  const size = { width: region.width, height: region.height };
  switch (region.kind) {
    case "join": {
      const parts = region.parts.map((part) => ({ part, node: settled(part, queue, ledger) }));
      return join(region.direction, joinedUp(region.direction, parts, ledger.job), ledger.job);
    }
    case "cloth":
      return cloth(region);
    case "on-point":
      return onPoint(region, ledger.job);
    case "stays":
      return mapLeaves(region.node, (node) => asItStays(node, ledger));
    case "block":
      return { kind: "piece", piece: region.piece, turned: isTurned(region.turned, size), ...size };
    case "pieced": {
      const twig = queue.shift();
      return twig === undefined
        ? cloth({ ...region, kind: "cloth", role: "plain" })
        : grow(twig, region.fabric, ledger);
    }
  }
}

/** A strip that gives one cell alone needs no number. */
function asItStays(node: LeafNode, { cells }: Ledger): LeafNode {
  if (node.kind !== "piece" || node.copy === undefined || (cells.get(stripName(node)) ?? 0) > 1) return node;
  const { copy, ...whole } = node;
  return whole;
}

function cloth({ role, fabric, width, height }: ClothRegion): ClothNode {
  return { kind: "cloth", role, fabric, source: "buy", width, height };
}

/** The squares of plain cloth are cut a little large, to the ruler's step, and trimmed once all is sewn. */
function onPoint({ blocks, fabric, width, height }: OnPointRegion, job: Job): UnitNode {
  const row = job.pieces.find(({ id }) => id === blocks[0]);
  if (row === undefined || row.kind === "crumbs")
    throw new Error("what stands on point is a block of the heap");
  const size = { width, height };
  const squares = settingSquaresFor(
    { block: toFinished(row.width, job.seam), count: blocks.length, size },
    job.seam,
  );
  const square = (side: Cut, count: number) => {
    const onStep = roundUpTo(side, job.step);
    return { fabric, source: "buy", width: onStep, height: onStep, count } as const;
  };
  const sides = Math.ceil((blocks.length - 1) / 2);
  return {
    kind: "unit",
    pattern: "on-point",
    pieces: inRuns(blocks),
    cloth: [square(squares.side, sides), square(squares.corner, 2)],
    ...size,
  };
}

function inRuns(blocks: readonly string[]): { piece: string; count: number }[] {
  const runs: { piece: string; count: number }[] = [];
  for (const piece of blocks) {
    const last = runs.at(-1);
    if (last?.piece === piece) last.count += 1;
    else runs.push({ piece, count: 1 });
  }
  return runs;
}

function grow(twig: Twig, fabric: string, ledger: Ledger): LayoutNode {
  if (twig.kind === "leaf") return leaf(twig, fabric, ledger);
  const parts = twig.parts.map((part) => grow(part, fabric, ledger));
  const direction = twig.beside ? "beside" : "below";
  return join(direction, mergeCloth(direction, parts, ledger.job), ledger.job);
}

function leaf(twig: Leaf, fabric: string, ledger: Ledger): LayoutNode {
  const { job } = ledger;
  const size = { width: inSteps(twig.width, job), height: inSteps(twig.height, job) };
  if (twig.face === null) return gap(size, fabric, job);
  const { lot } = twig.face;
  if (lot.unit === null) return piece(twig.face, size, fabric, ledger);
  const [upright, lying = upright] = lot.unit.ways;
  return inCloth((twig.face.turned ? lying : upright).made, fabric);
}

/** A unit's own plain strips are of the cloth round it. */
function inCloth(made: LayoutNode, fabric: string): LayoutNode {
  return mapLeaves(made, (node) => (node.kind === "cloth" ? { ...node, fabric } : node));
}

function inSteps(steps: number, job: Job): Finished {
  return finished(length(steps * job.step));
}

type CellSize = { readonly width: Finished; readonly height: Finished };

/** Cloth in a pieced region; too wide for the bolt, it is seamed. */
function gap(size: CellSize, fabric: string, job: Job): LayoutNode {
  const role = Math.min(size.width, size.height) > 8 * 8128 ? "plain" : "spacer";
  const one: ClothNode = { kind: "cloth", role, fabric, source: "buy", ...size };
  const room = job.clothWidth - 2 * job.plainSeam;
  if (Math.min(size.width, size.height) <= room) return one;
  const wide = size.width >= size.height;
  const long = wide ? size.width : size.height;
  const count = Math.ceil(long / room);
  const each = Math.floor(long / job.step / count) * job.step;
  const parts = Array.from({ length: count }, (_, at) => {
    const along = finished(length(at === 0 ? long - each * (count - 1) : each));
    return wide ? { ...one, width: along } : { ...one, height: along };
  });
  return join(wide ? "beside" : "below", parts, job);
}

function piece(face: Face, size: CellSize, fabric: string, ledger: Ledger): LayoutNode {
  const { lot, turned } = face;
  const shared = lot.roll && (ledger.cells.get(stripOf(lot)) ?? 0) > 1 ? { copy: lot.copy } : {};
  const quarter = lot.piece.kind === "half-square-triangle" ? { quarter: 0 as const } : {};
  const node = {
    kind: "piece",
    piece: lot.piece.id,
    turned: isTurned(turned, size),
    ...quarter,
    ...shared,
  } as const;
  const own = wholeSize(face, ledger.job);
  if (own === null) return { ...node, ...size };
  return coped({ ...node, ...own }, size, fabric, ledger.job);
}

// A square lies the same either way; saying so keeps like neighbours alike.
function isTurned(turned: boolean, size: CellSize): boolean {
  return turned && size.width !== size.height;
}

/** The exact size of a whole piece that is off the ruler's step, null for all others. */
function wholeSize({ lot, turned }: Face, job: Job): CellSize | null {
  const width = finished(length(lot.piece.width - 2 * job.seam));
  const height = finished(length(lot.piece.height - 2 * job.seam));
  const onStep = width % job.step === 0 && height % job.step === 0;
  if (onStep || lot.cells === 1) return null;
  return turned ? { width: height, height: width } : { width, height };
}

/** Coping strips beside and below bring an off-step piece to its cell; they take the difference. */
function coped(node: LayoutNode, size: CellSize, fabric: string, job: Job): LayoutNode {
  const strip = (width: number, height: number): ClothNode => ({
    kind: "cloth",
    role: "coping",
    fabric,
    source: "buy",
    width: finished(length(width)),
    height: finished(length(height)),
  });
  const right = size.width - node.width;
  const under = size.height - node.height;
  const row = right > 0 ? join("beside", [node, strip(right, node.height)], job) : node;
  return under > 0 ? join("below", [row, strip(size.width, under)], job) : row;
}

/** Joins parts as the format asks: one seam, and parts of the same direction and seam taken in. */
export function join(direction: JoinDirection, parts: readonly LayoutNode[], job: Job): LayoutNode {
  const first = parts[0];
  if (first === undefined) throw new Error("a join has parts");
  if (parts.length === 1) return first;
  const seam = parts.every((part) => part.kind === "cloth") ? job.plainSeam : job.seam;
  const flat = parts.flatMap((part) =>
    part.kind === "join" && part.direction === direction && part.seam === seam && part.pattern === undefined
      ? part.parts
      : [part],
  );
  const along = sum(parts.map((part) => (direction === "beside" ? part.width : part.height)));
  const size =
    direction === "beside" ? { width: along, height: first.height } : { width: first.width, height: along };
  return { kind: "join", direction, seam, parts: flat, ...size };
}

type Settled = { readonly part: Ground; readonly node: LayoutNode };

// A region for which nothing was found is plain cloth, and one with the plain part beside it. Plain parts that the
// composition has set apart stay so: they are cut from different cloth.
function joinedUp(direction: JoinDirection, parts: readonly Settled[], job: Job): LayoutNode[] {
  const joined: { node: LayoutNode; found: boolean; stays: boolean }[] = [];
  for (const { part, node } of parts) {
    const [found, stays] = [part.kind === "pieced", part.kind === "stays"];
    const last = joined.at(-1);
    const mayGrow = last !== undefined && (found || last.found) && !stays && !last.stays;
    const both = mayGrow ? asOne(direction, last.node, node, job) : null;
    if (both === null) joined.push({ node, found, stays });
    else joined[joined.length - 1] = { node: both, found: true, stays };
  }
  return joined.map(({ node }) => node);
}

/** Like cloth beside like cloth is one piece of cloth, as long as one width of it serves. */
function mergeCloth(direction: JoinDirection, parts: readonly LayoutNode[], job: Job): LayoutNode[] {
  const merged: LayoutNode[] = [];
  for (const part of parts) {
    const last = merged.at(-1);
    const both = last === undefined ? null : asOne(direction, last, part, job);
    if (both === null) merged.push(part);
    else merged[merged.length - 1] = both;
  }
  return merged;
}

function asOne(direction: JoinDirection, one: LayoutNode, other: LayoutNode, job: Job): ClothNode | null {
  if (one.kind !== "cloth" || other.kind !== "cloth" || one.fabric !== other.fabric) return null;
  const size =
    direction === "beside"
      ? { width: finished(length(one.width + other.width)), height: one.height }
      : { width: one.width, height: finished(length(one.height + other.height)) };
  if (Math.min(size.width, size.height) > job.clothWidth - 2 * job.plainSeam) return null;
  return { ...one, role: one.role === "plain" || other.role === "plain" ? "plain" : one.role, ...size };
}
