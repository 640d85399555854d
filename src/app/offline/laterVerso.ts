/** The copy of the app that the browser keeps for use without a network, and whether a later one waits beside it. */
import { workerAddress } from "../worker/trusted.ts";

let active: ServiceWorker | null = null;
let waiting: ServiceWorker | null = null;
let asked = false;
const listeners = new Set<() => void>();

export const laterVerso = {
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  isReady: () => waiting !== null,
  /** Takes the later one and loads this tab anew; other tabs go on with what they have. */
  use() {
    asked = true;
    // Another tab has taken it since: here it only needs loading.
    if (waiting?.state !== "installed") return location.reload();
    active?.postMessage("let-go");
    waiting.postMessage("take-over");
  },
};

// It is asked for only once the page is there, and a page may want to know before.
let isDue = import.meta.env.PROD;

/** Whether the app is still to be kept on this device for the first time. */
export function isKeepingDue(): boolean {
  return isDue;
}

/** Keeps the app on this device, and looks out for a later one. Without it everything works, save offline. */
export async function keepForOffline(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  navigator.serviceWorker.ready.then(fetchLargeWhenIdle, () => {});
  try {
    watch(await navigator.serviceWorker.register(workerAddress("./sw.js")));
  } catch {
    // A private window or a full device: nothing she does depends on it.
  }
  isDue = false;
}

// Longer than a page takes to be there: what is large is for later.
const settles = 8000;

/** What one page alone needs and is large, such as the library that measures photos, for use without a network. */
function fetchLargeWhenIdle({ active }: ServiceWorkerRegistration): void {
  const fetchLarge = () => active?.postMessage("fetch-later");
  setTimeout(() => {
    if ("requestIdleCallback" in window) requestIdleCallback(fetchLarge, { timeout: settles });
    else fetchLarge();
  }, settles);
}

function watch(registration: ServiceWorkerRegistration): void {
  noteWaiting(registration);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => noteWaiting(registration));
  });
  // An app that stays open for days still hears of a later one.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") registration.update().catch(() => {});
  });
}

function noteWaiting(registration: ServiceWorkerRegistration): void {
  active = registration.active;
  // The very first one takes over by itself: there is nothing earlier to go on with.
  waiting = registration.active === null ? null : registration.waiting;
  for (const listener of listeners) listener();
}
