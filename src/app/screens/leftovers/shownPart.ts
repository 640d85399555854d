import { useState } from "react";

const atOnce = 100;

/** The first of a long list, `first` of them, and a hundred more each time she asks. */
export function useShownPart<T>(all: readonly T[], first = atOnce) {
  const [most, setMost] = useState(first);
  return {
    shown: all.slice(0, most),
    rest: Math.max(0, all.length - most),
    showMore: () => setMost(most + atOnce),
  };
}
