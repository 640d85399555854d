import {
  apart,
  type Candidate,
  type ChoiceNote,
  candidatesFor,
  choose,
  glanceOf,
  jobFor,
  type Reason,
} from "../../../engine/choice/index.ts";
import type { Amount, Job } from "../../../engine/cloth/index.ts";
import { defaultEffort, type Plan } from "../../../engine/plan/index.ts";
import type { solvePlan } from "../../worker/index.ts";

/** A plan that is offered, and what speaks for it. */
export type Offer = {
  readonly style: Plan["style"];
  readonly amount: Amount;
  readonly plan: Plan;
  readonly reasons: readonly Reason[];
};

/** `making`: not known yet which differ; it grows from 0 to 1. */
export type Offered =
  | { readonly kind: "making"; readonly share: number }
  | { readonly kind: "made"; readonly offers: readonly Offer[]; readonly notes: readonly ChoiceNote[] };

export const nothingOffered: Offered = { kind: "making", share: 0 };

type Choosing = {
  readonly job: Job;
  /** Of each plan that is offered. */
  readonly seconds: number;
  readonly solve: typeof solvePlan;
  readonly signal: AbortSignal;
  readonly onOffered: (offered: Offered) => void;
};

type Made = Map<Candidate, { readonly plan: Plan; readonly isLong: boolean }>;

/**
 * The same choice as the engine's own, its searches beside one another: a short look at every plan there may be, then
 * a longer one at those that would be offered, until all that are offered have had it. Gives up when told to.
 */
export async function makeOffers({ job, seconds, solve, signal, onOffered }: Choosing): Promise<void> {
  const effort = defaultEffort(job, seconds);
  const candidates = candidatesFor(job);
  const made: Made = new Map();
  const look = async (candidate: Candidate, isLong: boolean) => {
    const request = { style: candidate.style, seed: 1, effort: isLong ? effort : glanceOf(effort) };
    const { whole, plan } = await solve(jobFor(job, candidate.amount), request, { signal });
    if (!whole) return;
    made.set(candidate, { plan, isLong });
    onOffered({ kind: "making", share: Math.min(1, made.size / candidates.length) });
  };
  await Promise.all(candidates.map((candidate) => look(candidate, false)));
  await comparePairs(made);
  for (let due = dueIn(made, job); due.length > 0 && !signal.aborted; due = dueIn(made, job)) {
    await Promise.all(due.map((candidate) => look(candidate, true)));
    await comparePairs(made);
  }
  if (!signal.aborted) onOffered(offeredFrom(made, job));
}

// Holding large backs beside one another takes long enough to be felt, so the page gets its turn in between.
const longestTurn = 12;

/** What `choose` will ask for, found out a little at a time; it is remembered there. */
async function comparePairs(made: Made): Promise<void> {
  const plans = [...made.values()].map(({ plan }) => plan);
  let begun = performance.now();
  for (const [at, one] of plans.entries()) {
    for (const other of plans.slice(at + 1)) {
      if (one.style !== other.style) apart(one.layout, other.layout);
      if (performance.now() - begun < longestTurn) continue;
      await new Promise((next) => setTimeout(next));
      begun = performance.now();
    }
  }
}

/** Always in the same order, however the searches came to their end. */
function plansIn(made: Made, job: Job): readonly { readonly candidate: Candidate; readonly plan: Plan }[] {
  const order = candidatesFor(job).map(nameOf);
  return [...made]
    .map(([candidate, { plan }]) => ({ candidate, plan }))
    .sort((one, other) => order.indexOf(nameOf(one.candidate)) - order.indexOf(nameOf(other.candidate)));
}

function nameOf({ style, amount }: Candidate): string {
  return `${style} ${amount}`;
}

function dueIn(made: Made, job: Job): readonly Candidate[] {
  const plans = plansIn(made, job).map(({ plan }) => plan);
  const offered = new Set(choose(plans, job).chosen.map(({ plan }) => plan));
  return [...made].flatMap(([candidate, { plan, isLong }]) =>
    offered.has(plan) && !isLong ? [candidate] : [],
  );
}

function offeredFrom(made: Made, job: Job): Offered {
  const known = plansIn(made, job);
  const { chosen, notes } = choose(
    known.map(({ plan }) => plan),
    job,
  );
  const offers = chosen.flatMap(({ plan, reasons }) => {
    const candidate = known.find((one) => one.plan === plan)?.candidate;
    return candidate === undefined ? [] : [{ ...candidate, plan, reasons }];
  });
  return { kind: "made", offers, notes };
}

/** What speaks for a plan, as long as it is the one that was offered. */
export function reasonsFor(wish: Candidate & { readonly seed: number }, offered: Offered): readonly Reason[] {
  if (offered.kind === "making" || wish.seed !== 1) return [];
  return offered.offers.find((offer) => nameOf(offer) === nameOf(wish))?.reasons ?? [];
}
