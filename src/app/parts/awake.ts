import { useEffect } from "react";

/** Keeps the screen from going dark while she works by it, where the device can; let go of when she leaves. */
export function useAwake(): void {
  useEffect(() => {
    if (!("wakeLock" in navigator)) return;
    let lock: WakeLockSentinel | null = null;
    let here = true;
    const hold = async () => {
      // A low battery may refuse it: then the screen goes dark as it always does.
      const held = await navigator.wakeLock.request("screen").catch(() => null);
      if (here) lock = held;
      else await held?.release();
    };
    // The device takes it away whenever the page is out of sight.
    const seen = () => {
      if (document.visibilityState === "visible") void hold();
    };
    void hold();
    document.addEventListener("visibilitychange", seen);
    return () => {
      here = false;
      document.removeEventListener("visibilitychange", seen);
      void lock?.release();
    };
  }, []);
}
