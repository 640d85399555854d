import type { Job } from "../../engine/cloth/index.ts";
import type { Plan, PlanRequest } from "../../engine/plan/index.ts";
import type { FromSolver, SolveProgress, ToSolver } from "./messages.ts";
import solverAddress from "./solver.ts?worker&url";
import { workerAddress } from "./trusted.ts";

export type SolveWishes = {
  /** A whole, checked plan each time: the first at once, then each that is better. */
  readonly onBetter?: (plan: Plan) => void;
  readonly onProgress?: (progress: SolveProgress) => void;
  /** Ends the search; what `onBetter` was told last is kept. */
  readonly signal?: AbortSignal;
};

/** `whole`: the search came to its end. Otherwise the plan is the best so far; `null` if there was none yet. */
export type Solved =
  | { readonly whole: true; readonly plan: Plan }
  | { readonly whole: false; readonly plan: Plan | null };

type Search = {
  readonly message: ToSolver;
  readonly wishes: SolveWishes;
  readonly done: (solved: Solved) => void;
  readonly failed: (error: Error) => void;
};

// One core is left for the page.
const most = Math.max(1, Math.min(4, (navigator.hardwareConcurrency || 2) - 1));

const waiting: Search[] = [];
const idle: Worker[] = [];
let working = 0;

/**
 * Searches for a plan without holding up the page. More searches than there are cores to spare wait in line. Same
 * job, style, seed and effort give the same plan. Rejects only where the solver itself fails.
 */
export function solvePlan(job: Job, request: PlanRequest, wishes: SolveWishes = {}): Promise<Solved> {
  return new Promise((done, failed) => {
    const isWatched = wishes.onBetter !== undefined;
    const search: Search = { message: { kind: "start", job, request, isWatched }, wishes, done, failed };
    if (wishes.signal?.aborted) return done({ whole: false, plan: null });
    waiting.push(search);
    wishes.signal?.addEventListener("abort", () => leaveLine(search), { once: true });
    startNext();
  });
}

function leaveLine(search: Search): void {
  const at = waiting.indexOf(search);
  if (at < 0) return;
  waiting.splice(at, 1);
  search.done({ whole: false, plan: null });
}

function startNext(): void {
  if (working >= most) return;
  const search = waiting.shift();
  if (search === undefined) return;
  working += 1;
  run(search, idle.pop() ?? newSolver());
}

function newSolver(): Worker {
  return new Worker(workerAddress(solverAddress), { type: "module", name: "solver" });
}

function run(search: Search, worker: Worker): void {
  const { wishes } = search;
  const over = new AbortController();
  let best: Plan | null = null;
  const end = (after: "keep" | "let-go") => {
    over.abort();
    working -= 1;
    if (after === "keep") idle.push(worker);
    else worker.terminate();
    startNext();
  };
  const hear = ({ data }: MessageEvent<FromSolver>) => {
    if (data.kind === "progress") return wishes.onProgress?.(data.progress);
    if (data.kind === "failed") {
      end("let-go");
      return search.failed(new Error(data.detail));
    }
    best = data.plan;
    wishes.onBetter?.(data.plan);
    if (data.kind === "better") return;
    end("keep");
    search.done({ whole: true, plan: data.plan });
  };
  const options = { signal: over.signal };
  worker.addEventListener("message", hear, options);
  worker.addEventListener(
    "error",
    (event) => {
      end("let-go");
      search.failed(new Error(event.message || "the solver could not be started"));
    },
    options,
  );
  // A solver in the middle of a move hears nothing: it is ended, and what it has told so far is kept.
  wishes.signal?.addEventListener(
    "abort",
    () => {
      end("let-go");
      search.done({ whole: false, plan: best });
    },
    options,
  );
  worker.postMessage(search.message);
}
