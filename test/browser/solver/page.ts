/** The solver in a page of its own, so that it can be tried without any screen. */
import table from "../../../samples/garden-room.csv?raw";
import { solvePlan } from "../../../src/app/worker/solvePlan.ts";
import { jobOf } from "./job.ts";

const job = jobOf(table);
const request = { style: "insert-across", seed: 1, effort: 3000 } as const;

/** Plans one after the other, all the way. */
async function whole() {
  let better = 0;
  const shares: number[] = [];
  const solved = await solvePlan(job, request, {
    onBetter: () => {
      better += 1;
    },
    onProgress: ({ share }) => shares.push(share),
  });
  return { plan: solved.plan, whole: solved.whole, better, shares };
}

/** A search that would take an hour, stopped as soon as there is something to keep. */
async function stopped() {
  const stop = new AbortController();
  const order: string[] = [];
  let ticks = 0;
  const clock = setInterval(() => {
    ticks += 1;
  }, 10);
  const wanted = { ...request, effort: 100_000_000 };
  const searching = solvePlan(job, wanted, {
    signal: stop.signal,
    onBetter: () => {
      if (order.length === 0) setTimeout(ask, 400);
      order.push("better");
    },
  });
  const ask = () => {
    order.push("stop");
    asked = performance.now();
    stop.abort();
  };
  let asked = 0;
  const solved = await searching;
  const took = performance.now() - asked;
  order.push("over");
  const seen = order.length;
  await new Promise((later) => setTimeout(later, 300));
  clearInterval(clock);
  return {
    whole: solved.whole,
    hasPlan: solved.plan !== null,
    order,
    afterwards: order.length - seen,
    ticks,
    took,
  };
}

/** Stopped before it was its turn, and before it was asked at all. */
async function stoppedEarly() {
  const all = Array.from({ length: 6 }, () => new AbortController());
  const searching = all.map(({ signal }) => solvePlan(job, { ...request, effort: 100_000_000 }, { signal }));
  for (const stop of all) stop.abort();
  const outcomes = await Promise.all(searching);
  const never = await solvePlan(job, request, { signal: AbortSignal.abort() });
  const next = await solvePlan(job, { ...request, effort: 200 });
  return { outcomes: outcomes.map((outcome) => outcome.whole), never, next: next.whole };
}

/** What is no job at all. */
async function failing() {
  const none = { ...job, pieces: null };
  // As a fault of our own would bring it about; no screen can.
  const said = await solvePlan(JSON.parse(JSON.stringify(none)), request).catch(
    (error: Error) => error.message,
  );
  const next = await solvePlan(job, { ...request, effort: 200 });
  return { said, next: next.whole };
}

const tries = { whole, stopped, stoppedEarly, failing };
export type Tries = typeof tries;

declare global {
  interface Window {
    tries: Tries;
  }
}
window.tries = tries;
