import type { Advice, AdvisedPlan } from "../../engine/advice/index.ts";
import type { Job } from "../../engine/cloth/index.ts";
import judgeAddress from "./judge.ts?worker&url";
import type { CandidatePlan, NamedChoice } from "./judging.ts";
import type { FromJudge, ToJudge } from "./messages.ts";
import type { PackedPlan } from "./packed.ts";
import { workerAddress } from "./trusted.ts";

/** A choice in the making, beside the page. */
export type PlanChoice = {
  lay(plan: CandidatePlan<PackedPlan>): void;
  /** Which of those that lie there to offer. Rejects where that fails, and where it was closed. */
  choose(): Promise<NamedChoice>;
  /** It is not needed any more; what it held is let go. */
  close(): void;
};

export function openChoice(job: Job): PlanChoice {
  const { tell, ask, close } = openJudge(job);
  return {
    lay: (plan) => tell({ kind: "lay", plan }),
    choose: async () => {
      const answer = await ask({ kind: "choose" });
      if (answer.kind !== "chosen") throw new Error("plans to choose from were not weighed");
      return answer.choice;
    },
    close,
  };
}

/** What is worth knowing before a plan is sewn. Rejects where that can't be found out. */
export async function adviseOn(
  { layout, buy, topColours = [] }: AdvisedPlan,
  job: Job,
): Promise<readonly Advice[]> {
  const { ask, close } = openJudge(job);
  try {
    const answer = await ask({ kind: "advise", plan: { layout, buy, topColours } });
    if (answer.kind !== "advice") throw new Error("a plan was not advised on");
    return answer.advice;
  } finally {
    close();
  }
}

/** One worker for one matter: nothing of it stays in memory afterwards. */
function openJudge(job: Job) {
  const worker = new Worker(workerAddress(judgeAddress), { type: "module", name: "judge" });
  const over = new AbortController();
  const tell = (message: ToJudge) => worker.postMessage(message);
  tell({ kind: "job", job });
  return {
    tell,
    ask: (message: ToJudge) => {
      const answer = answerOf(worker, over.signal);
      tell(message);
      return answer;
    },
    close: () => {
      worker.terminate();
      over.abort();
    },
  };
}

function answerOf(worker: Worker, over: AbortSignal): Promise<FromJudge> {
  return new Promise((done, failed) => {
    const once = { once: true, signal: over };
    worker.addEventListener(
      "message",
      ({ data }: MessageEvent<FromJudge>) =>
        data.kind === "failed" ? failed(new Error(data.detail)) : done(data),
      once,
    );
    worker.addEventListener("error", (event) => failed(new Error(event.message)), once);
    over.addEventListener("abort", () => failed(new Error("closed before there was an answer")));
  });
}
