import type { Job, Method } from "../cloth/index.ts";
import {
  add,
  centimetres,
  cut,
  type DisplayUnit,
  type Finished,
  inches,
  type Length,
  length,
  type Size,
  toFinished,
} from "../length/index.ts";
import type { CutOffEdge } from "./types.ts";

/**
 * How much larger than the top a back must be on each side. A frame's clamps take about 2 in and the machine's head
 * needs about 2 more. Common practice; every shop and machine may ask for more.
 *
 * In centimetres the trade asks for 10, 7.5 and 5: a tape is read to a round number, and the 1.6 mm by which 10 cm
 * falls short of 4 in is far below what two hands can load a frame to.
 */
export function extraFor(method: Method, unit: DisplayUnit): Length {
  return extras[unit][method];
}

const extras = {
  in: { frame: inches(4), machine: inches(3), hand: inches(2) },
  cm: { frame: centimetres(10), machine: centimetres(7.5), hand: centimetres(5) },
} as const satisfies Record<DisplayUnit, Record<Method, Length>>;

/** The back for a top, edge to edge. */
export function backFor(top: Size, extra: Length): Size {
  return { width: add(top.width, extra, extra), height: add(top.height, extra, extra) };
}

/** What shows of a back inside its outer allowances: 68 × 88 in is 67½ × 87½ in. */
export function layoutSize(back: Size, seam: Length): Size<Finished> {
  return { width: toFinished(cut(back.width), seam), height: toFinished(cut(back.height), seam) };
}

/**
 * The ring that is cut away after quilting, from the raw edge in; half of what the back has more than its top.
 * Rounded up, since what lies on the line is cut. Nothing is known to be cut away where she gave no top.
 */
export function cutOffEdge(job: Pick<Job, "top" | "back">): CutOffEdge {
  if (job.top === null) return { width: length(0), height: length(0) };
  return {
    width: half(length(job.back.width - job.top.width)),
    height: half(length(job.back.height - job.top.height)),
  };
}

function half(all: Length): Length {
  return length(Math.ceil(all / 2));
}

/** How many equal squares that finish at `side` make a back at least `size` large. */
export function squaresFor(size: Size, side: Finished): { readonly across: number; readonly down: number } {
  return { across: Math.ceil(size.width / side), down: Math.ceil(size.height / side) };
}
