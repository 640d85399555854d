import { describe, expect, test } from "vitest";
import type { Style } from "../../../engine/back/index.ts";
import { makePlan, type Plan } from "../../../engine/plan/index.ts";
import { checkProject, newProject } from "../../../files/index.ts";
import { sampleProject } from "../projects/sample.ts";
import { comparedPlans, laidSideBySide } from "./comparedPlans.ts";
import { type Found, nothingFound, type Wish } from "./desk.ts";
import { keptFrom, type Shown, wishOfKept } from "./planning.ts";

const { job } = checkProject({
  ...newProject({ title: "A sample", createdAt: 0 }),
  ...sampleProject("A sample"),
});

const planOf = (style: Style, seed = 1): Plan => {
  if (job === null) throw new Error("the sample can be planned");
  return makePlan(job, { style, seed, effort: 1 });
};
const [cross, chunks, squares] = [planOf("cross"), planOf("chunks"), planOf("squares")];
const wishFor = (plan: Plan): Wish => wishOfKept(keptFrom(plan, "job"));
const shown: Shown = {
  chosen: wishFor(chunks),
  best: [wishFor(cross), wishFor(chunks)],
  others: [wishFor(squares)],
  laid: null,
  keptIsOld: false,
  changesAreOld: false,
};
const foundAmong =
  (...plans: readonly Plan[]) =>
  ({ style, seed }: Wish): Found => ({
    ...nothingFound,
    plan: plans.find((plan) => plan.style === style && plan.seed === seed) ?? null,
  });

describe("what can be compared", () => {
  test("the plan she looks at comes first, each once, and what is not found yet not at all", () => {
    const all = comparedPlans({ shown, foundFor: foundAmong(cross, chunks), kept: null, named: [] });
    expect(all.map(({ plan, isChosen }) => [plan.style, isChosen])).toEqual([
      ["chunks", true],
      ["cross", false],
    ]);
  });

  test("the one she keeps is marked where it is offered, and else lies beside, with the way to it", () => {
    const heap = { shown, foundFor: foundAmong(cross, chunks), named: [] };
    const offered = comparedPlans({ ...heap, kept: keptFrom(cross, "job") });
    expect(offered.map(({ isKept }) => isKept)).toEqual([false, true]);
    const kept = keptFrom(planOf("cross", 2), "job");
    const beside = comparedPlans({ ...heap, kept }).at(-1);
    expect(beside).toMatchObject({ isKept: true, wish: { style: "cross", seed: 2, stays: null } });
    const old = comparedPlans({ ...heap, shown: { ...shown, keptIsOld: true }, kept }).at(-1);
    expect(old).toMatchObject({ isKept: true, wish: null });
  });

  test("those under a name come last, and a version without a plan is none of them", () => {
    const named = [
      { id: "1", name: "Sunday", at: 0, plan: squares },
      { id: "2", name: "Only the heap", at: 0, plan: null },
    ];
    const all = comparedPlans({ shown, foundFor: foundAmong(chunks), kept: null, named });
    expect(all.map((one) => one.named?.name ?? one.plan.style)).toEqual(["chunks", "Sunday"]);
  });
});

test("as many lie side by side as have room, until she says which", () => {
  const all = comparedPlans({ shown, foundFor: foundAmong(cross, chunks, squares), kept: null, named: [] });
  expect(laidSideBySide(all, null, 2).map(({ plan }) => plan.style)).toEqual(["chunks", "cross"]);
  const wanted = new Set(all.filter(({ plan }) => plan.style !== "cross").map(({ key }) => key));
  expect(laidSideBySide(all, wanted, 2).map(({ plan }) => plan.style)).toEqual(["chunks", "squares"]);
  expect(laidSideBySide(all, new Set(), 2)).toEqual([]);
});
