import type { Corners, PhotoRefusal } from "../../../photo/index.ts";
import { workerAddress } from "../trusted.ts";
import { ask } from "./ask.ts";
import type { SmallPhoto, StraightTop } from "./messages.ts";
import photoAddress from "./photoWorker.ts?worker&url";

/** A photo of a finished top that lies open beside the page, until it is closed. */
export type OpenTop = SmallPhoto & {
  /** `ratio`: the top's width to its height. Null: those are no corners of a top. */
  straighten(corners: Corners, ratio: number): Promise<StraightTop | null>;
  close(): void;
};

export type TopAnswer =
  | { readonly kind: "open"; readonly top: OpenTop }
  | { readonly kind: "refused"; readonly why: PhotoRefusal };

/** Unpacks a photo of a finished top. Rejects only where that itself fails. */
export async function openTop(file: Blob): Promise<TopAnswer> {
  const worker = new Worker(workerAddress(photoAddress), { type: "module", name: "top" });
  const close = () => worker.terminate();
  const answer = await ask(worker, { kind: "open-top", file }).catch((error: unknown) => {
    close();
    throw error;
  });
  if (answer.kind === "top-opened") {
    return { kind: "open", top: { ...answer.photo, straighten: straightenIn(worker), close } };
  }
  close();
  return answer.kind === "refused" ? answer : { kind: "refused", why: { kind: "not-a-photo" } };
}

function straightenIn(worker: Worker): OpenTop["straighten"] {
  return async (corners, ratio) => {
    const answer = await ask(worker, { kind: "straighten", corners, ratio });
    return answer.kind === "straightened" ? answer.top : null;
  };
}
