import type { JoinDirection, LeftLong } from "../layout/index.ts";
import { add, type Length, length, type Size, subtract } from "../length/index.ts";
import { isLongJoin } from "../work/index.ts";
import type { Step, StepPart } from "./types.ts";

type Side = "width" | "height";
type Left = { readonly leftLong?: LeftLong | undefined };

const none = length(0);

/** Along which side the parts of a join follow one another, and which one its seams run along. */
export function sidesOf(direction: JoinDirection): { readonly along: Side; readonly across: Side } {
  return direction === "beside" ? { along: "width", across: "height" } : { along: "height", across: "width" };
}

/**
 * How much longer a join comes out than it is needed: by what is left long at its two ends; and on the sides that its
 * seams run to, only where every part is left long, for else they are trimmed even once it is sewn. A run of a longer
 * join is not trimmed there before that is whole: it keeps all that stands over. `parts`: of the join, not of its runs.
 */
export function leftLongOfJoin(direction: JoinDirection, parts: readonly Left[], isRun: boolean): LeftLong {
  const { along, across } = sidesOf(direction);
  const ends = parts.length === 1 ? [parts[0]] : [parts[0], parts.at(-1)];
  const atEnds = ends.reduce((total, part) => add(total, left(part, along)), none);
  const standing = parts.map((part) => left(part, across));
  const kept = length(isRun ? Math.max(...standing) : Math.min(...standing));
  return { ...side(along, atEnds), ...side(across, kept) };
}

function left(part: Left | undefined, of: Side): Length {
  return part?.leftLong?.[of] ?? none;
}

function side(name: Side, size: Length): LeftLong {
  return size === 0 ? {} : { [name]: size };
}

export function isLeftLong({ width, height }: LeftLong): boolean {
  return width !== undefined || height !== undefined;
}

/** A part with what is left long: what is cut, or what an earlier step came out at. */
export function takenSize({ width, height, leftLong = {} }: Size & Left): Size {
  return { width: add(width, leftLong.width ?? none), height: add(height, leftLong.height ?? none) };
}

/** Something is left long beside the seams of this step, and trimmed even with the rest once they are sewn. */
export function trimsAfter({
  direction,
  from,
  leftLong,
}: Pick<Step, "direction" | "from" | "leftLong">): boolean {
  const { across } = sidesOf(direction);
  return from.some((part) => left(part, across) > left({ leftLong }, across));
}

/** A long seam of sewn parts beside which nothing stands over: all its length is matched, and none of it trimmed. */
export function isMatchedAllAlong({ kind, direction, from, finished }: Step): boolean {
  const { across } = sidesOf(direction);
  const isLong = isLongJoin(finished[across], 0);
  return (
    kind === "join" &&
    isLong &&
    from.some((part) => "step" in part) &&
    from.every((part) => left(part, across) === 0)
  );
}

/**
 * Parts of a row that are left long and not at its ends: each is trimmed before its last seam, so that the row comes to
 * its size. What is left long at the inner end of a run is one too.
 */
export function fittedIn({ direction, from, leftLong }: Fitting): readonly StepPart[] {
  const { along } = sidesOf(direction);
  const laid = from.flatMap((part) => Array.from({ length: part.count }, () => part));
  let atEnds = left({ leftLong }, along);
  return laid.filter((part, index) => {
    const long = left(part, along);
    const staysLong = (index === 0 || index === laid.length - 1) && long <= atEnds;
    if (staysLong) atEnds = subtract(atEnds, long);
    return long > 0 && !staysLong;
  });
}

type Fitting = Pick<Step, "direction" | "from" | "leftLong">;
