import { useEffect, useMemo, useSyncExternalStore } from "react";
import { type Desk, type Found, keyOf, nothingFound, seconds, type Wish } from "./desk.ts";
import { deskFor } from "./deskFor.ts";
import type { Planning, Shown } from "./planning.ts";

type Ready = Planning & { readonly kind: "ready" };

/** The desk for a job, and what it offers. */
export function useOffered(planning: Ready) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the job and her wishes
  const desk = useMemo(() => deskFor(planning), [planning.key]);
  const offered = useSyncExternalStore(desk.subscribe, desk.offered);
  return { desk, offered };
}

/** The plans on the desk, searched for while they are looked at: a glance at each, a long look at the chosen one. */
export function useDesk(desk: Desk, shown: Shown, withOthers: boolean) {
  const found = useSyncExternalStore(desk.subscribe, desk.found);
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

  return { ofChosen, foundFor: (wish: Wish): Found => found.get(keyOf(wish)) ?? nothingFound };
}
