import type { Job } from "../../engine/cloth/index.ts";
import { hashOfJob, type KeptPlan, type PlanDocument, readPlan } from "../../files/index.ts";

/** The plan of a text that was kept; null where it can't be read any more. */
export function planIn(kept: KeptPlan): PlanDocument | null {
  const known = read.get(kept.text);
  if (known !== undefined) return known;
  const plan = readPlan(kept.text);
  const document = plan.ok ? plan.value : null;
  // Reading holds every number to the ruler, which takes its time: one text at a time is remembered.
  read.clear();
  read.set(kept.text, document);
  return document;
}

const read = new Map<string, PlanDocument | null>();

/** Whether the job is still the one the plan was kept for. A job that can't be made is another one. */
export function isCurrent(kept: KeptPlan, job: Job | null): boolean {
  return job !== null && hashOfJob(job) === kept.job;
}
