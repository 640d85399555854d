import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  type Finished,
  finished,
  larger,
  length,
  roundDownTo,
  roundUpTo,
  type Size,
  smaller,
  subtract,
  toFinished,
} from "../length/index.ts";
import { copingStrips } from "./coping.ts";
import { rowsFor, smallestAlone, staysWhole } from "./heap.ts";
import { copingOf, joined } from "./joined.ts";
import { offerOf } from "./offer.ts";
import type { Made, Offer } from "./types.ts";

type Axis = "width" | "height";

/**
 * Her odd blocks brought to one width for a line down, or to one height for a line across: the least size on the
 * ruler's step that all can be brought to by strips that are no slivers. A block off the step gets a strip across the
 * line too, that takes the difference. Blocks that need nothing are left out.
 */
export function copedOffers(job: Job): readonly Offer[] {
  const blocks = rowsFor(job).flatMap((block) => orphanOf(block, job));
  const axes: readonly Axis[] = ["width", "height"];
  return axes.flatMap((axis) => {
    const target = commonSize(blocks, axis, job);
    return target === null ? [] : blocks.flatMap((block) => copedTo(target, block, { axis, job }));
  });
}

type Orphan = { readonly block: SizedPiece; readonly size: Size<Finished> };

/** What a block finishes at: whole as it came, else on the ruler's step; none that is too small to stand by itself. */
function orphanOf(block: SizedPiece, job: Job): readonly Orphan[] {
  if (block.kind !== "block" && block.kind !== "part-block") return [];
  const exact = { width: toFinished(block.width, job.seam), height: toFinished(block.height, job.seam) };
  const size = staysWhole(block)
    ? exact
    : { width: roundDownTo(exact.width, job.step), height: roundDownTo(exact.height, job.step) };
  return smaller(size.width, size.height) >= smallestAlone(job) ? [{ block, size }] : [];
}

/** From the largest on, the first size at which each block fits or has room for a strip; null: no block. */
function commonSize(blocks: readonly Orphan[], axis: Axis, job: Job): Finished | null {
  const sizes = blocks.map(({ size }) => size[axis]);
  if (sizes.length === 0) return null;
  const largest = roundUpTo(sizes.reduce(larger), job.step);
  const most = largest + 2 * smallestAlone(job);
  for (let size = Number(largest); size <= most; size += job.step) {
    if (sizes.every((one) => size === one || size - one >= smallestAlone(job))) return finished(length(size));
  }
  return null;
}

type Line = { readonly axis: Axis; readonly job: Job };

function copedTo(target: Finished, { block, size }: Orphan, { axis, job }: Line): readonly Offer[] {
  const piece: Made = { kind: "piece", piece: block.id, turned: false, ...size };
  const across = axis === "width" ? "height" : "width";
  const wide = stripped(piece, target, { axis, job });
  const made = stripped(wide, onStep(size[across], job), { axis: across, job });
  if (made.kind === "piece") return [];
  const insideOnly = block.grain !== "straight";
  return [offerOf({ pattern: "coping", made, insideOnly }, [block], job)];
}

/** The size itself, or the next on the ruler's step that leaves room for a strip. */
function onStep(size: Finished, job: Job): Finished {
  if (size % job.step === 0) return size;
  return roundUpTo(finished(length(size + smallestAlone(job))), job.step);
}

/** A strip on both sides where there is room for two, else on one. */
function stripped(part: Made, target: Finished, { axis, job }: Line): Made {
  const missing = subtract(target, part[axis]);
  if (missing === 0) return part;
  const strip = (side: Finished) =>
    copingOf(job.plain, { width: part.width, height: part.height, [axis]: side });
  const both = copingStrips(part[axis], target, job);
  const direction = axis === "width" ? "beside" : "below";
  if (both === null || both.finished[0] < smallestAlone(job)) {
    return joined(direction, [part, strip(missing)], job);
  }
  const [before, after] = both.finished;
  return joined(direction, [strip(before), part, strip(after)], job);
}
