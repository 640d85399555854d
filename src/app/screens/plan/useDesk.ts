import { useEffect, useMemo, useSyncExternalStore } from "react";
import { type Found, keyOf, nothingFound, seconds, type Wish } from "./desk.ts";
import { deskFor } from "./deskFor.ts";
import type { Planning, Shown } from "./planning.ts";

type Ready = Planning & { readonly kind: "ready" };

/** The plans on the desk, searched for while they are looked at: a glance at each, a long look at the chosen one. */
export function useDesk(planning: Ready, shown: Shown, withOthers: boolean) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the job
  const desk = useMemo(() => deskFor(planning), [planning.hash]);
  const found = useSyncExternalStore(desk.subscribe, desk.found);
  const { chosen } = shown;
  const key = keyOf(chosen);
  const ofChosen = found.get(key) ?? nothingFound;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => {
    if (shown.kept !== null) desk.put(chosen, shown.kept);
    for (const wish of [chosen, ...shown.best, ...(withOthers ? shown.others : [])])
      desk.search(wish, seconds.glance);
  }, [desk, key, withOthers, shown.kept]);

  const isDue =
    ofChosen.seconds >= seconds.glance && (ofChosen.state === "found" || ofChosen.state === "waiting");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => {
    if (isDue) desk.search(chosen, seconds.look);
  }, [desk, key, isDue]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the wish
  useEffect(() => () => desk.pause(chosen), [desk, key]);
  useEffect(() => () => desk.leave(), [desk]);

  return { desk, ofChosen, foundFor: (wish: Wish): Found => found.get(keyOf(wish)) ?? nothingFound };
}
