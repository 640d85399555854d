import type { Style } from "../../../engine/back/index.ts";
import { jobFor } from "../../../engine/choice/index.ts";
import type { Amount, Job } from "../../../engine/cloth/index.ts";
import { defaultEffort, type Plan, type PlanRequest } from "../../../engine/plan/index.ts";
import type { ChangedPlan, PlanDocument, StayingCells } from "../../../files/index.ts";
import type { Beside } from "../../worker/index.ts";
import { makeOffers, nothingOffered, type Offer, type Offered } from "./offered.ts";
import { staysFrom } from "./stays.ts";

/** One plan that may be looked at: how much there is to sew in it, and what stays from an earlier one. */
export type Wish = {
  readonly style: Style;
  readonly seed: number;
  readonly amount: Amount;
  readonly stays: StayingCells | null;
  /** The plan as she changed it by hand, for this very job; null: as it was found. */
  readonly byHand: ChangedPlan | null;
};

/** What was found for a wish so far. `stopped` by her; `waiting` is gone on with by itself. */
export type Found = {
  /** The best so far; null: none yet. */
  readonly plan: PlanDocument | null;
  readonly state: "waiting" | "searching" | "found" | "stopped" | "failed";
  /** Of the search under way, 0 to 1. */
  readonly share: number;
  /** Share of the pieced part that is filled, 0 to 1; null: not known. */
  readonly covered: number | null;
  /** Seconds that were asked for in the longest search that came to its end. */
  readonly seconds: number;
};

/** A short look for each style, a long one for the chosen, and more where she asks for it. On any machine the same. */
export const seconds = { glance: 1, look: 6, longLook: 24 } as const;

/**
 * Where the plans for one job lie, each growing better while it is searched for. A snapshot is the same object until
 * something in it changes.
 */
export type Desk = {
  found(): ReadonlyMap<string, Found>;
  subscribe(listener: () => void): () => void;
  /** Searches so long, unless that was done before or is under way; `isFirst`: before all others in line. */
  search(wish: Wish, seconds: number, isFirst?: boolean): void;
  /** Lays a plan there that was found before. */
  put(wish: Wish, plan: PlanDocument): void;
  /** Ends the search; what she sees of it stays, or else the best so far. */
  stop(wish: Wish, seen?: PlanDocument): void;
  /** Ends the search, to go on with when she comes back to it. */
  pause(wish: Wish): void;
  /** The same for every search. */
  leave(): void;
  /** The plans that are offered; looked for once, beside the searches. */
  offered(): Offered;
  offer(): void;
};

export function keyOf({ style, seed, amount, stays, byHand }: Wish): string {
  const around = stays === null ? "" : ` ${numberOf(stays.plan)} ${stays.cells.join()}`;
  const changed = byHand === null ? "" : ` as ${numberOf(byHand.plan)}`;
  return `${style} ${seed} ${amount}${around}${changed}`;
}

const numbers = new Map<string, number>();

/** Texts of plans are long: each is known by the number it came in. */
function numberOf(text: string): number {
  const number = numbers.get(text) ?? numbers.size + 1;
  numbers.set(text, number);
  return number;
}

/** Of the search: more often nobody looks, and the page has other things to do. */
const worthShowing = 0.02;

export const nothingFound: Found = { plan: null, state: "waiting", share: 0, covered: null, seconds: 0 };

function requestFor({ style, seed, stays }: Wish, effort: number): PlanRequest {
  const staying = staysFrom(stays);
  return { style, seed, effort, ...(staying === null ? {} : { stays: staying }) };
}

export function openDesk(job: Job, beside: Pick<Beside, "solvePlan" | "solvePacked" | "openChoice">): Desk {
  let found: ReadonlyMap<string, Found> = new Map();
  const listeners = new Set<() => void>();
  const running = new Map<string, AbortController>();
  const { settled, settle } = settledPlans();
  let offered = nothingOffered;
  let offering: AbortController | null = null;

  const lay = (key: string, change: Partial<Found>) => {
    found = new Map(found).set(key, { ...(found.get(key) ?? nothingFound), ...change });
    for (const listener of listeners) listener();
  };
  const shownOf = (key: string, plan: Plan) => {
    const before = found.get(key)?.plan ?? null;
    return isBetter(plan, before, false) ? plan : before;
  };

  const run = async (wish: Wish, time: number, isFirst: boolean) => {
    const key = keyOf(wish);
    const stop = new AbortController();
    running.set(key, stop);
    lay(key, { state: "searching", share: 0 });
    try {
      const solved = await beside.solvePlan(
        jobFor(job, wish.amount),
        requestFor(wish, defaultEffort(job, time)),
        {
          isFirst,
          signal: stop.signal,
          onBetter: (plan) => lay(key, { plan: shownOf(key, plan) }),
          onProgress: ({ share, covered }) => {
            if (share - (found.get(key)?.share ?? 0) >= worthShowing) lay(key, { share, covered });
          },
        },
      );
      if (!solved.whole) return;
      lay(key, { plan: settle(key, solved.plan), state: "found", share: 1, seconds: time });
    } catch {
      if (running.get(key) === stop) lay(key, { state: "failed" });
    } finally {
      if (running.get(key) === stop) running.delete(key);
    }
  };

  // What she has looked at longer, or stopped at, stays as she saw it.
  const layOffer = ({ style, amount, plan }: Offer) => {
    const key = keyOf({ style, amount, seed: 1, stays: null, byHand: null });
    const before = found.get(key) ?? nothingFound;
    if (before.state === "stopped" || before.seconds >= seconds.glance) return;
    const better = { plan: settle(key, plan) };
    if (running.has(key)) lay(key, better);
    else lay(key, { ...better, state: "found", share: 1, seconds: seconds.glance });
  };

  const tell = (next: Offered) => {
    offered = next;
    if (next.kind === "made") for (const offer of next.offers) layOffer(offer);
    for (const listener of listeners) listener();
  };

  const end = (key: string, state: Found["state"], seen?: PlanDocument) => {
    const stop = running.get(key);
    if (stop === undefined) return;
    running.delete(key);
    stop.abort();
    const plan = seen ?? found.get(key)?.plan ?? null;
    if (state === "stopped" && plan !== null) settled.set(key, plan);
    lay(key, { plan, state });
  };

  return {
    found: () => found,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    search(wish, time, isFirst = false) {
      const key = keyOf(wish);
      if (running.has(key) || (found.get(key)?.seconds ?? 0) >= time) return;
      void run(wish, time, isFirst);
    },
    put(wish, plan) {
      settled.set(keyOf(wish), plan);
      lay(keyOf(wish), { plan, state: "found", share: 1, seconds: seconds.look });
    },
    stop: (wish, seen) => end(keyOf(wish), "stopped", seen),
    pause: (wish) => end(keyOf(wish), "waiting"),
    offered: () => offered,
    offer() {
      if (offering !== null || offered.kind === "made") return;
      const stop = new AbortController();
      offering = stop;
      const told = (next: Offered) => offering === stop && tell(next);
      makeOffers({ job, seconds: seconds.glance, beside, signal: stop.signal, onOffered: told })
        .catch(() => told({ kind: "made", offers: [], notes: [] }))
        .finally(() => {
          if (offering === stop) offering = null;
        });
    },
    leave() {
      offering?.abort();
      offering = null;
      for (const key of [...running.keys()]) end(key, "waiting");
    },
  };
}

/**
 * What whole searches came to, and what she stopped at. What a search showed on its way is not held against its end:
 * when it was shown is chance, and the same leftovers would come to other plans.
 */
function settledPlans() {
  const settled = new Map<string, PlanDocument>();
  const settle = (key: string, plan: PlanDocument): PlanDocument => {
    const before = settled.get(key) ?? null;
    const best = before === null || isBetter(plan, before, true) ? plan : before;
    settled.set(key, best);
    return best;
  };
  return { settled, settle };
}

// A longer search may give up a hair of cover for a calmer back: its own judgement goes before this one.
const aHair = 0.005;

/** A whole search has weighed more than cover; one under way is only shown where it covers more. */
export function isBetter(plan: PlanDocument, before: PlanDocument | null, whole: boolean): boolean {
  if (before === null) return true;
  const more = plan.figures.covered - before.figures.covered;
  return whole ? more >= -aHair : more > 0;
}

/** The next wish there may be: another plan of the same style. */
export function another({ seed, ...wish }: Wish): Wish {
  return { ...wish, seed: seed + 1, byHand: null };
}
