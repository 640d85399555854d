import type { Job } from "../cloth/index.ts";

/** Moves that fit into so many seconds of one ordinary core: a starting value, since the clock has the last word. */
export function defaultEffort(job: Job, seconds: number): number {
  const pieces = job.pieces.reduce((sum, piece) => sum + (piece.kind === "crumbs" ? 0 : piece.count), 0);
  return Math.max(200, Math.round(seconds * (1000 + 1_000_000 / (150 + pieces))));
}
