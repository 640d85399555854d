/** Files that reach the app without being asked for: let go of anywhere over it, or opened from the system. */
import { useEffect, useSyncExternalStore } from "react";
import { go, routeOf } from "./route.ts";

let handed: File | null = null;
const listeners = new Set<() => void>();

/** Whoever opens files finds it on the start page. */
export function hand(file: File): void {
  handed = file;
  go({ screen: "projects" });
  for (const listener of [...listeners]) listener();
}

function takeHanded(): File | null {
  const file = handed;
  handed = null;
  return file;
}

/** The file that waits to be opened, if there is one. */
function useHandedFile(): File | null {
  return useSyncExternalStore(subscribe, () => handed);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

type LaunchQueue = {
  readonly setConsumer: (
    consumer: (launched: { readonly files: readonly FileSystemFileHandle[] }) => void,
  ) => void;
};

/** Once, where the app begins. */
export function listenForFiles(): void {
  addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  addEventListener("drop", (event) => {
    // A page may take tables and photos itself. Whatever nobody takes must not push the app out of its tab.
    if (event.defaultPrevented) return;
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    const isStart = routeOf(location.hash).screen === "projects";
    if (file !== undefined && (isStart || file.name.endsWith(".verso"))) hand(file);
  });
  launchQueueOf(window)?.setConsumer(async ({ files: [first] }) => {
    if (first !== undefined) hand(await first.getFile());
  });
}

function launchQueueOf(from: Window & { readonly launchQueue?: LaunchQueue }): LaunchQueue | undefined {
  return from.launchQueue;
}

/** Opens a file that was handed to the app as soon as the page that can is there. */
export function useOpenHanded(open: (file: File) => void): void {
  const file = useHandedFile();
  useEffect(() => {
    const taken = file === null ? null : takeHanded();
    if (taken !== null) open(taken);
  });
}
