import type { Quarter } from "../types.ts";
import {
  type Bough,
  clothIn,
  clothLeaf,
  composed,
  type Fork,
  held,
  isFixed,
  type Leaf,
  partAt,
  replacedAt,
  type Way,
} from "./bough.ts";
import { type Fault, inch } from "./fault.ts";
import { type Limits, resized } from "./resize.ts";

/** What a way to mend something works on. */
export type Mending = {
  readonly root: Bough;
  /** Which changes of the root have been made before: they aren't made again. */
  readonly begun: Set<string>;
  readonly limits: Limits;
  /** The cloth that closes gaps, by the number of the pieced region. */
  readonly cloths: readonly string[];
  readonly isHalf: (leaf: Leaf) => boolean;
};

/** So many joins up from a cell something may still help it; further up it hardly ever does. */
const deepest = 5;
/** For likes that touch, a change of places near by is enough. */
const deepestForLikes = 2;

/** Layouts in which what has a part in the fault lies otherwise; what is used stays the same. */
export function* rearranged(fault: Fault, mending: Mending): Generator<Bough> {
  for (const way of fault.ways) {
    if ((fault.kind === "crossing" || fault.kind === "direction") && isNew("turned", way, mending))
      yield* turnedLeaves(way, mending);
    if ((fault.kind === "crossing" || fault.kind === "like") && isNew("exchanged", way, mending))
      yield* twinsExchanged(way, mending);
    if (fault.kind === "like" && isNew("resewn", way, mending)) yield* setsReordered(way, mending);
    yield* rearrangedRound(way, fault, mending);
  }
}

/** Two strips of a strip set change places, or it lies the other way round. */
export function* setsReordered(
  way: Way,
  { root, limits }: Pick<Mending, "root" | "limits">,
): Generator<Bough> {
  const leaf = partAt(root, way);
  if (leaf?.kind !== "leaf" || leaf.spot === held) return;
  const { node } = leaf;
  if (node.kind !== "join" || node.pattern !== "strip-set") return;
  for (const parts of ordersOf(node.parts))
    yield replacedAt(root, way, { ...leaf, node: { ...node, parts } }, limits.joiner);
}

function ordersOf<Part>(parts: readonly Part[]): (readonly Part[])[] {
  const exchanged = parts.flatMap((one, at) =>
    parts.flatMap((other, index) => (index > at ? [parts.with(at, other).with(index, one)] : [])),
  );
  return parts.length > 3 ? [...exchanged, parts.toReversed()] : exchanged;
}

function* rearrangedRound(way: Way, fault: Fault, mending: Mending): Generator<Bough> {
  const { root, limits } = mending;
  const deep = fault.kind === "like" ? deepestForLikes : deepest;
  const how = `${fault.wide} ${fault.by}`;
  for (let depth = way.length - 1; depth >= Math.max(0, way.length - deep); depth--) {
    if (!isNew(how, way.slice(0, depth + 1), mending)) continue;
    const at = way.slice(0, depth);
    const fork = partAt(root, at);
    const index = way[depth];
    if (fork?.kind !== "fork" || index === undefined) continue;
    const changed = [
      ...reordered(fork, index, mending),
      ...shifted(fork, index, { fault, mending }),
      ...slid(fork, index, { fault, mending }),
    ];
    for (const other of changed) yield replacedAt(root, at, other, limits.joiner);
  }
}

/** Layouts in which one of those, or a small group round it, has made way for plain cloth. */
export function* plainer(fault: Fault, mending: Mending): Generator<Bough> {
  for (const way of [...(fault.cells ?? []), ...fault.ways]) {
    for (let depth = way.length; depth > 0 && depth >= way.length - 3; depth--) {
      const at = way.slice(0, depth);
      const part = partAt(mending.root, at);
      if (part === undefined || clothIn(part) !== null || !isNew("plain", at, mending)) continue;
      const cloth = clothInsteadOf(part, mending);
      if (cloth !== null) yield replacedAt(mending.root, at, cloth, mending.limits.joiner);
    }
  }
}

/** Layouts in which one of those has made way for plain cloth together with the part next to it. */
export function* plainerByTwo(fault: Fault, mending: Mending): Generator<Bough> {
  const { root, limits } = mending;
  for (const way of [...(fault.cells ?? []), ...fault.ways]) {
    for (let depth = way.length; depth > 0 && depth >= way.length - 3; depth--) {
      const at = way.slice(0, depth - 1);
      const fork = partAt(root, at);
      if (fork?.kind !== "fork" || !isNew("plain-by-two", way.slice(0, depth), mending)) continue;
      const index = way[depth - 1] ?? 0;
      for (const from of [index - 1, index]) {
        const two = [fork.parts[from], fork.parts[from + 1]].map((part) => clothInsteadOf(part, mending));
        const [one, other] = two;
        if (!one || !other) continue;
        const parts = [...fork.parts.slice(0, from), one, other, ...fork.parts.slice(from + 2)];
        yield replacedAt(root, at, limits.joiner(fork.beside, parts), limits.joiner);
      }
    }
  }
}

/** Layouts in which a part next to one of those has made way: the cloth of a row's end then reaches further in. */
export function* plainerBeside(fault: Fault, mending: Mending): Generator<Bough> {
  const { root, limits } = mending;
  for (const way of fault.ways) {
    for (let depth = way.length; depth > 0 && depth >= way.length - 1; depth--) {
      const own = way[depth - 1] ?? 0;
      for (const index of [own - 1, own + 1]) {
        const at = [...way.slice(0, depth - 1), index];
        const part = index < 0 ? undefined : partAt(root, at);
        if (part === undefined || clothIn(part) !== null || !isNew("plain-beside", at, mending)) continue;
        const cloth = clothInsteadOf(part, mending);
        if (cloth !== null) yield replacedAt(root, at, cloth, limits.joiner);
      }
    }
  }
}

/** Null: it isn't the solver's, or wider than one width of cloth. */
function clothInsteadOf(part: Bough | undefined, { limits, cloths }: Mending): Bough | null {
  if (part === undefined || isFixed(part) || Math.min(part.width, part.height) > limits.room) return null;
  return clothLeaf(cloths[part.spot] ?? "", part);
}

/** Whatever was laid otherwise there, and that way, was looked at. */
function isNew(how: string, way: Way, { begun }: Mending): boolean {
  const key = `${how} ${way}`;
  if (begun.has(key)) return false;
  begun.add(key);
  return true;
}

/** A half-square triangle turned by a quarter; a square piece whose stripes run the other way. */
function* turnedLeaves(way: Way, { root, limits, isHalf }: Mending): Generator<Bough> {
  const leaf = partAt(root, way);
  if (leaf?.kind !== "leaf" || isFixed(leaf)) return;
  for (const node of turnsOf(leaf, isHalf(leaf), limits))
    yield replacedAt(root, way, { ...leaf, node }, limits.joiner);
}

function turnsOf({ node, width, height }: Leaf, half: boolean, { pieces }: Limits): Leaf["node"][] {
  if (node.kind === "unit" && node.pattern === "half-square-triangle")
    return [{ ...node, rotations: [next(node.rotations?.[0] ?? 0)] }];
  if (node.kind !== "piece" || pieces.get(node.piece)?.direction === "one-way") return [];
  if (half) return [{ ...node, quarter: next(node.quarter ?? 0) }];
  return width === height ? [{ ...node, turned: !node.turned }] : [];
}

function next(quarter: Quarter): Quarter {
  return quarter === 0 ? 1 : 0;
}

/** Two parts of one size change places, wherever they lie. */
function* twinsExchanged(way: Way, { root, limits }: Mending): Generator<Bough> {
  const own = partAt(root, way);
  if (own === undefined || isFixed(own)) return;
  for (const other of waysIn(root, [])) {
    const twin = partAt(root, other);
    if (twin === undefined || isFixed(twin) || twin === own) continue;
    if (twin.width !== own.width || twin.height !== own.height || areOne(own, twin)) continue;
    if (isInside(way, other) || isInside(other, way)) continue;
    // Paths shift where a join is taken in, which equal sizes of another make could cause: only like makes change.
    if (twin.kind !== own.kind || (clothIn(twin) === null) !== (clothIn(own) === null)) continue;
    yield exchanged(root, [way, other], [own, twin], limits);
  }
}

/** Equal ones of one piece: nothing changes. */
function areOne(own: Bough, twin: Bough): boolean {
  if (own.kind !== "leaf" || twin.kind !== "leaf") return false;
  return own.node.kind === "piece" && twin.node.kind === "piece" && own.node.piece === twin.node.piece;
}

function exchanged(
  root: Bough,
  [way, other]: readonly [Way, Way],
  [own, twin]: readonly [Bough, Bough],
  limits: Limits,
): Bough {
  const rebuilt = (bough: Bough, at: Way): Bough => {
    if (at.length === way.length && isInside(at, way)) return { ...twin, spot: own.spot };
    if (at.length === other.length && isInside(at, other)) return { ...own, spot: twin.spot };
    if (bough.kind === "leaf" || (!isInside(at, way) && !isInside(at, other))) return bough;
    return limits.joiner(
      bough.beside,
      bough.parts.map((part, index) => rebuilt(part, [...at, index])),
    );
  };
  return rebuilt(root, []);
}

/** Does `inner` lead into what `outer` leads to? `isInside(at, way)` asks whether `at` is on the way. */
function isInside(outer: Way, inner: Way): boolean {
  return outer.length <= inner.length && outer.every((index, depth) => inner[depth] === index);
}

function waysIn(bough: Bough, way: Way): Way[] {
  if (bough.kind === "leaf") return [way];
  return [way, ...bough.parts.flatMap((part, at) => waysIn(part, [...way, at]))];
}

/** The part changes places with each other one of its own region, goes to either end, or all are turned round. */
function* reordered(fork: Fork, index: number, { limits }: Mending): Generator<Bough> {
  const [from, to] = runRound(fork, index);
  if (to - from < 2) {
    yield* mirrored(fork, index, limits);
    return;
  }
  const { parts } = fork;
  const own = parts[index];
  if (own === undefined) return;
  for (let other = from; other < to; other++) {
    const twin = parts[other];
    if (other === index || twin === undefined) continue;
    yield limits.joiner(fork.beside, parts.with(index, twin).with(other, own));
    if (Math.abs(other - index) > 1) yield limits.joiner(fork.beside, moved(parts, index, other));
  }
  const run = parts.slice(from, to).reverse();
  yield limits.joiner(fork.beside, [...parts.slice(0, from), ...run, ...parts.slice(to)]);
  yield* mirrored(fork, index, limits);
}

function moved(parts: readonly Bough[], from: number, to: number): Bough[] {
  const own = parts.slice(from, from + 1);
  const others = parts.filter((_, at) => at !== from);
  return [...others.slice(0, to), ...own, ...others.slice(to)];
}

/** The parts round it that belong to its region: from, and up to but not. */
function runRound({ parts }: Fork, index: number): readonly [number, number] {
  const spot = parts[index]?.spot ?? composed;
  if (spot < 0) return [index, index];
  let from = index;
  let to = index + 1;
  while (from > 0 && parts[from - 1]?.spot === spot) from--;
  while (to < parts.length && parts[to]?.spot === spot) to++;
  return [from, to];
}

function* mirrored(fork: Fork, index: number, { joiner }: Limits): Generator<Bough> {
  const part = fork.parts[index];
  if (part?.kind !== "fork" || isFixed(part)) return;
  for (const beside of [true, false])
    yield joiner(fork.beside, fork.parts.with(index, mirror(part, beside, joiner)));
}

function mirror(bough: Bough, beside: boolean, joiner: Limits["joiner"]): Bough {
  if (bough.kind === "leaf") return bough;
  const parts = bough.parts.map((part) => mirror(part, beside, joiner));
  return joiner(bough.beside, bough.beside === beside ? parts.reverse() : parts);
}

type Moving = { readonly fault: Fault; readonly mending: Mending };

/** The part grows and another of its fork gives way by as much, or the other way about. */
function* shifted(fork: Fork, index: number, { fault, mending }: Moving): Generator<Bough> {
  if (fork.holds || (fault.wide !== null && fault.wide !== fork.beside)) return;
  const endsGrow = fault.kind === "sliver" || fault.kind === "long seam";
  const limits = { ...mending.limits, endsGrow };
  const own = fork.parts[index];
  if (own === undefined) return;
  for (const by of stepsOf(fault, limits)) {
    const mine = resized(own, fork.beside, by, limits);
    if (mine === null) continue;
    for (const [other, part] of fork.parts.entries()) {
      const theirs = other === index ? null : resized(part, fork.beside, -by, limits);
      if (theirs !== null) yield limits.joiner(fork.beside, fork.parts.with(index, mine).with(other, theirs));
    }
  }
}

/** By what a seam may be moved so that it lies well, there or back. */
export function stepsOf({ by }: Fault, { step }: Limits): number[] {
  const whole = by.filter((one) => one > 0).map((one) => Math.ceil(one / step) * step);
  return [...new Set(whole)].flatMap((one) => [one, -one]);
}

/** Some of a gap's cloth goes to the other side of the part, so that its seams lie elsewhere. */
function* slid(fork: Fork, index: number, { fault, mending }: Moving): Generator<Bough> {
  const [from, to] = runRound(fork, index);
  const { limits } = mending;
  for (let gap = from; gap < to; gap++) {
    const part = fork.parts[gap];
    const cloth = part === undefined ? null : clothIn(part);
    if (part === undefined || cloth === null || gap === index) continue;
    for (const by of slidesOf(fault, limits)) {
      const rest = resized(part, fork.beside, -by, limits);
      if (rest === null) continue;
      const size = fork.beside ? { width: by, height: part.height } : { width: part.width, height: by };
      const piece = clothLeaf(cloth.fabric, { ...size, spot: part.spot });
      const at = gap > index ? index : index + 1;
      const parts = fork.parts.with(gap, rest);
      yield limits.joiner(fork.beside, [...parts.slice(0, at), piece, ...parts.slice(at)]);
    }
  }
}

function slidesOf({ by }: Fault, { smallest, step }: Limits): number[] {
  const usual = [2, 2.5, 3, 4, 6].map((size) => Math.ceil((size * inch) / step) * step);
  const own = by.map((one) => Math.ceil(one / step) * step);
  return [...new Set([...own, ...usual])].filter((one) => one >= smallest);
}
