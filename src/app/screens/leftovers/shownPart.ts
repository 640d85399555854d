import { useDeferredValue, useState } from "react";

const atOnce = 100;

/** As many as fill a tablet, standing upright. */
const inSight = 24;

/**
 * The first of a long list, `first` of them, and a hundred more each time she asks. Those that lie further down than
 * anyone sees at first are drawn once the page is there; whatever she presses meanwhile goes before.
 */
export function useShownPart<T>(all: readonly T[], first = atOnce) {
  const [most, setMost] = useState(first);
  const drawn = useDeferredValue(most, Math.min(inSight, first));
  return {
    shown: all.slice(0, drawn),
    rest: Math.max(0, all.length - most),
    showMore: () => setMost(most + atOnce),
  };
}
