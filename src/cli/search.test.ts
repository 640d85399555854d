import { describe, expect, it } from "vitest";
import { checkDraft, type Job } from "../engine/cloth/index.ts";
import { inches } from "../engine/length/index.ts";
import { rankStyles, startPlan } from "../engine/plan/index.ts";
import { readLeftovers } from "../files/index.ts";
import type { Progress } from "../words/index.ts";
import { requestsFor, searchPlans } from "./search.ts";

const table = `kind,width,height,count,colour
square,5,5,12,#b5694b
strip,2 1/2,40,4,#33445a
rectangle,10,14,2,#6f7d4f
`;

function jobOf(): Job {
  const { pieces } = readLeftovers(new TextEncoder().encode(table), "in");
  const back = { width: inches(40), height: inches(50) };
  const checked = checkDraft({ unit: "in", back, plain: { name: "plain cloth" }, pieces });
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}

const job = jobOf();
const never = { asked: false };
const quiet = () => {};
const moves = (count: number) => ({ kind: "effort", moves: count }) as const;

describe("which plans are searched", () => {
  it("takes the best styles first, each once", () => {
    const requests = requestsFor(job, { style: null, seed: 5, plans: 3 });
    expect(requests.map(({ style }) => style)).toEqual(rankStyles(job).slice(0, 3));
    expect(requests.every(({ seed }) => seed === 5)).toBe(true);
    expect(
      new Set(requestsFor(job, { style: "all", seed: 1, plans: 9 }).map(({ style }) => style)).size,
    ).toBe(9);
  });

  it("takes another seed for each plan of one style", () => {
    const last = 2 ** 32 - 1;
    expect(requestsFor(job, { style: "cross", seed: last, plans: 2 })).toEqual([
      { style: "cross", seed: last },
      { style: "cross", seed: 0 },
    ]);
  });
});

describe("the search", () => {
  it("does not depend on the length of its turns", () => {
    const plans = [1, 7, 300].map((turn) => {
      const search = startPlan(job, { style: "all-over", seed: 3, effort: 300 });
      while (!search.done) search.step(turn);
      return search.plan();
    });
    expect(plans[1]).toEqual(plans[0]);
    expect(plans[2]).toEqual(plans[0]);
  });

  it("makes all its moves where it is given a number of them, and tells how it gets on", async () => {
    const seen: Progress[] = [];
    const command = { style: "all-over", seed: 1, plans: 2, limit: moves(50) } as const;
    const plans = await searchPlans(job, command, never, (progress) => seen.push(progress));
    expect(plans.map(({ seed, effort }) => [seed, effort])).toEqual([
      [1, 50],
      [2, 50],
    ]);
    expect(seen.at(-1)).toMatchObject({ plan: 2, plans: 2, effort: 50, secondsLeft: null });
    expect(seen.every(({ covered }) => covered >= 0 && covered <= 1)).toBe(true);
  });

  it("ends when its seconds are used up, with a plan of each", async () => {
    const command = { style: "chunks", seed: 1, plans: 3, limit: { kind: "seconds", seconds: 0.3 } } as const;
    expect(await searchPlans(job, command, never, quiet)).toHaveLength(3);
  });

  it("gives the very same plan again for the moves that a plan found in seconds took", async () => {
    const command = { style: "all-over", seed: 4, plans: 1 } as const;
    const [timed] = await searchPlans(
      job,
      { ...command, limit: { kind: "seconds", seconds: 0.4 } },
      never,
      quiet,
    );
    expect(timed?.effort).toBeGreaterThan(0);
    const [again] = await searchPlans(job, { ...command, limit: moves(timed?.effort ?? 0) }, never, quiet);
    expect(again).toEqual(timed);
  });

  it("stops when asked, with the plan it is at", async () => {
    const stop = { asked: false };
    const command = { style: null, seed: 1, plans: 3, limit: moves(1e9) } as const;
    const plans = await searchPlans(job, command, stop, ({ moves }) => {
      stop.asked ||= moves >= 20;
    });
    expect(plans).toHaveLength(1);
  });
});
