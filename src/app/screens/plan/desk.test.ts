import { describe, expect, test } from "vitest";
import { handMadePlan } from "../../../../test/generators/handMadePlan.ts";
import type { Job } from "../../../engine/cloth/index.ts";
import { defaultEffort, type Plan, type PlanRequest } from "../../../engine/plan/index.ts";
import { checkProject, newProject } from "../../../files/index.ts";
import type { Solved, SolveWishes } from "../../worker/index.ts";
import { sampleProject } from "../projects/sample.ts";
import { isBetter, keyOf, openDesk, seconds, type Wish } from "./desk.ts";

const { job } = checkProject({
  ...newProject({ title: "A sample", createdAt: 0 }),
  ...sampleProject("A sample"),
});
if (job === null) throw new Error("the sample can be planned");

const plainly = { amount: "usual", stays: null, byHand: null } as const;
const wish: Wish = { style: "chunks", seed: 1, ...plainly };
const planOf = (covered: number): Plan => {
  const plan = handMadePlan();
  return { ...plan, figures: { ...plan.figures, covered } };
};

/** A solver whose every word is given by the test. */
function standIn() {
  const asked: {
    request: PlanRequest;
    wishes: SolveWishes;
    end: (solved: Solved) => void;
    fail: () => void;
  }[] = [];
  const solve = (_: Job, request: PlanRequest, wishes: SolveWishes = {}) =>
    new Promise<Solved>((end, reject) => {
      asked.push({ request, wishes, end, fail: () => reject(new Error("the solver broke off")) });
      wishes.signal?.addEventListener("abort", () => end({ whole: false, plan: null }));
    });
  const notAsked = () => {
    throw new Error("nothing is offered here");
  };
  const beside = { solvePlan: solve, solvePacked: notAsked, openChoice: notAsked };
  const nth = (index: number) => {
    const one = asked[index];
    if (one === undefined) throw new Error(`search ${index} was asked for`);
    return one;
  };
  return { beside, asked, nth };
}

const settled = () => new Promise((done) => setTimeout(done, 0));

describe("the desk", () => {
  test("searches a wish once, with the effort of so many seconds", () => {
    const { beside, asked } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    desk.search(wish, seconds.glance);
    expect(asked.map(({ request }) => request)).toEqual([
      { style: "chunks", seed: 1, effort: defaultEffort(job, seconds.glance) },
    ]);
  });

  test("shows the first plan at once and then only better ones", () => {
    const { beside, nth } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    const shown = () => desk.found().get(keyOf(wish))?.plan?.figures.covered;
    nth(0).wishes.onBetter?.(planOf(0.4));
    expect(shown()).toBe(0.4);
    nth(0).wishes.onBetter?.(planOf(0.3));
    expect(shown()).toBe(0.4);
    nth(0).wishes.onBetter?.(planOf(0.6));
    expect(shown()).toBe(0.6);
  });

  test("a longer search goes on from the best of the shorter one", async () => {
    const { beside, nth } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    nth(0).end({ whole: true, plan: planOf(0.8) });
    await settled();
    expect(desk.found().get(keyOf(wish))).toMatchObject({ state: "found", seconds: seconds.glance });
    desk.search(wish, seconds.look);
    nth(1).wishes.onBetter?.(planOf(0.5));
    expect(desk.found().get(keyOf(wish))?.plan?.figures.covered).toBe(0.8);
    nth(1).end({ whole: true, plan: planOf(0.797) });
    await settled();
    // A hair less cover is a calmer back by the longer search's own judgement.
    expect(desk.found().get(keyOf(wish))).toMatchObject({ state: "found", seconds: seconds.look });
    expect(desk.found().get(keyOf(wish))?.plan?.figures.covered).toBe(0.797);
  });

  test("where a search comes to is not held against what it showed on its way, unless she stopped there", async () => {
    const { beside, nth } = standIn();
    const desk = openDesk(job, beside);
    const shown = () => desk.found().get(keyOf(wish))?.plan?.figures.covered;
    desk.search(wish, seconds.glance);
    nth(0).wishes.onBetter?.(planOf(0.9));
    nth(0).end({ whole: true, plan: planOf(0.7) });
    await settled();
    expect(shown()).toBe(0.7);
    desk.search(wish, seconds.look);
    nth(1).wishes.onBetter?.(planOf(0.9));
    desk.stop(wish);
    await settled();
    desk.search(wish, seconds.longLook);
    nth(2).end({ whole: true, plan: planOf(0.8) });
    await settled();
    expect(shown()).toBe(0.9);
  });

  test("stopped, it keeps the best so far and stays stopped; paused, it is gone on with", async () => {
    const { beside, asked, nth } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    nth(0).wishes.onBetter?.(planOf(0.5));
    desk.stop(wish);
    await settled();
    expect(desk.found().get(keyOf(wish))).toMatchObject({ state: "stopped" });
    expect(desk.found().get(keyOf(wish))?.plan?.figures.covered).toBe(0.5);
    desk.search(wish, seconds.glance);
    desk.pause(wish);
    await settled();
    expect(desk.found().get(keyOf(wish))?.state).toBe("waiting");
    desk.search(wish, seconds.glance);
    expect(asked).toHaveLength(3);
  });

  test("what a search that was ended still says is not heard over a newer one", async () => {
    const { beside, nth } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    desk.pause(wish);
    desk.search(wish, seconds.glance);
    await settled();
    expect(desk.found().get(keyOf(wish))?.state).toBe("searching");
    nth(1).end({ whole: true, plan: planOf(0.7) });
    await settled();
    expect(desk.found().get(keyOf(wish))?.state).toBe("found");
  });

  test("leaving ends every search", () => {
    const { beside, asked } = standIn();
    const desk = openDesk(job, beside);
    for (const style of ["chunks", "cross", "squares"] as const)
      desk.search({ style, seed: 1, ...plainly }, seconds.glance);
    desk.leave();
    expect(asked.map(({ wishes }) => wishes.signal?.aborted)).toEqual([true, true, true]);
  });

  test("a solver that breaks off is said, and can be tried again", async () => {
    const { beside, asked, nth } = standIn();
    const desk = openDesk(job, beside);
    desk.search(wish, seconds.glance);
    nth(0).fail();
    await settled();
    expect(desk.found().get(keyOf(wish))?.state).toBe("failed");
    desk.search(wish, seconds.look);
    expect(asked).toHaveLength(2);
  });

  test("a plan that was found before is not searched for again, until she asks for more", () => {
    const { beside, asked } = standIn();
    const desk = openDesk(job, beside);
    desk.put(wish, planOf(0.9));
    desk.search(wish, seconds.glance);
    desk.search(wish, seconds.look);
    expect(asked).toHaveLength(0);
    desk.search(wish, seconds.longLook);
    expect(asked).toHaveLength(1);
  });

  test("tells of each change, and a snapshot is the same until there is one", () => {
    const { beside, nth } = standIn();
    const desk = openDesk(job, beside);
    let heard = 0;
    const stop = desk.subscribe(() => {
      heard += 1;
    });
    desk.search(wish, seconds.glance);
    expect(heard).toBe(1);
    const snapshot = desk.found();
    expect(desk.found()).toBe(snapshot);
    // Small steps of progress are no news.
    for (const share of [0.005, 0.01, 0.5, 0.505]) nth(0).wishes.onProgress?.({ share, covered: 0.2 });
    expect(heard).toBe(2);
    stop();
    nth(0).wishes.onBetter?.(planOf(0.4));
    expect(heard).toBe(2);
  });
});

test.each([
  [null, 0.1, false, true],
  [0.5, 0.5, false, false],
  [0.5, 0.51, false, true],
  [0.5, 0.496, true, true],
  [0.5, 0.4, true, false],
] as const)("after %s, %s is better (whole search: %s): %s", (before, after, whole, expected) => {
  expect(isBetter(planOf(after), before === null ? null : planOf(before), whole)).toBe(expected);
});
