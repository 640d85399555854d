import { useState } from "react";

const atOnce = 100;

/** The first hundred of a long list, and a hundred more each time she asks. */
export function useShownPart<T>(all: readonly T[]) {
  const [most, setMost] = useState(atOnce);
  return {
    shown: all.slice(0, most),
    rest: Math.max(0, all.length - most),
    showMore: () => setMost(most + atOnce),
  };
}
