import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { styles } from "../../src/engine/back/index.ts";
import { inches } from "../../src/engine/length/index.ts";
import { makePlan } from "../../src/engine/plan/index.ts";
import { writePlan } from "../../src/files/index.ts";
import { hardCases } from "./hard-cases.ts";
import { jobFrom } from "./heaps.ts";
import { lawsBrokenBy } from "./laws.ts";
import { manyPieces, randomCases } from "./randomJobs.ts";
import { turnedJob } from "./turnedJob.ts";

const effort = 20;

describe("a heap of anything", () => {
  it("gives a plan that keeps every law, in any style", () => {
    const keepsEveryLaw = fc.property(randomCases, ({ job, style, seed }) => {
      expect(lawsBrokenBy(job, { style, seed, effort })).toEqual([]);
    });
    fc.assert(keepsEveryLaw, { seed: 1, numRuns: 40 });
  });

  it("may lie on its side", () => {
    const turns = fc.property(randomCases, ({ job, style, seed }) => {
      expect(lawsBrokenBy(turnedJob(job), { style, seed, effort })).toEqual([]);
    });
    fc.assert(turns, { seed: 1, numRuns: 8 });
  });

  it("gives the same plan twice", () => {
    const twice = fc.property(randomCases, ({ job, style, seed }) => {
      const plans = [1, 2].map(() => writePlan(makePlan(job, { style, seed, effort })));
      expect(plans[1]).toBe(plans[0]);
    });
    fc.assert(twice, { seed: 1, numRuns: 5 });
  });
});

describe("one piece", () => {
  const piece = { row: 1, width: inches(10), height: inches(10), fabric: "Moss", colour: "#435b42" };
  const back = { width: inches(68), height: inches(88) };
  const job = jobFrom({ unit: "in", back, plain: { name: "Unbleached cotton" }, pieces: [piece] });

  it.each(styles)("as %s", (style) => {
    expect(lawsBrokenBy(job, { style, seed: 1, effort })).toEqual([]);
  });
});

describe("four hundred pieces", () => {
  it("freely over the whole back", () => {
    expect(lawsBrokenBy(jobFrom(manyPieces(400)), { style: "all-over", seed: 1, effort })).toEqual([]);
  });
});

describe("what once could not be planned", () => {
  it.each(hardCases)("$what", ({ draft, style, seed = 1 }) => {
    expect(lawsBrokenBy(jobFrom(draft), { style, seed, effort })).toEqual([]);
  });
});
