import type { Job, Piece, SizedPiece } from "../cloth/index.ts";
import { type LayoutNode, outerSeams, type SlabNode, type UnitNode } from "../layout/index.ts";
import {
  assert,
  type Cut,
  cut,
  type Length,
  length,
  type Size,
  subtract,
  sum,
  times,
} from "../length/index.ts";
import { joinsOnPoint } from "../units/index.ts";
import { isLeftLong, sidesOf, takenSize } from "./leftLong.ts";
import { pressOfJoin, pressOfUnit } from "./press.ts";
import { inSewingOrder, isJoin, type Made, type Sewn, type SewnJoin, sewnFrom } from "./sewn.ts";
import type { Step, StepPart } from "./types.ts";

/** What sewing has to know of a job; a plan carries the same. */
export type SewingJob = Pick<Job, "seam" | "pieces" | "top">;

/**
 * How many seams a step sews: all parts but one are sewn on to something. How a slab is sewn is for her eye; it
 * counts by its area instead, so none here. The squares that go between blocks on point are cut into triangles first.
 */
export function seamsIn(step: Step): number {
  if (step.kind === "unit" && step.pattern === "on-point") return joinsOnPoint(blocksIn(step));
  return step.kind === "slab" ? 0 : sum(step.from.map(({ count }) => length(count))) - 1;
}

function blocksIn({ from }: Step): number {
  return from.reduce((total, part) => ("piece" in part ? total + part.count : total), 0);
}

/**
 * The steps that sew `layout`, in the order a practised quilter takes them (`inSewingOrder`). Ids are "1", "2", …
 * in that order and every part comes from the heap, the bolt or an earlier step. Sizes: parts in cut size as laid,
 * `unfinished` the sewn unit with the allowances of its own four sides, `finished` its cell.
 * A layout of a single leaf is a step with one part: cut, and squared up.
 */
export function stepsFor(layout: LayoutNode, job: SewingJob): Step[] {
  const root = sewnFrom(layout, outerSeams(job));
  const order = inSewingOrder(root);
  if (order.length === 0) return [stepOfSingle(root, job)];
  const ids = new Map(order.map((made, index) => [made, String(index + 1)]));
  const bench: Bench = { job, ids, pieces: new Map(job.pieces.map((piece) => [piece.id, piece])) };
  return order.map((made) => (isJoin(made) ? stepOfJoin(made, bench) : stepOfUnit(made, bench)));
}

/** What each step of `stepsFor(layout, job)` sews, by the step's id: for drawing it. Empty for a single leaf. */
export function sewnByStep(layout: LayoutNode, job: Pick<SewingJob, "seam">): ReadonlyMap<string, Sewn> {
  const order = inSewingOrder(sewnFrom(layout, outerSeams(job)));
  return new Map(order.map((made, index) => [String(index + 1), made]));
}

type Bench = {
  readonly job: SewingJob;
  readonly ids: ReadonlyMap<Sewn, string>;
  readonly pieces: ReadonlyMap<string, Piece>;
};

function stepOfJoin(join: SewnJoin, bench: Bench): Step {
  const { node, parts } = join;
  const byHand = bench.job.top?.method === "hand";
  const step: Step = {
    ...sizesOf(join),
    id: idOf(join, bench),
    kind: "join",
    direction: node.direction,
    from: merged(parts.map((part) => partOf(part, bench))),
    seam: node.seam,
    press: pressOfJoin(join, byHand),
    ...(isSquaredUp(join, bench) ? { squareUp: squaredTo(join) } : {}),
    ...(node.pattern === undefined ? {} : { pattern: node.pattern }),
  };
  assertSizes(step);
  return step;
}

function stepOfUnit(made: Exclude<Made, SewnJoin>, bench: Bench): Step {
  const { node, cut } = made;
  const byHand = bench.job.top?.method === "hand";
  return {
    ...sizesOf(made),
    id: idOf(made, bench),
    kind: node.kind,
    direction: "beside",
    from: merged(node.kind === "unit" ? partsOfUnit(node, bench) : partsOfSlab(node, cut, bench)),
    seam: bench.job.seam,
    press: node.kind === "unit" ? pressOfUnit(node.pattern, byHand) : "to-one-side",
    // The seams of a unit cross its edges, and a slab is sewn by eye: both are trimmed to size once sewn.
    squareUp: cut,
    ...(node.kind === "unit" ? { pattern: node.pattern } : {}),
  };
}

function stepOfSingle(leaf: Sewn, job: SewingJob): Step {
  const bench: Bench = { job, ids: new Map(), pieces: new Map() };
  const step = { id: "1", kind: "join", direction: "below", seam: job.seam, press: "open" } as const;
  return { ...step, ...sizesOf(leaf), from: [partOf(leaf, bench)], squareUp: leaf.cut };
}

function sizesOf({ node, cut, leftLong }: Sewn): Pick<Step, "unfinished" | "finished" | "leftLong"> {
  const finished = { width: node.width, height: node.height };
  return { unfinished: cut, finished, ...(isLeftLong(leftLong) ? { leftLong } : {}) };
}

function squaredTo({ cut: size, leftLong }: Sewn): Size<Cut> {
  const { width, height } = takenSize({ ...size, leftLong });
  return { width: cut(width), height: cut(height) };
}

function partOf(part: Sewn, bench: Bench): StepPart {
  const { node, cut, leftLong } = part;
  const laid = { ...cut, count: 1, ...(isLeftLong(leftLong) ? { leftLong } : {}) };
  switch (node.kind) {
    case "join":
    case "unit":
    case "slab":
      return { step: idOf(part, bench), ...laid };
    case "cloth":
      return { cloth: node.fabric, source: node.source, role: node.role, ...laid };
    case "piece":
      return {
        piece: node.piece,
        ...(node.copy === undefined ? {} : { copy: node.copy }),
        ...(node.turned ? { turned: true } : {}),
        ...(node.quarter === undefined ? {} : { quarter: node.quarter }),
        ...laid,
      };
  }
}

function partsOfUnit(node: UnitNode, bench: Bench): StepPart[] {
  const pieces = node.pieces.flatMap((entry) => Array.from({ length: entry.count }, () => entry.piece));
  const turned = pieces.map((id, index) => {
    const quarter = node.rotations?.[index];
    return { ...asItIs(id, bench), ...(quarter === undefined ? {} : { quarter }) };
  });
  const cloth = node.cloth.map(({ fabric, ...part }) => ({ ...part, cloth: fabric, role: "plain" as const }));
  return [...turned, ...cloth];
}

function partsOfSlab(node: SlabNode, cut: Size<Cut>, bench: Bench): StepPart[] {
  const crumbs = node.crumbs === undefined ? [] : [{ piece: node.crumbs, ...cut, count: 1 }];
  const pieces = (node.pieces ?? []).map(({ piece, count }) => ({ ...asItIs(piece, bench), count }));
  return [...crumbs, ...pieces];
}

/** A leftover in its own cut size: what goes into a unit or a slab is trimmed only once that is sewn. */
function asItIs(id: string, bench: Bench): StepPart & { readonly piece: string } {
  const { width, height } = sizedPiece(id, bench);
  return { piece: id, width, height, count: 1 };
}

function sizedPiece(id: string, bench: Bench): SizedPiece {
  const piece = bench.pieces.get(id);
  assert(piece !== undefined && piece.kind !== "crumbs", `${id} is a piece of the heap with a size`);
  return piece;
}

function idOf(made: Sewn, bench: Bench): string {
  const id = bench.ids.get(made);
  assert(id !== undefined, "whatever is sewn has a step of its own");
  return id;
}

/** Equal neighbours become one entry; what an earlier step made is always its own. */
function merged(parts: readonly StepPart[]): StepPart[] {
  const entries: StepPart[] = [];
  for (const part of parts) {
    const last = entries.at(-1);
    if (last && !("step" in part) && isLike(last, part)) {
      entries[entries.length - 1] = { ...last, count: last.count + part.count };
    } else entries.push(part);
  }
  return entries;
}

function isLike(a: StepPart, b: StepPart): boolean {
  return JSON.stringify({ ...a, count: 1 }) === JSON.stringify({ ...b, count: 1 });
}

/**
 * A sewn unit is squared up where its own pieces share an outer edge and sewing has had room to go astray: two
 * seams or more, or pieces that are trimmed there anyway, which is then one cut instead of many. Runs and the rows
 * of a set are left alone: their edges are the whole join's, and it is squared up once. And wherever a part was left
 * long beside the seams of this step.
 */
function isSquaredUp(join: SewnJoin, bench: Bench): boolean {
  if (join.within === null || isTrimmedAfter(join)) return true;
  if (join.isRun || join.within.pattern !== undefined) return false;
  return seamsInside(join) >= 2 || join.parts.some((part) => isTrimmedAcross(join, part, bench));
}

function isTrimmedAfter({ node, parts, leftLong }: SewnJoin): boolean {
  const { across } = sidesOf(node.direction);
  return parts.some((part) => (part.leftLong[across] ?? 0) > (leftLong[across] ?? 0));
}

function seamsInside(part: Sewn): number {
  if (!isJoin(part)) return 0;
  return part.parts.reduce((seams, inner) => seams + seamsInside(inner), part.parts.length - 1);
}

function isTrimmedAcross({ node: join }: SewnJoin, { node, cut }: Sewn, bench: Bench): boolean {
  if (node.kind !== "piece") return false;
  const piece = sizedPiece(node.piece, bench);
  const across = (join.direction === "beside") === node.turned ? piece.width : piece.height;
  return across > (join.direction === "beside" ? cut.height : cut.width);
}

/** What quilters check at the machine: parts less two allowances a seam is the unit; its sides are all equal. */
function assertSizes(step: Step): void {
  const [along, across] =
    step.direction === "beside" ? (["width", "height"] as const) : (["height", "width"] as const);
  const total: Length = sum(step.from.map((part) => times(part[along], part.count)));
  const sewnAway = times(step.seam, 2 * seamsIn(step));
  assert(subtract(total, sewnAway) === step.unfinished[along], "the parts less their seams make the unit");
  assert(
    step.from.every((part) => part[across] === step.unfinished[across]),
    "all parts of a step are as long as its seams",
  );
}
