import type { PhotoRefusal } from "../../../photo/index.ts";
import { workerAddress } from "../trusted.ts";
import { type Answer, ask } from "./ask.ts";
import type { FoundPhoto, FoundPiece, PhotoCorrection, PhotoRequest, PhotoStage } from "./messages.ts";
import photoAddress from "./photoWorker.ts?worker&url";

export type Measuring = {
  readonly signal: AbortSignal;
  readonly onStage: (stage: PhotoStage) => void;
};

/** `null`: it was stopped. */
export type PhotoAnswer =
  | { readonly kind: "measured"; readonly found: FoundPhoto }
  | { readonly kind: "refused"; readonly why: PhotoRefusal }
  | null;

type Held = { readonly request: PhotoRequest; readonly worker: Worker };

// An open photo takes much memory: one at a time, and none that nobody comes back to.
const heldFor = 180_000;
let held: Held | null = null;
let rest: ReturnType<typeof setTimeout> | undefined;

function hold(next: Held | null): void {
  clearTimeout(rest);
  if (held !== null && held.worker !== next?.worker) held.worker.terminate();
  held = next;
  if (next !== null) rest = setTimeout(() => hold(null), heldFor);
}

/**
 * Measures a photo beside the page, and keeps it open there for corrections. Rejects only where that itself fails;
 * stopping ends it at once.
 */
export async function measureBeside(
  request: PhotoRequest,
  { signal, onStage }: Measuring,
): Promise<PhotoAnswer> {
  if (signal.aborted) return null;
  hold(null);
  const worker = new Worker(workerAddress(photoAddress), { type: "module", name: "photo" });
  const stopped = new Promise<null>((done) =>
    signal.addEventListener("abort", () => done(null), { once: true }),
  );
  const asked = ask(worker, { kind: "measure", ...request }, onStage);
  let answer: Answer | null = null;
  try {
    answer = await Promise.race([asked, stopped]);
  } finally {
    if (answer?.kind === "measured") hold({ request, worker });
    else worker.terminate();
  }
  return answer?.kind === "measured" || answer?.kind === "refused" ? answer : null;
}

/** What a correction makes of a photo that was measured; it is opened again where it no longer is. */
export async function correctBeside(
  request: PhotoRequest,
  correction: PhotoCorrection,
): Promise<readonly FoundPiece[]> {
  if (held?.request.file !== request.file || held.request.printed !== request.printed)
    await measureBeside(request, { signal: new AbortController().signal, onStage: () => {} });
  if (held === null) return [];
  const { worker } = held;
  hold({ request, worker });
  const answer = await ask(worker, { kind: "correct", correction }, () => {});
  return answer.kind === "corrected" ? answer.pieces : [];
}
