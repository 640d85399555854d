import { describe, expect, it } from "vitest";
import { heaps, jobOf } from "../../../test/plans/heaps.ts";
import { checkLayout } from "../layout/index.ts";
import type { Plan } from "../plan/index.ts";
import { apart, type Choice, choose, dominates, jobFor, meritsOf, startChoice } from "./index.ts";

const heap = heaps.find((name) => name.endsWith("r.15-s2")) ?? "";
const job = jobOf(heap, "weekend");

function choiceIn(turn: number): Choice<Plan> {
  const search = startChoice(job, { seed: 1, effort: 60 });
  while (!search.done) search.step(turn);
  return search.choice();
}

const whole = choiceIn(1000);

describe("a choice in the making", () => {
  it("comes to the same whatever its turns", () => {
    expect(choiceIn(7)).toEqual(whole);
  });

  it("offers plans that can be sewn, none beaten by one that was looked at, no two alike", () => {
    const { chosen, others } = whole;
    const offered = chosen.map(({ plan }) => plan);
    expect(offered.length).toBeGreaterThanOrEqual(3);
    expect(offered.flatMap((plan) => checkLayout(plan))).toEqual([]);
    // Where the composition leaves nothing to piece there is nothing to search.
    expect(offered.every(({ effort }) => effort === 60 || effort === 0)).toBe(true);
    for (const plan of offered) {
      expect([...offered, ...others].some((one) => dominates(meritsOf(one), meritsOf(plan)))).toBe(false);
      for (const other of offered)
        if (other !== plan) expect(apart(plan.layout, other.layout)).toBeGreaterThanOrEqual(0.4);
    }
  });

  it("can be stopped at any time, with what there is", () => {
    const search = startChoice(job, { seed: 1, effort: 1000 });
    expect(search.choice().chosen).toHaveLength(1);
    search.step(150);
    expect(search.done).toBe(false);
    expect(search.choice().chosen.length).toBeGreaterThanOrEqual(1);
  });

  it("takes as many as are wanted", () => {
    const { chosen, others } = whole;
    const all = [...chosen.map(({ plan }) => plan), ...others];
    expect(choose(all, job, { least: 2, most: 2 }).chosen).toHaveLength(2);
  });
});

it("has one job for each amount to sew, so that what is known of it is known again", () => {
  expect(jobFor(job, "usual")).toBe(job);
  expect(jobFor(job, "afternoon")).toBe(jobFor(job, "afternoon"));
  expect(jobFor(job, "less")).toMatchObject({ ...job, wishes: ["sew-less"] });
  expect(jobFor({ ...job }, "less")).not.toBe(jobFor(job, "less"));
});
