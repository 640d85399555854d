import { useEffect, useState } from "react";

/** Who has pressed something so lately, in milliseconds, is likely to press again. */
const calm = 600;

let pressedAt = Number.NEGATIVE_INFINITY;
for (const kind of ["pointerdown", "keydown", "wheel"])
  addEventListener(kind, () => (pressedAt = performance.now()), { capture: true, passive: true });

/**
 * What changes by itself, as it was while she presses one thing after another: nothing changes under her hand, and no
 * press waits until it is drawn. What may not wait is there at once.
 */
export function useOnceCalm<Value>(value: Value, mayWait: boolean): Value {
  const [shown, show] = useState(value);
  useEffect(() => onceCalm(() => show(value), mayWait), [value, mayWait]);
  return mayWait ? shown : value;
}

/** Gives what keeps it from being done. */
function onceCalm(act: () => void, mayWait: boolean): () => void {
  const left = mayWait ? pressedAt + calm - performance.now() : 0;
  if (left <= 0) {
    act();
    return () => {};
  }
  let again = () => {};
  const timer = setTimeout(() => {
    again = onceCalm(act, mayWait);
  }, left);
  return () => {
    clearTimeout(timer);
    again();
  };
}
