import type { JoinNode, LayoutNode, LeafNode, LeftLong, Quarter, Seams } from "../layout/index.ts";
import { leastLeftLong, seamsOfPart } from "../layout/index.ts";
import { assert, finished, type Length, length, type Size, subtract, toFinished } from "../length/index.ts";
import type { Step, StepPart } from "./types.ts";

/**
 * Sews the steps up again on paper: reads nothing but their labels and sizes and gives the layout they make, with
 * runs put back into the join they are runs of (`flattened`). This is the proof that a plan can be sewn as told.
 * Throws where a step uses what isn't made yet or is used already, where sizes don't add up, or where something
 * is left over.
 */
export function reassemble(steps: readonly Step[]): LayoutNode {
  assertEachUsedOnce(steps);
  const last = steps.at(-1);
  assert(last !== undefined, "there is something to sew");
  const byId = new Map(steps.map((step) => [step.id, step]));
  return flattened(nodeOfStep(last, outerSeamsOf(last), byId));
}

/** The layout with every join that is only a run of another (same direction and seam, no pattern) put back into it. */
export function flattened(node: LayoutNode): LayoutNode {
  if (node.kind !== "join") return node;
  const parts = node.parts.map(flattened).flatMap((part) => (isRunOf(node, part) ? part.parts : [part]));
  const [only] = parts;
  return parts.length === 1 && only !== undefined ? only : { ...node, parts };
}

function isRunOf(join: JoinNode, part: LayoutNode): part is JoinNode {
  return (
    part.kind === "join" &&
    part.pattern === undefined &&
    part.direction === join.direction &&
    part.seam === join.seam
  );
}

/** No step is used before it is made; each but the last is used once; every size is that of the step it names. */
function assertEachUsedOnce(steps: readonly Step[]): void {
  const waiting = new Map<string, Step>();
  const byId = new Map(steps.map((step) => [step.id, step]));
  for (const step of steps) {
    assertLeftLong(step, step === steps.at(-1), byId);
    for (const part of step.from) {
      if ("step" in part) takeFrom(waiting, part);
    }
    assert(!waiting.has(step.id), `step ${step.id} is made once`);
    waiting.set(step.id, step);
  }
  assert(waiting.size === 1 && waiting.has(steps.at(-1)?.id ?? ""), "every unit is sewn into the back");
}

function takeFrom(waiting: Map<string, Step>, part: StepPart & { readonly step: string }): void {
  const made = waiting.get(part.step);
  assert(made !== undefined, `unit ${part.step} is made before it is used, and used once`);
  assert(
    made.unfinished.width === part.width && made.unfinished.height === part.height && part.count === 1,
    `unit ${part.step} is laid in the size it came out`,
  );
  assert(isAlike(made.leftLong, part.leftLong), `unit ${part.step} is laid as long as it was left`);
  waiting.delete(part.step);
}

/**
 * What is left long is left long enough to be trimmed, and is: at the ends of a row with what the row is joined to;
 * within it before the row is closed; beside the seams of a step where it is squared up, save what all its parts have
 * together. Of the back nothing is left long.
 */
function assertLeftLong(step: Step, isLast: boolean, byId: ReadonlyMap<string, Step>): void {
  const beside = step.direction === "beside";
  const [along, across] = beside ? (["width", "height"] as const) : (["height", "width"] as const);
  const longer = step.from.map(({ leftLong }) => leftLong ?? {});
  const enough = (left: Length | undefined) => left === undefined || left >= leastLeftLong;
  assert(
    longer.every(({ width, height }) => enough(width) && enough(height)),
    `what is left long in step ${step.id} is at least an inch`,
  );
  const told = step.leftLong ?? {};
  const parts = besideSeamsOf(step, byId);
  const standing = parts.map(({ leftLong }) => leftLong?.[across] ?? 0);
  const kept = step.squareUp === undefined ? Math.max(...standing) : Math.min(...standing);
  const last = isOne(step) ? 0 : (parts.at(-1)?.leftLong?.[along] ?? 0);
  const ends = (parts[0]?.leftLong?.[along] ?? 0) + last;
  assert(
    !isLast || step.squareUp !== undefined || standing.every((left) => left === 0),
    "the back is trimmed to its size",
  );
  assert(
    isLast ? isAlike(told, {}) : (told[along] ?? 0) === ends && (told[across] ?? 0) === kept,
    `unit ${step.id} is left as long as its parts`,
  );
}

/** What lies beside the seams of a join: what was only sewn to a run of it, and not squared up, part by part. */
function besideSeamsOf(join: Step, byId: ReadonlyMap<string, Step>): readonly StepPart[] {
  return join.from.flatMap((part) => {
    const made = "step" in part ? byId.get(part.step) : undefined;
    const isRun =
      made?.kind === "join" &&
      made.direction === join.direction &&
      made.seam === join.seam &&
      made.pattern === undefined &&
      made.squareUp === undefined;
    return isRun ? besideSeamsOf(made, byId) : [part];
  });
}

function isOne({ from }: Step): boolean {
  return from.length === 1 && from[0]?.count === 1;
}

function isAlike(one: LeftLong = {}, other: LeftLong = {}): boolean {
  return one.width === other.width && one.height === other.height;
}

/** The last step's outer edge, which no other join sews: alike on all four sides. */
function outerSeamsOf({ unfinished, finished: cell }: Step): Seams {
  const across = length(subtract(unfinished.width, cell.width) / 2);
  const down = length(subtract(unfinished.height, cell.height) / 2);
  return { left: across, right: across, top: down, bottom: down };
}

function nodeOfStep(step: Step, seams: Seams, byId: ReadonlyMap<string, Step>): LayoutNode {
  const cell = cellOf(step.unfinished, seams);
  assert(
    cell.width === step.finished.width && cell.height === step.finished.height,
    `unit ${step.id} finishes at its size once it is sewn in`,
  );
  if (step.kind === "unit") return { kind: "unit", ...cell, ...contentsOfUnit(step) };
  if (step.kind === "slab") return { kind: "slab", ...cell, ...contentsOfSlab(step) };
  return joinOfStep(step, seams, byId);
}

function joinOfStep(step: Step, seams: Seams, byId: ReadonlyMap<string, Step>): LayoutNode {
  const laid = step.from.flatMap((part) => Array.from({ length: part.count }, () => part));
  const empty: JoinNode = {
    kind: "join",
    direction: step.direction,
    seam: step.seam,
    ...(step.pattern === undefined ? {} : { pattern: step.pattern }),
    ...step.finished,
    parts: [],
  };
  // Only their number matters for telling an outer side from an inner one.
  const numbered = { ...empty, parts: laid.map(() => empty) };
  const parts = laid.map((part, index) => nodeOfPart(part, seamsOfPart(numbered, index, seams), byId));
  assertTiles(empty, parts);
  return { ...empty, parts };
}

function assertTiles(join: JoinNode, parts: readonly LayoutNode[]): void {
  const beside = join.direction === "beside";
  const along = parts.reduce((sum, part) => sum + (beside ? part.width : part.height), 0);
  assert(along === (beside ? join.width : join.height), "the parts make the whole length");
  assert(
    parts.every((part) => (beside ? part.height === join.height : part.width === join.width)),
    "the parts have equal sides",
  );
}

function nodeOfPart(part: StepPart, seams: Seams, byId: ReadonlyMap<string, Step>): LayoutNode {
  if (!("step" in part)) return leafOf(part, cellOf(part, seams));
  const step = byId.get(part.step);
  assert(step !== undefined, `unit ${part.step} is among the steps`);
  return nodeOfStep(step, seams, byId);
}

function leafOf(part: Exclude<StepPart, { readonly step: string }>, cell: Size<LeafNode["width"]>): LeafNode {
  const left = part.leftLong === undefined ? {} : { leftLong: part.leftLong };
  if ("cloth" in part) {
    return { kind: "cloth", fabric: part.cloth, source: part.source, role: part.role, ...cell, ...left };
  }
  return {
    kind: "piece",
    piece: part.piece,
    turned: part.turned === true,
    ...(part.quarter === undefined ? {} : { quarter: part.quarter }),
    ...(part.copy === undefined ? {} : { copy: part.copy }),
    ...cell,
    ...left,
  };
}

function cellOf({ width, height }: Size<Step["unfinished"]["width"]>, seams: Seams): Size<LeafNode["width"]> {
  const cell = {
    width: toFinished(width, seams.left, seams.right),
    height: toFinished(height, seams.top, seams.bottom),
  };
  assert(cell.width > 0 && cell.height > 0, "something shows between the seams");
  return { width: finished(cell.width), height: finished(cell.height) };
}

type PieceCount = { piece: string; count: number };

function contentsOfUnit(step: Step) {
  const pieces: PieceCount[] = [];
  const rotations: Quarter[] = [];
  const cloth = [];
  for (const part of step.from) {
    if ("piece" in part) {
      countPiece(pieces, part);
      const { quarter } = part;
      if (quarter !== undefined) rotations.push(...Array.from({ length: part.count }, () => quarter));
    } else if ("cloth" in part) {
      const { cloth: fabric, source, width, height, count } = part;
      cloth.push({ fabric, source, width, height, count });
    }
  }
  const turns = rotations.length > 0 ? { rotations } : {};
  return { pattern: step.pattern ?? "", ...turns, pieces, cloth };
}

function contentsOfSlab(step: Step) {
  const pieces: PieceCount[] = [];
  let crumbs: string | undefined;
  for (const part of step.from) {
    if (!("piece" in part)) continue;
    // Crumbs have no size of their own: they are laid as the whole slab.
    const isCrumbs = part.width === step.unfinished.width && part.height === step.unfinished.height;
    if (isCrumbs && crumbs === undefined) crumbs = part.piece;
    else countPiece(pieces, part);
  }
  return { ...(crumbs === undefined ? {} : { crumbs }), ...(pieces.length > 0 ? { pieces } : {}) };
}

function countPiece(pieces: PieceCount[], { piece, count }: PieceCount): void {
  const last = pieces.at(-1);
  if (last?.piece === piece) last.count += count;
  else pieces.push({ piece, count });
}
