/** The solver, beside the page. One search at a time; it is stopped by ending the worker. */
import { type PlanSearch, startPlan } from "../../engine/plan/index.ts";
import type { FromSolver, ToSolver } from "./messages.ts";
import { pack } from "./packed.ts";

// Long enough that the turns cost nothing, short enough that what is shown moves.
const turnMilliseconds = 60;
// Each plan shown is made whole, checked and copied: not more often than one can look, nor so often that little of the
// time is left for the search.
const shownEvery = 300;
const shownShare = 1 / 5;

addEventListener("message", ({ data }: MessageEvent<ToSolver>) => {
  try {
    solve(data);
  } catch (error) {
    say({ kind: "failed", detail: String(error) });
  }
});

function solve({ job, request, isWatched }: ToSolver): void {
  const search = startPlan(job, request);
  let shown = isWatched ? showing(search) : unwatched;
  let moves = 1;
  while (!search.done) {
    moves = turn(search, moves);
    say({
      kind: "progress",
      progress: { share: Math.min(1, search.moves / search.effort), covered: search.covered },
    });
    const since = performance.now() - shown.at;
    const isTime = since >= shownEvery && shown.took <= since * shownShare;
    if (search.covered > shown.covered && isTime && !search.done) shown = showing(search);
  }
  say({ kind: "done", plan: pack(search.plan()) });
}

type Showing = { readonly covered: number; readonly at: number; readonly took: number };

/** Nothing covers more than that. */
const unwatched: Showing = { covered: Number.POSITIVE_INFINITY, at: 0, took: 0 };

function showing(search: PlanSearch): Showing {
  const begun = performance.now();
  say({ kind: "better", plan: pack(search.plan()) });
  const at = performance.now();
  return { covered: search.covered, at, took: at - begun };
}

/** One turn; gives the number of moves for the next. How it is cut into turns does not change the plan. */
function turn(search: PlanSearch, moves: number): number {
  const start = performance.now();
  search.step(moves);
  const used = performance.now() - start;
  if (used < turnMilliseconds / 2) return moves * 2;
  return used > turnMilliseconds * 2 ? Math.max(1, moves >> 1) : moves;
}

function say(message: FromSolver): void {
  postMessage(message, { transfer: "plan" in message ? [message.plan.bytes.buffer] : [] });
}
