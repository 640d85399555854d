import { workerAddress } from "../trusted.ts";
import type { FromCardsWorker, ToCardsWorker } from "./cardsWorker.ts";
import cardsAddress from "./cardsWorker.ts?worker&url";

/** The reference cards and sheets for a paper as a PDF, made beside the page. */
export function cardsToPrint(request: ToCardsWorker): Promise<Uint8Array> {
  const worker = new Worker(workerAddress(cardsAddress), { type: "module", name: "cards" });
  const made = new Promise<Uint8Array>((done, failed) => {
    worker.addEventListener("error", (event) => failed(new Error(event.message)), { once: true });
    worker.addEventListener("message", ({ data }: MessageEvent<FromCardsWorker>) => {
      if ("pdf" in data) done(data.pdf);
      else failed(new Error(data.failed));
    });
  });
  worker.postMessage(request);
  return made.finally(() => worker.terminate());
}
