import type { Style } from "../back/index.ts";
import { isLighter, type Merits, meritsOf, type Offered } from "./merits.ts";

/** What speaks for a plan among the others that are offered. */
export type Reason =
  /** So much less work than another plan here, as a share, for so much less used. */
  | { readonly kind: "lighter"; readonly than: Style; readonly work: number; readonly used: number }
  | { readonly kind: "least-work"; readonly minutes: readonly [number, number] }
  | { readonly kind: "uses-most"; readonly used: number }
  | { readonly kind: "nothing-to-buy" }
  | { readonly kind: "buys-least" }
  | { readonly kind: "strongest-contrast"; readonly contrast: number }
  /** Everything, freely: for who likes that. */
  | { readonly kind: "all-over" }
  /** Nothing in which it is first: it lies between. */
  | { readonly kind: "between"; readonly used: number; readonly minutes: readonly [number, number] };

/** One line has room for so many. */
const mostReasons = 2;

/** For each plan what it is first in, the most telling first; each has one reason at least. */
export function reasonsFor(plans: readonly Offered[]): readonly (readonly Reason[])[] {
  const all = plans.map(meritsOf);
  return plans.map((plan) => {
    const { covered: used, minutes } = plan.figures;
    const found = [...lighter(meritsOf(plan), plans), ...ofStyle(plan), ...firsts(plan, all)];
    return found.length === 0 ? [{ kind: "between", used, minutes }] : found.slice(0, mostReasons);
  });
}

/** Against the one that it spares most work. */
function lighter(own: Merits, plans: readonly Offered[]): Reason[] {
  const heavy = plans.filter((plan) => isLighter(own, meritsOf(plan)));
  const [most] = heavy.toSorted((one, other) => meritsOf(other).work - meritsOf(one).work);
  if (most === undefined) return [];
  const { work, used } = meritsOf(most);
  return [
    { kind: "lighter", than: most.style, work: 1 - own.work / work, used: Math.max(0, used - own.used) },
  ];
}

function ofStyle({ style }: Offered): Reason[] {
  return style === "all-over" ? [{ kind: "all-over" }] : [];
}

/** In what it is ahead of all others; where all are alike it is no reason. */
function firsts(plan: Offered, all: readonly Merits[]): Reason[] {
  const own = meritsOf(plan);
  const { covered: used, minutes, contrast } = plan.figures;
  const ahead = (of: (merits: Merits) => number) => isAhead(of(own), all.map(of));
  return [
    ...(ahead(({ work }) => -work) ? [{ kind: "least-work", minutes } as const] : []),
    ...(ahead((merits) => merits.used) ? [{ kind: "uses-most", used } as const] : []),
    ...buying(own, all),
    ...(contrast !== null && ahead((merits) => merits.contrast)
      ? [{ kind: "strongest-contrast", contrast } as const]
      : []),
  ];
}

function buying({ bought }: Merits, all: readonly Merits[]): Reason[] {
  const others = all.map((merits) => -merits.bought);
  if (bought === 0) return others.some((other) => other < 0) ? [{ kind: "nothing-to-buy" }] : [];
  return isAhead(-bought, others) ? [{ kind: "buys-least" }] : [];
}

/** `all` has the own one in it. */
function isAhead(own: number, all: readonly number[]): boolean {
  return all.length > 1 && all.filter((other) => other >= own).length === 1;
}
