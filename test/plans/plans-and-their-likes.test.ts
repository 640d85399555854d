import { describe, expect, it } from "vitest";
import { styles } from "../../src/engine/back/index.ts";
import { makePlan } from "../../src/engine/plan/index.ts";
import { writePlan } from "../../src/files/index.ts";
import { effort, seed } from "./everyPlan.ts";
import { heaps, jobOf } from "./heaps.ts";
import { lawsBrokenBy } from "./laws.ts";
import { turnedJob } from "./turnedJob.ts";

describe.each(heaps)("what is left over: %s", (heap) => {
  // Each heap in a style of its own, so that every style has its turn.
  const style = styles[heaps.indexOf(heap) % styles.length] ?? "all-over";

  it(`gives the same plan twice, as ${style}`, () => {
    const job = jobOf(heap, "weekend");
    const twice = [1, 2].map(() => writePlan(makePlan(job, { style, seed: 7, effort })));
    expect(twice[1]).toBe(twice[0]);
  });

  it(`lying on its side is as good a job, as ${style}`, () => {
    expect(lawsBrokenBy(turnedJob(jobOf(heap, "weekend")), { style, seed, effort })).toEqual([]);
  });
});
