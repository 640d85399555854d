import type { Job } from "../cloth/index.ts";
import { checkLayout } from "./checker.ts";
import { piecesIn } from "./heapBeside.ts";
import type { LayoutProblem } from "./problems.ts";
import { isCutUp, type Stays } from "./stays.ts";
import type { LayoutNode } from "./types.ts";
import { type Path, withoutGivers } from "./walk.ts";

/**
 * Of what should stay, what still can: the layout fits this job's back, the row is still hers to use and as large, and
 * there are as many of it. Of too many the first stay.
 */
export function heldStays({ layout: told, paths }: Stays, job: Job): Stays {
  // What is left long is settled anew, with the joins of the new plan.
  const layout = withoutGivers(told);
  const problems = checkLayout({ ...job, layout, buy: [] });
  if (problems.some(({ kind }) => wholeKinds.includes(kind))) return { layout, paths: [] };
  const spoilt = problems.filter(({ kind }) => !elsewhere.includes(kind));
  const stands = (path: Path) => spoilt.every((problem) => !isWithin(problem.path, path));
  const left = new Map(job.pieces.map((piece) => [piece.id, piece.count]));
  const begun = new Set<string>();
  return {
    layout,
    paths: paths.filter((path) => {
      const node = nodeAt(layout, path);
      return node !== null && stands(path) && isLeft(node, { left, begun, job });
    }),
  };
}

const wholeKinds: readonly LayoutProblem["kind"][] = ["layout-not-the-back", "too-deep", "too-many-cells"];

/** What the rest of the layout has a part in, and what is settled anew. */
const elsewhere: readonly LayoutProblem["kind"][] = [
  "used-too-often",
  "wrong-unused",
  "copy-gives-one-cell",
  "copy-out-of-range",
  "copy-too-short",
  "unknown-fabric",
  "cloth-not-from-a-length",
  "cloth-of-another-fabric",
  "cannot-be-shown-to-fit",
  "cloth-not-bought",
  "cloth-too-wide",
  "bought-too-little",
  "slab-too-large",
  "wrong-seam",
  "join-not-flattened",
];

function isWithin(path: Path, above: Path): boolean {
  return above.every((index, at) => path[at] === index);
}

export function nodeAt(layout: LayoutNode, path: Path): LayoutNode | null {
  let node: LayoutNode | undefined = layout;
  for (const index of path) node = node?.kind === "join" ? node.parts[index] : undefined;
  return node ?? null;
}

type Tally = { readonly left: Map<string, number>; readonly begun: Set<string>; readonly job: Job };

/** Takes what the node is made of off what is left, if there is enough. */
function isLeft(node: LayoutNode, { left, begun, job }: Tally): boolean {
  const fresh = piecesIn(node).filter(
    ({ piece, copy }) => copy === undefined || !begun.has(`${copy} of ${piece}`),
  );
  const wanted = new Map<string, number>();
  for (const { piece, count } of fresh) wanted.set(piece, (wanted.get(piece) ?? 0) + count);
  if ([...wanted].some(([piece, count]) => count > (left.get(piece) ?? 0))) return false;
  for (const [piece, count] of wanted) left.set(piece, (left.get(piece) ?? 0) - count);
  for (const { piece, copy } of fresh)
    if (copy !== undefined && isCutUp(job.pieces.find(({ id }) => id === piece)))
      begun.add(`${copy} of ${piece}`);
  return true;
}
