import type { FromPhotoWorker, PhotoStage, ToPhotoWorker } from "./messages.ts";

export type Answer = Exclude<FromPhotoWorker, { readonly kind: "stage" | "failed" }>;

/** One question to a worker that measures photos; rejects where that itself fails. */
export function ask(
  worker: Worker,
  message: ToPhotoWorker,
  onStage: (stage: PhotoStage) => void = () => {},
): Promise<Answer> {
  const over = new AbortController();
  const { signal } = over;
  const answer = new Promise<Answer>((done, failed) => {
    worker.addEventListener("error", (event) => failed(new Error(event.message)), { signal });
    worker.addEventListener(
      "message",
      ({ data }: MessageEvent<FromPhotoWorker>) => {
        if (data.kind === "stage") onStage(data.stage);
        else if (data.kind === "failed") failed(new Error(data.detail));
        else done(data);
      },
      { signal },
    );
  });
  worker.postMessage(message);
  return answer.finally(() => over.abort());
}
