import { colourDifference, isUndyed, type Job, type SizedPiece } from "../../cloth/index.ts";
import { smallestCell } from "../stock.ts";
import type { LayoutNode } from "../types.ts";
import { joinerFor, roomOf } from "./bough.ts";
import { type Eye, inch } from "./fault.ts";
import type { Limits } from "./resize.ts";
import type { Box } from "./scene.ts";

/** What is looked at beside the layout, for a job. */
export function eyeOf(layout: LayoutNode, job: Job, halves: Eye["halves"] = null): Eye {
  const sized = job.pieces.filter((piece): piece is SizedPiece => piece.kind !== "crumbs");
  return {
    job,
    pieces: new Map(sized.map((piece) => [piece.id, piece])),
    outline: outlineOf(layout, job),
    halves,
    areLike: likenessOf(job),
  };
}

function outlineOf({ width, height }: LayoutNode, { top }: Job): Box | null {
  if (top === null) return null;
  const [x, y] = [(width - top.width) / 2, (height - top.height) / 2];
  return { x, y, right: x + top.width, bottom: y + top.height };
}

/**
 * Below 5 (CIEDE2000) nobody tells two fabrics apart across a table. Where fabrics are to blend, only a fabric and
 * itself are alike.
 */
function likenessOf({ fabrics, contrast }: Job): Eye["areLike"] {
  if (contrast === "blend") return (one, other) => one === other;
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const found = new Map<string, Map<string, boolean>>();
  return (one, other) => {
    if (one === other) return true;
    const row = found.get(one) ?? new Map<string, boolean>();
    const before = row.get(other);
    if (before !== undefined) return before;
    found.set(one, row);
    const [a, b] = [known.get(one), known.get(other)];
    const [first, second] = [a?.colours[0], b?.colours[0]];
    const dyed = a !== undefined && b !== undefined && !isUndyed(a) && !isUndyed(b);
    const like = dyed && !!first && !!second && colourDifference(first.lab, second.lab) < 5;
    row.set(other, like);
    return like;
  };
}

/** Is it a half-square triangle? */
export function isHalf(node: LayoutNode, { pieces }: Eye): boolean {
  return node.kind === "piece" && pieces.get(node.piece)?.kind === "half-square-triangle";
}

/** How far cells may be made smaller or larger. */
export function limitsOf({ job, pieces }: Eye): Limits {
  return {
    pieces,
    seam: job.seam,
    step: job.step,
    smallest: Math.ceil(Math.max(smallestCell(job), 2 * inch) / job.step) * job.step,
    plain: job.plain,
    room: roomOf(job),
    joiner: joinerFor(job),
  };
}
