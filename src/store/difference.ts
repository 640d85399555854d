import * as Y from "yjs";
import {
  factNames,
  factsOf,
  type Leftover,
  leftoverParts,
  type Project,
  roughCodec,
  writeFacts,
} from "../files/index.ts";
import { placeRows, removeFrom, setIfChanged, setOrder, writeRow } from "./edits.ts";
import { idsInOrder, type Roots, tickKey } from "./roots.ts";

/**
 * Makes of a document what leads from one project to another, part by part, and leaves alone each part that is no
 * longer as `from` has it: another tab changed it since. Where nobody did, the document then says `to`. Inside a
 * transaction.
 */
export function applyDifference(roots: Roots, from: Project, to: Project): void {
  const [factsFrom, factsTo] = [writeFacts(factsOf(from)), writeFacts(factsOf(to))];
  for (const name of factNames) turn(roots.facts, name, factsFrom.get(name), factsTo.get(name));
  turnTicks(roots, from, to);
  turnRows(roots, from.leftovers, to.leftovers);
  turnRough(roots, from, to);
  turnOrder(roots.order, roots.leftovers, idsOf(from.leftovers), idsOf(to.leftovers));
  turnOrder(roots.roughOrder, roots.rough, idsOf(from.rough), idsOf(to.rough));
}

function turn(map: Y.Map<unknown>, name: string, from: unknown, to: unknown): void {
  if (isSame(from, to) || !isSame(map.get(name), from)) return;
  if (to === undefined) map.delete(name);
  else setIfChanged(map, name, to);
}

function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

function turnTicks(roots: Roots, from: Project, to: Project): void {
  const [keysFrom, keysTo] = [tickKeys(from), tickKeys(to)];
  for (const key of keysFrom) if (!keysTo.has(key)) turn(roots.ticked, key, true, undefined);
  for (const key of keysTo) if (!keysFrom.has(key)) turn(roots.ticked, key, undefined, true);
}

function tickKeys({ plan, ticked }: Project): ReadonlySet<string> {
  return new Set(plan === null ? [] : [...ticked].map((step) => tickKey(plan.keptAt, step)));
}

function turnRows(roots: Roots, from: readonly Leftover[], to: readonly Leftover[]): void {
  const [before, after] = [byId(from), byId(to)];
  removeFrom(
    roots.leftovers,
    roots.order,
    [...before.keys()].filter((id) => !after.has(id)),
  );
  for (const [id, row] of after) {
    const was = before.get(id);
    if (was === undefined) writeRow(roots, row);
    else if (was !== row) turnRow(roots.leftovers.get(id), was, row);
  }
}

function turnRow(row: unknown, from: Leftover, to: Leftover): void {
  if (!(row instanceof Y.Map)) return;
  const [partsFrom, partsTo] = [leftoverParts(from), leftoverParts(to)];
  for (const name of new Set([...partsFrom.keys(), ...partsTo.keys()])) {
    turn(row, name, partsFrom.get(name), partsTo.get(name));
  }
}

function turnRough(roots: Roots, from: Project, to: Project): void {
  const [before, after] = [byId(from.rough), byId(to.rough)];
  removeFrom(
    roots.rough,
    roots.roughOrder,
    [...before.keys()].filter((id) => !after.has(id)),
  );
  for (const [id, stock] of after) {
    const was = before.get(id);
    turn(roots.rough, id, was && roughCodec.write(was), roughCodec.write(stock));
  }
}

/** Only rows that changed their place, came back or went are put where they were; each before the next that is there. */
function turnOrder(
  order: Y.Array<unknown>,
  listed: Y.Map<unknown>,
  from: readonly string[],
  to: readonly string[],
): void {
  if (isSame(from, to)) return;
  const there = (ids: readonly string[]) => ids.filter((id) => listed.has(id));
  const now = idsInOrder(order, listed);
  const fromNow = new Set(from);
  const arrived = new Set(to.filter((id) => !fromNow.has(id)));
  if (
    isSame(
      now.filter((id) => !arrived.has(id)),
      there(from),
    )
  ) {
    setOrder(order, there(to));
    return;
  }
  for (const id of movedIds(from, to).reverse()) {
    if (listed.has(id)) placeRows(order, listed, [id], nextThere(id, to, listed));
  }
}

/** Ids of `to` that stand behind another one than in `from`, or were not there. */
function movedIds(from: readonly string[], to: readonly string[]): string[] {
  const place = new Map(from.map((id, index) => [id, index]));
  return to.filter((id, index) => {
    const at = place.get(id);
    return at === undefined || (from[at - 1] ?? null) !== (to[index - 1] ?? null);
  });
}

function nextThere(id: string, to: readonly string[], listed: Y.Map<unknown>): string | null {
  return to.slice(to.indexOf(id) + 1).find((other) => listed.has(other)) ?? null;
}

function byId<T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> {
  return new Map(list.map((one) => [one.id, one]));
}

function idsOf(list: readonly { readonly id: string }[]): readonly string[] {
  return list.map(({ id }) => id);
}
