import type { Job } from "../cloth/index.ts";
import { add, type Length, roundUpTo, subtract } from "../length/index.ts";

/** The same job with a back whose layout lies on the ruler's step: never smaller, by less than a step larger. */
export function onTheRuler(job: Job): Job {
  const side = (raw: Length) => {
    const outer = add(job.seam, job.seam);
    return add(roundUpTo(subtract(raw, outer), job.step), outer);
  };
  return { ...job, back: { width: side(job.back.width), height: side(job.back.height) } };
}
