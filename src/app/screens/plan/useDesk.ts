import { useCallback, useDeferredValue, useEffect, useMemo, useSyncExternalStore } from "react";
import { useOnceCalm } from "../../parts/onceCalm.ts";
import { type Desk, type Found, keyOf, nothingFound, seconds, type Wish } from "./desk.ts";
import { deskFor } from "./deskFor.ts";
import { nothingOffered } from "./offered.ts";
import type { Planning, Shown } from "./planning.ts";

type Ready = Planning & { readonly kind: "ready" };

/** The desk for a job, and what it offers. */
export function useOffered(planning: Ready) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the job and her wishes
  const desk = useMemo(() => deskFor(planning), [planning.key]);
  // How far the choice has come is told nowhere, and draws nothing anew.
  const offered = useSyncExternalStore(desk.subscribe, () => {
    const now = desk.offered();
    return now.kind === "made" ? now : nothingOffered;
  });
  return { desk, offered };
}

/** How far a search has come. */
export function useFound(desk: Desk, wish: Wish): Found {
  return useSyncExternalStore(desk.subscribe, () => desk.found().get(keyOf(wish)) ?? nothingFound);
}

type AllFound = ReturnType<Desk["found"]>;

/** Everything that is found, but how far each search has come: that changes all the time, and a bar alone tells it. */
function useAllFound(desk: Desk): AllFound {
  const steadily = useMemo(() => {
    let last = desk.found();
    return () => {
      const now = desk.found();
      if (!isSameButShares(last, now)) last = now;
      return last;
    };
  }, [desk]);
  return useSyncExternalStore(desk.subscribe, steadily);
}

function isSameButShares(one: AllFound, other: AllFound): boolean {
  if (one.size !== other.size) return false;
  return [...other].every(([key, { plan, state, seconds: done }]) => {
    const before = one.get(key);
    return before?.plan === plan && before.state === state && before.seconds === done;
  });
}

/** A better plan waits to be drawn while she presses one thing after another; another one is there at once. */
function useFoundToDraw(desk: Desk, found: AllFound, isSearching: boolean) {
  const newest = useMemo(() => ({ desk, found }), [desk, found]);
  const drawn = useDeferredValue(useOnceCalm(newest, isSearching));
  const before = drawn.desk === desk ? drawn.found : found;
  return useCallback(
    (wish: Wish): Found => before.get(keyOf(wish)) ?? found.get(keyOf(wish)) ?? nothingFound,
    [before, found],
  );
}

/** The plans on the desk, searched for while they are looked at: a glance at each, a long look at the chosen one. */
export function useDesk(desk: Desk, shown: Shown, withOthers: boolean) {
  const found = useAllFound(desk);
  const { chosen } = shown;
  const key = keyOf(chosen);
  const ofChosen = found.get(key) ?? nothingFound;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => {
    if (shown.laid !== null) desk.put(chosen, shown.laid);
    desk.search(chosen, seconds.glance, true);
    desk.offer();
    if (withOthers) for (const wish of shown.others) desk.search(wish, seconds.glance);
  }, [desk, key, withOthers, shown.laid]);

  const isDue =
    ofChosen.seconds >= seconds.glance && (ofChosen.state === "found" || ofChosen.state === "waiting");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => {
    if (isDue) desk.search(chosen, seconds.look, true);
  }, [desk, key, isDue]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => () => desk.pause(chosen), [desk, key]);
  useEffect(() => () => desk.leave(), [desk]);

  const foundFor = useFoundToDraw(desk, found, ofChosen.state === "searching");
  return { ofChosen, foundFor };
}
