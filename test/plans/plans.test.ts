import { describe, expect, it } from "vitest";
import { styles } from "../../src/engine/back/index.ts";
import type { Time } from "../../src/engine/cloth/index.ts";
import { makePlan } from "../../src/engine/plan/index.ts";
import { writePlan } from "../../src/files/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { lawsBrokenBy } from "./laws.ts";
import { turnedJob } from "./turnedJob.ts";

// Little effort: what is wrong with a plan is wrong with it however long one looks for a fuller one.
const effort = 60;
const seed = 1;
const times: readonly Time[] = ["afternoon", "weekend"];

describe.each(heaps)("what is left over: %s", (heap) => {
  describe.each(times)("in an afternoon or a weekend: %s", (time) => {
    it.each(styles)("as %s is a plan that keeps every law", (style) => {
      expect(lawsBrokenBy(jobOf(heap, time), { style, seed, effort })).toEqual([]);
    });
  });

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
