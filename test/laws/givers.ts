import { inches } from "../../src/engine/length/index.ts";
import type { Step, StepPart } from "../../src/engine/sewing/index.ts";

type Side = "width" | "height";
type End = "first" | "last";

const longJoin = inches(18);
const manySeams = 6;
const leastLong = inches(1);

/**
 * The seams of the steps that are long (over 18 in, or more than 6 seams ending on one side) and beside which nothing
 * is left an inch long: from the steps' labels and sizes alone, one line a seam. Knows nothing of how they were made.
 */
export function seamsWithoutGiver(steps: readonly Step[]): string[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  return steps
    .filter(({ kind }) => kind === "join")
    .flatMap((step) => {
      const across = acrossOf(step);
      const laid = laidIn(step);
      return laid.slice(1).flatMap((after, index): string[] => {
        const before = laid[index] ?? after;
        const ends = Math.max(touching(before, across, "last", byId), touching(after, across, "first", byId));
        const isLong = step.finished[across] > longJoin || ends - 1 > manySeams;
        if (!isLong || gives(before, [across, "last"], byId) || gives(after, [across, "first"], byId))
          return [];
        return [`step ${step.id}, seam ${index + 1}`];
      });
    });
}

type Steps = ReadonlyMap<string, Step>;

function acrossOf({ direction }: Step): Side {
  return direction === "beside" ? "height" : "width";
}

function laidIn({ from }: Step): StepPart[] {
  return from.flatMap((part) => Array.from({ length: part.count }, () => part));
}

/** What an earlier step joined; null: a cell, or what is sewn before it is laid. */
function joinOf(part: StepPart, byId: Steps): Step | null {
  const step = "step" in part ? byId.get(part.step) : undefined;
  return step?.kind === "join" ? step : null;
}

function touching(part: StepPart, side: Side, end: End, byId: Steps): number {
  const join = joinOf(part, byId);
  if (join === null) return 1;
  const laid = laidIn(join);
  const met = acrossOf(join) === side ? [end === "first" ? laid[0] : laid.at(-1)] : laid;
  return met.reduce((sum, one) => sum + (one === undefined ? 0 : touching(one, side, end, byId)), 0);
}

/**
 * Whether anything at this end of the part is left long along this side: it stands over when the part is laid, or it
 * was trimmed within its row to bring that to its size.
 */
function gives(part: StepPart, at: readonly [Side, End], byId: Steps): "stands over" | "fitted" | false {
  const [side, end] = at;
  const join = joinOf(part, byId);
  const over = (part.leftLong?.[side] ?? 0) >= leastLong && "stands over";
  if (join === null) return over;
  const laid = laidIn(join);
  if (acrossOf(join) === side) {
    const beside = end === "first" ? laid[0] : laid.at(-1);
    const inner = beside !== undefined && gives(beside, at, byId);
    return inner === "stands over" ? over : inner;
  }
  const along = laid.map((one) => gives(one, at, byId));
  if (along.includes("fitted") || along.slice(1, -1).includes("stands over")) return "fitted";
  return along.includes("stands over") && (over || "fitted");
}
