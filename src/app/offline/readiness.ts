import { isKeepingDue } from "./laterVerso.ts";

/** Whether everything is on this device that Verso needs without a network, as the service worker itself says. */
export type Readiness =
  | { readonly kind: "ready" }
  /** It is being fetched for the first time. */
  | { readonly kind: "coming" }
  | { readonly kind: "missing"; readonly files: number }
  /** This browser, or this window, keeps no app. */
  | { readonly kind: "never" };

export async function askReadiness(): Promise<Readiness> {
  if (!("serviceWorker" in navigator)) return { kind: "never" };
  const registration = await navigator.serviceWorker.getRegistration().catch(() => undefined);
  if (registration === undefined) return { kind: isKeepingDue() ? "coming" : "never" };
  if (registration.active === null) return { kind: "coming" };
  const files = await missingFiles(registration.active);
  if (files === null) return { kind: "coming" };
  return files === 0 ? { kind: "ready" } : { kind: "missing", files };
}

/** Milliseconds; a worker that is being woken takes a moment. */
const patience = 10_000;

/** How many files the worker lacks; it fetches them as soon as it is asked. `null`: it does not answer. */
function missingFiles(worker: ServiceWorker): Promise<number | null> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(null), patience);
    port1.onmessage = ({ data }: { readonly data: unknown }) => {
      clearTimeout(timer);
      port1.close();
      resolve(typeof data === "number" ? data : null);
    };
    worker.postMessage("what-is-missing", [port2]);
  });
}
