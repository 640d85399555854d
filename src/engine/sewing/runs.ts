import type { JoinNode, LayoutNode } from "../layout/index.ts";
import { finished, inches, type Length, subtract, sum } from "../length/index.ts";

/** A part of the back that one sews as one piece of work, and how long a run of a long join gets. */
export const sectionSize: Length = inches(24);
/** "About 24 in": a little more is still one piece of work rather than two. */
export const sectionAtMost: Length = inches(26);

/** A big plain part of the back: cut and joined last, to what the piecing really measures. */
export function isPlainSection(node: LayoutNode): boolean {
  return node.kind === "cloth" && node.role === "plain" && Math.max(node.width, node.height) > sectionAtMost;
}

/**
 * The parts of a long join in groups, each about 24 in long at most, in order; a group of several is sewn as a run
 * of its own and the runs are joined last, along the same seams. A join that is short enough, or of which no two
 * parts fit into a run, comes back as single parts.
 */
export function runsOf(join: JoinNode): readonly (readonly LayoutNode[])[] {
  const singles = join.parts.map((part) => [part]);
  if (lengthAlong(join, join) <= sectionAtMost) return singles;
  const runs = evenRuns(join);
  return runs.length > 1 ? runs : singles;
}

/** A run of a join: the same direction and seam, a piece of its length. */
export function runNode(join: JoinNode, parts: readonly LayoutNode[]): JoinNode {
  const along = finished(sum(parts.map((part) => lengthAlong(join, part))));
  return {
    kind: "join",
    direction: join.direction,
    seam: join.seam,
    width: join.direction === "beside" ? along : join.width,
    height: join.direction === "beside" ? join.height : along,
    parts,
  };
}

// The fewest runs of at most 24 in; then, as many, the shortest, so that no run is left with a single part.
function evenRuns(join: JoinNode): LayoutNode[][] {
  const shorten = inches(1, 2);
  let limit = sectionSize;
  let runs = runsUpTo(join, limit);
  for (;;) {
    limit = subtract(limit, shorten);
    const shorter = runsUpTo(join, limit);
    if (limit <= 0 || shorter.length > runs.length) return runs;
    runs = shorter;
  }
}

function runsUpTo(join: JoinNode, limit: Length): LayoutNode[][] {
  const runs: LayoutNode[][] = [];
  let room = 0;
  let open = false;
  for (const part of join.parts) {
    const alone = isPlainSection(part);
    const along = lengthAlong(join, part);
    const run = runs.at(-1);
    if (run && open && !alone && along <= room) run.push(part);
    else {
      runs.push([part]);
      room = limit;
    }
    room -= along;
    open = !alone;
  }
  return runs;
}

function lengthAlong(join: JoinNode, node: LayoutNode): Length {
  return join.direction === "beside" ? node.width : node.height;
}
