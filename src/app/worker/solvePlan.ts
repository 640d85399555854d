import type { Job } from "../../engine/cloth/index.ts";
import type { Plan, PlanRequest } from "../../engine/plan/index.ts";
import type { FromSolver, SolveProgress, ToSolver } from "./messages.ts";
import { type PackedPlan, unpack } from "./packed.ts";
import solverAddress from "./solver.ts?worker&url";
import { workerAddress } from "./trusted.ts";

export type SolveWishes = {
  /** A whole, checked plan each time: the first at once, then each that is better. */
  readonly onBetter?: (plan: Plan) => void;
  readonly onProgress?: (progress: SolveProgress) => void;
  /** Ends the search; what `onBetter` was told last is kept. */
  readonly signal?: AbortSignal;
  /** She waits for this one: it goes before all others in line. */
  readonly isFirst?: boolean;
};

/** `whole`: the search came to its end. Otherwise the plan is the best so far; `null` if there was none yet. */
export type Solved =
  | { readonly whole: true; readonly plan: Plan }
  | { readonly whole: false; readonly plan: Plan | null };

type PackedWishes = Omit<SolveWishes, "onBetter"> & { readonly onBetter?: (plan: PackedPlan) => void };
type PackedSolved =
  | { readonly whole: true; readonly plan: PackedPlan }
  | { readonly whole: false; readonly plan: PackedPlan | null };

type Search = {
  readonly message: ToSolver;
  readonly wishes: PackedWishes;
  readonly done: (solved: PackedSolved) => void;
  readonly failed: (error: Error) => void;
};

type Working = {
  readonly search: Search;
  /** Ends its worker; what becomes of the search is for others to say. */
  readonly letGo: () => void;
};

// One core is left for the page.
const most = () => Math.max(1, Math.min(4, (navigator.hardwareConcurrency || 2) - 1));

const waiting: Search[] = [];
const working = new Set<Working>();
const idle: Worker[] = [];

/**
 * Searches for a plan without holding up the page. More searches than there are cores to spare wait in line. Same
 * job, style, seed and effort give the same plan. Rejects only where the solver itself fails.
 */
export async function solvePlan(job: Job, request: PlanRequest, wishes: SolveWishes = {}): Promise<Solved> {
  const { onBetter, ...others } = wishes;
  const solved = await solvePacked(job, request, {
    ...others,
    ...(onBetter === undefined ? {} : { onBetter: (plan) => onBetter(unpack(plan)) }),
  });
  if (solved.whole) return { whole: true, plan: unpack(solved.plan) };
  return { whole: false, plan: solved.plan === null ? null : unpack(solved.plan) };
}

/** The same, its plans left as they came: for those that nobody may ever look at. */
export function solvePacked(
  job: Job,
  request: PlanRequest,
  wishes: PackedWishes = {},
): Promise<PackedSolved> {
  return new Promise((done, failed) => {
    const isWatched = wishes.onBetter !== undefined;
    const search: Search = { message: { kind: "start", job, request, isWatched }, wishes, done, failed };
    if (wishes.signal?.aborted) return done({ whole: false, plan: null });
    if (wishes.isFirst) waiting.unshift(search);
    else waiting.push(search);
    wishes.signal?.addEventListener("abort", () => leaveLine(search), { once: true });
    startSoon();
  });
}

function leaveLine(search: Search): void {
  const at = waiting.indexOf(search);
  if (at < 0) return;
  waiting.splice(at, 1);
  search.done({ whole: false, plan: null });
}

/** A worker is begun and given a whole job: what she pressed is answered first. */
function startSoon(): void {
  setTimeout(startNext);
}

function startNext(): void {
  if (waiting[0]?.wishes.isFirst) makeRoom();
  const search = working.size < most() ? waiting.shift() : undefined;
  if (search !== undefined) run(search, idle.pop() ?? newSolver());
  restLater();
}

// What nobody works with holds memory for nothing; but a new solver is slow at first, and a search may follow soon.
const idleMilliseconds = 5000;
let rest: ReturnType<typeof setTimeout> | undefined;

function restLater(): void {
  clearTimeout(rest);
  rest = setTimeout(() => {
    if (working.size === 0) for (const worker of idle.splice(0)) worker.terminate();
  }, idleMilliseconds);
}

/** With a large heap a search may be in the middle of a long move; another time it begins again and finds the same. */
function makeRoom(): void {
  if (working.size < most()) return;
  const other = [...working].reverse().find(({ search }) => !search.wishes.isFirst);
  if (other === undefined) return;
  other.letGo();
  waiting.splice(1, 0, other.search);
}

function newSolver(): Worker {
  return new Worker(workerAddress(solverAddress), { type: "module", name: "solver" });
}

function run(search: Search, worker: Worker): void {
  const { wishes } = search;
  const over = new AbortController();
  let best: PackedPlan | null = null;
  const leave = () => {
    over.abort();
    working.delete(one);
  };
  const letGo = () => {
    leave();
    worker.terminate();
  };
  const one: Working = { search, letGo };
  working.add(one);
  const fail = (detail: string) => {
    letGo();
    startNext();
    search.failed(new Error(detail));
  };
  const hear = ({ data }: MessageEvent<FromSolver>) => {
    if (data.kind === "progress") return wishes.onProgress?.(data.progress);
    if (data.kind === "failed") return fail(data.detail);
    best = data.plan;
    wishes.onBetter?.(data.plan);
    if (data.kind === "better") return;
    leave();
    idle.push(worker);
    search.done({ whole: true, plan: data.plan });
    startNext();
  };
  const options = { signal: over.signal };
  worker.addEventListener("message", hear, options);
  worker.addEventListener(
    "error",
    ({ message }) => fail(message || "the solver could not be started"),
    options,
  );
  // A solver in the middle of a move hears nothing: it is ended, and what it has told so far is kept.
  wishes.signal?.addEventListener(
    "abort",
    () => {
      letGo();
      startSoon();
      search.done({ whole: false, plan: best });
    },
    options,
  );
  worker.postMessage(search.message);
}
