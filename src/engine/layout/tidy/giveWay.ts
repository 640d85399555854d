import { type Bough, clothLeaf, holds, isFixed, partAt, replacedAt } from "./bough.ts";
import type { Fault } from "./fault.ts";
import { type Mending, stepsOf } from "./moves.ts";
import { resized } from "./resize.ts";

/** So many joins up from a seam it may be moved. */
const deepest = 4;

/**
 * Layouts in which a seam has moved though something beside it can't be longer or shorter: as little of that as will
 * do has made way for plain cloth. Or one of the two parts along the seam is gone, and the other lies in its place.
 */
export function* givingWay(fault: Fault, mending: Mending): Generator<Bough> {
  const { root, limits } = mending;
  for (const way of fault.ways) {
    for (let depth = way.length - 1; depth >= Math.max(0, way.length - deepest); depth--) {
      const fork = partAt(root, way.slice(0, depth));
      const index = way[depth] ?? 0;
      if (fork?.kind !== "fork" || fork.holds || (fault.wide !== null && fault.wide !== fork.beside))
        continue;
      for (const [one, other] of [
        [index, index + 1],
        [index, index - 1],
        [index + 1, index],
      ] as const)
        for (const parts of pairsFrom([fork.parts[one], fork.parts[other]], fork.beside, {
          fault,
          mending,
        })) {
          const changed = fork.parts.flatMap((part, at) =>
            at === one ? parts[0] : at === other ? parts[1] : [part],
          );
          yield replacedAt(root, way.slice(0, depth), limits.joiner(fork.beside, changed), limits.joiner);
        }
    }
  }
}

type Moving = { readonly fault: Fault; readonly mending: Mending };
type Pair = readonly [readonly Bough[], readonly Bough[]];

/** The first is longer or shorter by what the fault says and the other makes up for it, or takes all of its room. */
function* pairsFrom(
  [own, other]: readonly [Bough | undefined, Bough | undefined],
  wide: boolean,
  { fault, mending }: Moving,
): Generator<Pair> {
  if (own === undefined || other === undefined) return;
  for (const by of stepsOf(fault, mending.limits)) {
    const mine = forced(own, wide, by, mending);
    const theirs = mine === null ? null : forced(other, wide, -by, mending);
    if (mine !== null && theirs !== null) yield [[mine], [theirs]];
  }
  if (holds(own) || isFixed(own)) return;
  const grown = forced(other, wide, wide ? own.width : own.height, mending);
  if (grown !== null) yield [[], [grown]];
}

/** Longer or shorter by so much; what can't be becomes plain. Null: it isn't the solver's to change. */
function forced(bough: Bough, wide: boolean, by: number, mending: Mending): Bough | null {
  const free = resized(bough, wide, by, mending.limits);
  if (free !== null || holds(bough)) return free;
  if (bough.kind === "leaf") return plainOf(bough, wide, by, mending);
  if (bough.beside !== wide) {
    const parts = bough.parts.map((part) => forced(part, wide, by, mending));
    const whole = parts.filter((part) => part !== null);
    return whole.length === parts.length ? mending.limits.joiner(bough.beside, whole) : null;
  }
  const ways = bough.parts.flatMap((part, at) => {
    const other = forced(part, wide, by, mending);
    return other === null ? [] : [{ other, at, lost: leftoversIn(part) - leftoversIn(other) }];
  });
  const least = ways.toSorted((a, b) => a.lost - b.lost)[0];
  if (least === undefined) return null;
  return mending.limits.joiner(bough.beside, bough.parts.with(least.at, least.other));
}

function plainOf(bough: Bough, wide: boolean, by: number, { limits, cloths }: Mending): Bough | null {
  if (isFixed(bough)) return null;
  const width = bough.width + (wide ? by : 0);
  const height = bough.height + (wide ? 0 : by);
  if (Math.min(width, height) < limits.smallest || Math.min(width, height) > limits.room) return null;
  return clothLeaf(cloths[bough.spot] ?? "", { width, height, spot: bough.spot });
}

/** The area of what isn't cloth. */
function leftoversIn(bough: Bough): number {
  if (bough.kind === "fork") return bough.parts.reduce((sum, part) => sum + leftoversIn(part), 0);
  return bough.node.kind === "cloth" ? 0 : bough.width * bough.height;
}
