import { type Meeting, type Scene, whereOf } from "./scene.ts";
import type { Advice, PlaceOfCell } from "./types.ts";

/** Seams of several joins that lie end to end in one line. */
type Line = {
  readonly upright: boolean;
  readonly at: number;
  from: number;
  to: number;
  readonly meetings: Meeting[];
};

/**
 * On a frame long seams (half the side or more) lie along the rollers, which run across: one that crosses them stacks
 * its bulk at one spot, and the cloth beside it sags (handbooks of frame quilting). Where more of them run down than
 * across, the back is loaded sideways.
 */
export function sidewaysAdvice(scene: Scene): readonly Advice[] {
  const { layout } = scene.plan;
  if (scene.job.top?.method !== "frame") return [];
  const long = linesIn(scene).filter(
    ({ upright, from, to }) => 2 * (to - from) >= (upright ? layout.height : layout.width),
  );
  const down = long.filter(({ upright }) => upright);
  const across = long.filter(({ upright }) => !upright);
  if (sumOf(down) <= sumOf(across)) return [];
  const meetings = down.flatMap((line) => line.meetings);
  const cells = meetings.flatMap(({ one, other }) => [one, other]);
  const steps = meetings.map(({ step }) => step);
  return [{ kind: "load-sideways", where: whereOf(scene, cells, steps, () => false) }];
}

function sumOf(lines: readonly Line[]): number {
  return lines.reduce((sum, { from, to }) => sum + to - from, 0);
}

function linesIn({ cells, meetings }: Scene): readonly Line[] {
  const seams = meetings.flatMap((meeting) => {
    const [one, other] = [cells[meeting.one]?.place, cells[meeting.other]?.place];
    if (one === undefined || other === undefined || meeting.long === 0) return [];
    return [{ ...seamBetween(one, other), meetings: [meeting] }];
  });
  const lines: Line[] = [];
  for (const seam of seams.toSorted((a, b) => a.at - b.at || a.from - b.from)) {
    const last = lines.findLast(
      ({ upright, at, to }) => upright === seam.upright && at === seam.at && to >= seam.from,
    );
    if (last === undefined) lines.push(seam);
    else {
      last.to = Math.max(last.to, seam.to);
      last.meetings.push(...seam.meetings);
    }
  }
  return lines;
}

function seamBetween(one: PlaceOfCell, other: PlaceOfCell): Omit<Line, "meetings"> {
  const upright = one.x + one.width === other.x || other.x + other.width === one.x;
  const from = upright ? Math.max(one.y, other.y) : Math.max(one.x, other.x);
  const to = upright
    ? Math.min(one.y + one.height, other.y + other.height)
    : Math.min(one.x + one.width, other.x + other.width);
  return { upright, at: upright ? Math.max(one.x, other.x) : Math.max(one.y, other.y), from, to };
}
