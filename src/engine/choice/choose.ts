import type { Job } from "../cloth/index.ts";
import { type Area, areaOf } from "../length/index.ts";
import { lookDifferent } from "./apart.ts";
import { dominates, hasLight, type Merits, meritsOf, type Offered, worthOf } from "./merits.ts";
import { type Reason, reasonsFor } from "./reasons.ts";

/** A plan that is offered, and what speaks for it, the most telling first. */
export type Chosen<P extends Offered> = { readonly plan: P; readonly reasons: readonly Reason[] };

/** What she should know of the choice as a whole. */
export type ChoiceNote =
  /** Her heap gives no more plans that differ and are none the worse for it. */
  | { readonly kind: "no-more"; readonly count: number }
  /** She wished to buy nothing; no plan that was found can do that, and this much is the least. */
  | { readonly kind: "must-buy"; readonly area: Area };

export type Choice<P extends Offered> = {
  /** Of different styles; the one she will like best first, `all-over` last. */
  readonly chosen: readonly Chosen<P>[];
  /** All others, the best first. */
  readonly others: readonly P[];
  readonly notes: readonly ChoiceNote[];
};

export type Wanted = { readonly least: number; readonly most: number };
export const usualWanted: Wanted = { least: 3, most: 6 };

/**
 * Of these plans those worth looking at: of different styles, each pair visibly different, none that another plan here
 * beats in everything, one with far less work among them where there is one, and within that those she will like
 * best. Fewer than `least` only where the plans give no more.
 */
export function choose<P extends Offered>(
  plans: readonly P[],
  job: Job,
  wanted: Wanted = usualWanted,
): Choice<P> {
  const ranked = rank(plans, job);
  const worthy = ranked.filter((one) => !ranked.some((other) => dominates(other.merits, one.merits)));
  const best = bestSet(worthy.slice(0, mostLookedAt), wanted);
  const last = (one: Weighed<P>) => Number(one.plan.style === "all-over");
  const chosen = best.toSorted((one, other) => last(one) - last(other) || other.worth - one.worth);
  const reasons = reasonsFor(chosen.map(({ plan }) => plan));
  return {
    chosen: chosen.map(({ plan }, at) => ({ plan, reasons: reasons[at] ?? [] })),
    others: ranked.filter((one) => !best.includes(one)).map(({ plan }) => plan),
    notes: notesOn(chosen, job, wanted),
  };
}

type Weighed<P> = { readonly plan: P; readonly merits: Merits; readonly worth: number };

function rank<P extends Offered>(plans: readonly P[], job: Job): Weighed<P>[] {
  const weighed = plans.map((plan) => ({ plan, merits: meritsOf(plan), worth: worthOf(plan, job) }));
  return weighed.sort((one, other) => other.worth - one.worth);
}

/** Sets are tried one by one, so there is an end to how many plans are. */
const mostLookedAt = 24;
/** A plan so much less worth than the best is offered only where there are too few. */
const tooPlain = 1.5;

/** Goes through all sets that may be offered, those with the best plans first. */
function bestSet<P extends Offered>(plans: readonly Weighed<P>[], wanted: Wanted): readonly Weighed<P>[] {
  const goes = togetherIn(plans);
  const top = plans[0]?.worth ?? 0;
  let best: readonly Weighed<P>[] = [];
  let score: Score = [0, 0, 0];
  const look = (set: readonly Weighed<P>[], from: number, reached: Score): void => {
    if (isMore(reached, score)) [best, score] = [set, reached];
    if (set.length === wanted.most) return;
    for (let at = from; at < plans.length; at++) {
      const next = plans[at];
      if (next === undefined || !set.every((one) => goes(one, next))) continue;
      look([...set, next], at + 1, withOne(reached, set, { next, top, wanted }));
    }
  };
  look([], 0, score);
  return best;
}

type Adding<P> = { readonly next: Weighed<P>; readonly top: number; readonly wanted: Wanted };

function withOne<P>(
  [enough, light, worth]: Score,
  set: readonly Weighed<P>[],
  { next, top, wanted }: Adding<P>,
): Score {
  const pairs = light === 1 || set.some((one) => hasLight([one.merits, next.merits]));
  return [Math.min(wanted.least, enough + 1), Number(pairs), worth + next.worth - top + tooPlain];
}

/** Whether two may be offered together; each pair is looked at once. */
function togetherIn<P extends Offered>(plans: readonly Weighed<P>[]) {
  const known = new Map<Weighed<P>, Map<Weighed<P>, boolean>>(plans.map((plan) => [plan, new Map()]));
  return (one: Weighed<P>, other: Weighed<P>): boolean => {
    const row = known.get(one);
    const before = row?.get(other);
    if (before !== undefined) return before;
    const goes = one.plan.style !== other.plan.style && lookDifferent(one.plan.layout, other.plan.layout);
    row?.set(other, goes);
    return goes;
  };
}

/** Enough of them; one with far less work than the fullest; how good they are together. In this order. */
type Score = readonly [enough: number, light: number, worth: number];

function isMore(one: Score, other: Score): boolean {
  if (one[0] !== other[0]) return one[0] > other[0];
  return one[1] === other[1] ? one[2] > other[2] : one[1] > other[1];
}

function notesOn<P extends Offered>(
  chosen: readonly Weighed<P>[],
  job: Job,
  { least }: Wanted,
): ChoiceNote[] {
  const bought = Math.min(...chosen.map(({ merits }) => merits.bought));
  const mustBuy = job.wishes.includes("buy-nothing") && bought > 0 && chosen.length > 0;
  return [
    ...(chosen.length < least ? [{ kind: "no-more", count: chosen.length } as const] : []),
    ...(mustBuy ? [{ kind: "must-buy", area: areaOf(bought) } as const] : []),
  ];
}
