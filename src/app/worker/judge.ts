/** What is thought about plans beside the page: which to offer, and what is worth knowing before one is sewn. */
import { adviceFor } from "../../engine/advice/index.ts";
import type { Job } from "../../engine/cloth/index.ts";
import { Choosing } from "./judging.ts";
import type { FromJudge, ToJudge } from "./messages.ts";
import { unpack } from "./packed.ts";

let judged: { readonly job: Job; readonly choosing: Choosing } | null = null;

addEventListener("message", ({ data }: MessageEvent<ToJudge>) => {
  try {
    hear(data);
  } catch (error) {
    say({ kind: "failed", detail: String(error) });
  }
});

function hear(message: ToJudge): void {
  if (message.kind === "job") judged = { job: message.job, choosing: new Choosing(message.job) };
  if (judged === null) return;
  const { job, choosing } = judged;
  if (message.kind === "lay") choosing.lay({ ...message.plan, plan: unpack(message.plan.plan) });
  if (message.kind === "choose") say({ kind: "chosen", choice: choosing.choose() });
  if (message.kind === "advise") say({ kind: "advice", advice: adviceFor(message.plan, job) });
}

function say(message: FromJudge): void {
  postMessage(message);
}
