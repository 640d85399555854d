import type { KeptPlan, PlanDocument } from "../../../files/index.ts";
import { planIn } from "../../parts/keptPlan.ts";
import { type Found, keyOf, type Wish } from "./desk.ts";
import type { NamedPlan } from "./namedPlans.ts";
import { isTheKept, type Shown, wishOfKept } from "./planning.ts";

/** A plan that can be laid beside others, what it is to her, and what she wishes for when she goes on with it. */
export type ComparedPlan = {
  readonly key: string;
  readonly plan: PlanDocument;
  readonly isChosen: boolean;
  readonly isKept: boolean;
  readonly named: NamedPlan | null;
  /** null: it is kept under a name, or for what her leftovers were; there is no wish that leads to it. */
  readonly wish: Wish | null;
};

type Heap = {
  readonly shown: Shown;
  readonly foundFor: (wish: Wish) => Found;
  readonly kept: KeptPlan | null;
  readonly named: readonly NamedPlan[];
};

/** All that can be compared: the one she looks at, those found for other wishes, the kept, those under a name. */
export function comparedPlans({ shown, foundFor, kept, named }: Heap): readonly ComparedPlan[] {
  const found = wishesOf(shown).flatMap((wish): readonly ComparedPlan[] => {
    const { plan } = foundFor(wish);
    const isChosen = keyOf(wish) === keyOf(shown.chosen);
    if (plan === null) return [];
    return [{ key: keyOf(wish), plan, isChosen, isKept: isKeptPlan(plan, kept), named: null, wish }];
  });
  return [...found, ...keptBeside(found, kept, shown.keptIsOld), ...named.flatMap(underName)];
}

function wishesOf({ chosen, best, others }: Shown): readonly Wish[] {
  const wishes = new Map([chosen, ...best, ...others].map((wish) => [keyOf(wish), wish]));
  return [...wishes.values()];
}

// Texts of plans are long: only those that may be the same are held against each other.
function isKeptPlan(plan: PlanDocument, kept: KeptPlan | null): boolean {
  return plan.style === kept?.style && plan.seed === kept.seed && isTheKept(plan, kept);
}

function keptBeside(
  found: readonly ComparedPlan[],
  kept: KeptPlan | null,
  isOld: boolean,
): readonly ComparedPlan[] {
  const plan = kept === null ? null : planIn(kept);
  if (kept === null || plan === null || found.some(({ isKept }) => isKept)) return [];
  const wish = isOld ? null : wishOfKept(kept);
  return [{ key: "kept", plan, isChosen: false, isKept: true, named: null, wish }];
}

function underName(named: NamedPlan): readonly ComparedPlan[] {
  if (named.plan === null) return [];
  const { plan, id } = named;
  return [{ key: `named ${id}`, plan, isChosen: false, isKept: false, named, wish: null }];
}

/** Those she wants side by side, in their order; before she says so, as many as have room, her own first. */
export function laidSideBySide(
  all: readonly ComparedPlan[],
  wanted: ReadonlySet<string> | null,
  room: number,
): readonly ComparedPlan[] {
  return wanted === null ? all.slice(0, room) : all.filter(({ key }) => wanted.has(key));
}
