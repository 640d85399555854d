import { type Length, length, times } from "../length/index.ts";
import { handsOnMinutes, type Range, slabJoins, type Work } from "../work/index.ts";
import { sidesOf } from "./leftLong.ts";
import { seamsIn } from "./steps.ts";
import type { Step } from "./types.ts";

/** Steps for one sitting, in the order of sewing. */
export type Batch = { readonly steps: readonly Step[]; readonly minutes: Range };

/** Getting the work out and putting it away again, the quick hand first. From memory. */
const comingAndGoing: Range = [3, 6];

/** What one step takes by itself: its cuts and trims, its seams and their pressing, and squaring it up. In minutes. */
export function stepMinutes(step: Step): Range {
  return handsOnMinutes(workOf(step));
}

// What is cut from bought cloth and lengths takes a cut each way; a leftover is trimmed on one side, more or less.
function workOf(step: Step): Work {
  const cloth = step.from.filter((part) => "cloth" in part);
  const pieces = step.from.filter((part) => "piece" in part);
  const counted = (parts: Step["from"]) => parts.reduce((count, part) => count + part.count, 0);
  const joins = step.kind === "slab" ? slabJoins(step.finished) : seamsIn(step);
  return {
    joins,
    seamLength: times(seamOf(step), joins),
    cuts: 2 * counted(cloth),
    trims: counted(pieces),
    squareUps: step.squareUp === undefined ? 0 : 1,
  };
}

/** How long one of its seams is; in a unit or a slab about half of its longer side. */
function seamOf({ kind, direction, unfinished: { width, height } }: Step): Length {
  if (kind === "join") return { width, height }[sidesOf(direction).across];
  return length(Math.round(Math.max(width, height) / 2));
}

/**
 * The steps for a sitting of so many minutes, by the careful hand: each has all that it takes, none is part of a row
 * that stays half sewn, and the sitting ends with as few loose sections as its time allows. `null`: nothing that ends
 * so fits into the time, or all is done.
 */
export function batchFor(steps: readonly Step[], done: ReadonlySet<string>, minutes: number): Batch | null {
  const ends = endsWithin(tidyParts(steps, done), minutes);
  const worthwhile = ends.filter((end) => batchOf(steps, end).minutes[1] >= minutes / 2);
  const fewest = Math.min(...worthwhile.map((end) => looseIn(end, steps)));
  const best = worthwhile.findLast((end) => looseIn(end, steps) === fewest) ?? ends.at(-1);
  return best === undefined ? null : batchOf(steps, best);
}

/** The least that could be sewn in one sitting and end tidy; `null`: all is done. */
export function shortestBatch(steps: readonly Step[], done: ReadonlySet<string>): Batch | null {
  const batches = tidyParts(steps, done).map((part) => batchOf(steps, part));
  return batches.reduce<Batch | null>(
    (least, batch) => (least === null || batch.minutes[1] < least.minutes[1] ? batch : least),
    null,
  );
}

type Steps = ReadonlySet<Step>;

/** For each step that one may end with, itself and all that must still be sewn before it. */
function tidyParts(steps: readonly Step[], done: ReadonlySet<string>): readonly Steps[] {
  const takers = takersOf(steps);
  const open = steps.filter(({ id }) => !done.has(id));
  return open
    .filter((step) => !isRun(step, takers.get(step.id)))
    .map((step) => new Set(stillBefore(step, open)));
}

function stillBefore(step: Step, open: readonly Step[]): readonly Step[] {
  const needed = takenBy(step).flatMap((id) => open.find((one) => one.id === id) ?? []);
  return [...needed.flatMap((one) => stillBefore(one, open)), step];
}

function takenBy({ from }: Step): readonly string[] {
  return from.flatMap((part) => ("step" in part ? [part.step] : []));
}

/** The step that each one is sewn into. */
function takersOf(steps: readonly Step[]): ReadonlyMap<string, Step> {
  return new Map(steps.flatMap((step) => takenBy(step).map((id) => [id, step] as const)));
}

/** A length of a longer row: by itself it is no unit, and hangs until the row is whole. */
export function isRun(step: Step, taker: Step | undefined): boolean {
  return (
    step.kind === "join" &&
    taker?.kind === "join" &&
    step.direction === taker.direction &&
    step.seam === taker.seam &&
    step.pattern === undefined
  );
}

/**
 * Where a sitting may end: one part after another while they fit. One that is too long is passed over while there is
 * more than half of the time left; later it is where she stops, for she would leave one section for another.
 */
function endsWithin(parts: readonly Steps[], minutes: number): readonly Steps[] {
  const ends: Steps[] = [];
  for (const part of parts) {
    const before = ends.at(-1) ?? new Set<Step>();
    const all = new Set([...before, ...part]);
    if (minutesOf(all)[1] <= minutes) ends.push(all);
    else if (before.size > 0 && minutesOf(before)[1] >= minutes / 2) break;
  }
  return ends;
}

function batchOf(steps: readonly Step[], taken: Steps): Batch {
  return { steps: steps.filter((step) => taken.has(step)), minutes: minutesOf(taken) };
}

function minutesOf(steps: Steps): Range {
  const each = [...steps].map(stepMinutes);
  const total = (side: 0 | 1) => each.reduce((minutes, range) => minutes + range[side], comingAndGoing[side]);
  return [Math.floor(total(0)), Math.ceil(total(1))];
}

/** Sewn joins that nothing of the sitting takes up. Units and slabs may lie in a pile. */
function looseIn(taken: Steps, steps: readonly Step[]): number {
  const takers = takersOf(steps);
  const isLoose = (step: Step) => {
    const taker = takers.get(step.id);
    return step.kind === "join" && (taker === undefined || !taken.has(taker));
  };
  return [...taken].filter(isLoose).length;
}
