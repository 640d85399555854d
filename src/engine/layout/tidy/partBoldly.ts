import { type Bough, held, partAt, replacedAt } from "./bough.ts";
import type { Eye, Fault } from "./fault.ts";
import { Known } from "./glance.ts";
import { joinsIn } from "./joins.ts";
import { likesIn } from "./likes.ts";
import { type Mending, rearranged, setsReordered } from "./moves.ts";
import type { Sameness } from "./sameness.ts";
import type { Banks, Viewer } from "./scene.ts";

export type Boldness = {
  readonly eye: Eye;
  readonly viewer: Viewer;
  readonly mending: Omit<Mending, "root" | "begun">;
  readonly mostJoins: number;
  readonly sameness: Sameness;
  readonly boldly: Boldly;
  /** May some seams nearly meet, as nobody looks for each of them? */
  readonly mayMiss: boolean;
};

/** So many layouts are looked at whole, so many others at a glance. */
const mostBold = 8;
const mostGlances = 400;
/** Changes that spoil more than so much are not mended by one more. */
const mostSpoilt = 2;
const touch = 1e-6;
/** Of all meetings of seams, in a back that is pieced all over. */
const mayMissShare = 0.03;

/** What was looked at already: none is looked at twice. */
export class Boldly {
  readonly looked = new Set<number>();
  left = mostGlances;
}

/**
 * A layout in which less of like fabrics touches, where no single change does: two pieces of a row change places, which
 * spoils something, and another change mends it again; or some more seams nearly meet than none, where some may. Null:
 * none was found.
 */
export function partedBoldly(known: Known, boldness: Boldness): Bough | null {
  const { eye, viewer, boldly } = boldness;
  for (const root of promising(known, boldness).slice(0, mostBold)) {
    if (boldly.left <= 0) return null;
    const made = madeSound(new Known(root, eye, viewer), known, boldness);
    if (made !== null) return made;
  }
  return null;
}

/** Those in which least of like touches first. */
function promising(known: Known, boldness: Boldness): Bough[] {
  const { eye, mending, sameness, boldly, mayMiss } = boldness;
  // Where some may nearly meet, so many more may.
  const misses = mayMiss ? Math.floor(mayMissShare * meetingsIn(known.scene)) : 0;
  const most = known.faults.length + Math.max(mostSpoilt, misses);
  const found: { root: Bough; cost: number }[] = [];
  for (const root of rowsExchanged(known.root, likesIn(known.scene, eye), mending)) {
    const number = sameness.of(root);
    if (boldly.looked.has(number)) continue;
    boldly.looked.add(number);
    if (boldly.left-- <= 0) break;
    const glance = known.glanceAt(root);
    if (glance.like >= known.like || glance.used < known.used - touch) continue;
    if (glance.faults(most) !== null) found.push({ root, cost: glance.like });
  }
  return found.sort((one, other) => one.cost - other.cost).map(({ root }) => root);
}

/** A piece that touches its like changes places with another of its row or its set. */
function* rowsExchanged(
  root: Bough,
  likes: readonly Fault[],
  { limits }: Pick<Mending, "limits">,
): Generator<Bough> {
  for (const way of likes.flatMap(({ ways }) => ways)) {
    yield* setsReordered(way, { root, limits });
    const [row, own] = [way.slice(0, -1), way.at(-1)];
    const fork = partAt(root, row);
    const mine = fork?.kind === "fork" && own !== undefined ? fork.parts[own] : undefined;
    if (fork?.kind !== "fork" || own === undefined || mine === undefined || !isLoose(mine)) continue;
    for (const [other, twin] of fork.parts.entries()) {
      if (other === own || !isLoose(twin) || twin.spot !== mine.spot) continue;
      const parts = fork.parts.with(own, twin).with(other, mine);
      yield replacedAt(root, row, limits.joiner(fork.beside, parts), limits.joiner);
    }
  }
}

function isLoose(bough: Bough): boolean {
  return bough.kind === "leaf" && bough.node.kind === "piece" && bough.spot !== held;
}

function madeSound(spoilt: Known, before: Known, boldness: Boldness): Bough | null {
  if (isSound(spoilt, before, boldness)) return spoilt.root;
  return mendedAgain(spoilt, before, boldness);
}

function isSound(known: Known, before: Known, { mayMiss }: Boldness): boolean {
  if (known.faults.length <= before.faults.length) return true;
  return mayMiss && mattering(known, mayMiss) <= mattering(before, false) - missesIn(before);
}

/** How many of its faults matter: where some seams may nearly meet, as nobody looks for each of them, few enough don't. */
export function mattering(known: Known, mayMiss: boolean): number {
  const misses = missesIn(known);
  const isFew = mayMiss && misses <= mayMissShare * meetingsIn(known.scene);
  return known.faults.length - (isFew ? misses : 0);
}

function missesIn({ faults }: Known): number {
  return faults.filter(({ kind }) => kind === "near miss").length;
}

function mendedAgain(spoilt: Known, before: Known, { mending, mostJoins, boldly }: Boldness): Bough | null {
  for (const fault of spoilt.faults) {
    for (const root of rearranged(fault, { ...mending, root: spoilt.root, begun: new Set() })) {
      if (boldly.left-- <= 0) return null;
      if (joinsIn(root) > mostJoins) continue;
      const glance = spoilt.glanceAt(root);
      if (glance.like >= before.like || glance.used < before.used - touch) continue;
      if (glance.faults(before.faults.length) !== null) return root;
    }
  }
  return null;
}

/** Each end of a seam on another, two that meet exactly counted once. */
function meetingsIn({ lines, banks }: Known["scene"]): number {
  return lines.reduce((sum, { upright }, at) => sum + endsOn(banks[at] ?? [[], []], upright), 0);
}

function endsOn(banks: Banks, upright: boolean): number {
  return new Set(banks.flatMap((bank) => bank.slice(1).map(({ x, y }) => (upright ? y : x)))).size;
}
