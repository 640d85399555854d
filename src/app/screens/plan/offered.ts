import {
  amountsFor,
  type Candidate,
  type ChoiceNote,
  candidatesOf,
  glanceOf,
  jobFor,
  type Reason,
} from "../../../engine/choice/index.ts";
import type { Amount, Job } from "../../../engine/cloth/index.ts";
import { defaultEffort, type Plan } from "../../../engine/plan/index.ts";
import { letPressesThrough } from "../../parts/letPressesThrough.ts";
import { type Beside, type NamedChoice, nameOf, type PackedPlan, unpack } from "../../worker/index.ts";

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
  readonly beside: Pick<Beside, "solvePacked" | "openChoice">;
  readonly signal: AbortSignal;
  readonly onOffered: (offered: Offered) => void;
};

type Made = Map<string, { readonly plan: PackedPlan; readonly isLong: boolean }>;

/**
 * The same choice as the engine's own, its searches beside one another: a short look at every plan there may be, then
 * a longer one at those that would be offered, until all that are offered have had it. Gives up when told to.
 */
export async function makeOffers({ job, seconds, beside, signal, onOffered }: Choosing): Promise<void> {
  const choice = beside.openChoice(job);
  signal.addEventListener("abort", choice.close, { once: true });
  const effort = defaultEffort(job, seconds);
  const candidates = await candidatesBetweenPresses(job);
  const made: Made = new Map();
  const look = async ({ style, amount }: Candidate, isLong: boolean) => {
    const request = { style, seed: 1, effort: isLong ? effort : glanceOf(effort) };
    const { whole, plan } = await beside.solvePacked(jobFor(job, amount), request, { signal });
    if (!whole) return;
    made.set(nameOf({ style, amount }), { plan, isLong });
    choice.lay({ style, amount, plan });
    onOffered({ kind: "making", share: Math.min(1, made.size / candidates.length) });
  };
  try {
    await Promise.all(candidates.map((candidate) => look(candidate, false)));
    let named = await choice.choose();
    for (let due = dueIn(named, made); due.length > 0; due = dueIn(named, made)) {
      await Promise.all(due.map((candidate) => look(candidate, true)));
      signal.throwIfAborted();
      named = await choice.choose();
    }
    onOffered(offeredFrom(named, made));
  } finally {
    choice.close();
  }
}

/** All candidates. Each style is sketched for that, on a large heap for longer than a press may wait. */
async function candidatesBetweenPresses(job: Job): Promise<readonly Candidate[]> {
  const candidates: Candidate[] = [];
  for (const amount of amountsFor(job)) {
    await letPressesThrough();
    candidates.push(...candidatesOf(job, amount));
  }
  return candidates;
}

/** Those that would be offered and were only glanced at. */
function dueIn({ chosen }: NamedChoice, made: Made): readonly Candidate[] {
  return chosen.filter((candidate) => made.get(nameOf(candidate))?.isLong === false);
}

function offeredFrom({ chosen, notes }: NamedChoice, made: Made): Offered {
  const offers = chosen.flatMap(({ style, amount, reasons }) => {
    const found = made.get(nameOf({ style, amount }));
    return found === undefined ? [] : [{ style, amount, plan: unpack(found.plan), reasons }];
  });
  return { kind: "made", offers, notes };
}

const noReasons: readonly Reason[] = [];

/** What speaks for a plan, as long as it is the one that was offered. */
export function reasonsFor(
  wish: Candidate & { readonly seed: number; readonly byHand: object | null },
  offered: Offered,
): readonly Reason[] {
  if (offered.kind === "making" || wish.seed !== 1 || wish.byHand !== null) return noReasons;
  return offered.offers.find((offer) => nameOf(offer) === nameOf(wish))?.reasons ?? noReasons;
}
