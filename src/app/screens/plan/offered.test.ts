import { describe, expect, test } from "vitest";
import { candidatesFor, glanceOf } from "../../../engine/choice/index.ts";
import type { Job } from "../../../engine/cloth/index.ts";
import { defaultEffort, makePlan, type PlanRequest } from "../../../engine/plan/index.ts";
import { checkProject, newProject } from "../../../files/index.ts";
import { type CandidatePlan, type NamedChoice, nameOf, type PackedPlan, pack } from "../../worker/index.ts";
import { sampleProject } from "../projects/sample.ts";
import { makeOffers, nothingOffered, type Offered, reasonsFor } from "./offered.ts";

const { job } = checkProject({
  ...newProject({ title: "A sample", createdAt: 0 }),
  ...sampleProject("A sample"),
});
if (job === null) throw new Error("the sample can be planned");

const candidates = candidatesFor(job);
const effort = defaultEffort(job, 1);
const plan = makePlan(job, { style: "all-over", seed: 1, effort: 1 });
const choiceOf = (...at: readonly number[]): NamedChoice => ({
  chosen: candidates
    .filter((_, index) => at.includes(index))
    .map(({ style, amount }) => ({ style, amount, reasons: [] })),
  notes: [{ kind: "no-more", count: at.length }],
});

/** What would run beside the page: each search ends at once, each choice is the next of those given. */
function standIn(choices: readonly NamedChoice[]) {
  const asked: PlanRequest[] = [];
  const laid: string[] = [];
  const left = [...choices];
  let closed = 0;
  const beside = {
    solvePacked: async (_: Job, request: PlanRequest) => {
      asked.push(request);
      return { whole: true, plan: pack(plan) } as const;
    },
    openChoice: () => ({
      lay: (one: CandidatePlan<PackedPlan>) => laid.push(nameOf(one)),
      choose: async () => left.shift() ?? choiceOf(),
      close: () => {
        closed += 1;
      },
    }),
  };
  return { asked, laid, beside, closed: () => closed };
}

async function offersOf(choices: readonly NamedChoice[], stop = new AbortController()) {
  const { beside, ...seen } = standIn(choices);
  const told: Offered[] = [];
  const onOffered = (offered: Offered) => {
    told.push(offered);
  };
  const end = makeOffers({ job: job ?? never(), seconds: 1, beside, signal: stop.signal, onOffered });
  return { ...seen, told, end };
}

function never(): never {
  throw new Error("the sample can be planned");
}

describe("what is offered", () => {
  test("every candidate is glanced at, those that would be offered are looked at longer, once", async () => {
    const { asked, laid, end } = await offersOf([choiceOf(0, 2), choiceOf(0, 1), choiceOf(0, 1)]);
    await end;
    const efforts = asked.map((request) => request.effort);
    expect(efforts.slice(0, candidates.length)).toEqual(candidates.map(() => glanceOf(effort)));
    expect(efforts.slice(candidates.length)).toEqual([effort, effort, effort]);
    expect(laid.slice(candidates.length)).toEqual([0, 2, 1].map((at) => nameOf(candidates[at] ?? never())));
  });

  test("the share grows to 1, and what comes last is what is offered", async () => {
    const { told, end } = await offersOf([choiceOf(3), choiceOf(3)]);
    await end;
    const shares = told.flatMap((one) => (one.kind === "making" ? [one.share] : []));
    expect(shares).toEqual([...shares].sort((one, other) => one - other));
    expect(shares.at(-1)).toBe(1);
    const [three = never()] = candidates.slice(3);
    expect(told.at(-1)).toEqual({
      kind: "made",
      offers: [{ ...three, reasons: [], plan }],
      notes: [{ kind: "no-more", count: 1 }],
    });
  });

  test("what was held beside the page is let go, also where nothing could be chosen", async () => {
    const good = await offersOf([choiceOf()]);
    await good.end;
    expect(good.closed()).toBe(1);
    const stop = new AbortController();
    const stopped = await offersOf([choiceOf(0)], stop);
    stop.abort();
    await expect(stopped.end).rejects.toThrow();
    expect(stopped.closed()).toBeGreaterThanOrEqual(1);
    expect(stopped.told.filter(({ kind }) => kind === "made")).toEqual([]);
  });
});

test("reasons go with the plan that was offered, and with no other of its style", () => {
  const [one = never()] = candidates;
  const reasons = [{ kind: "nothing-to-buy" }] as const;
  const offered: Offered = { kind: "made", offers: [{ ...one, plan, reasons }], notes: [] };
  const found = { ...one, seed: 1, byHand: null };
  expect(reasonsFor(found, offered)).toBe(reasons);
  expect(reasonsFor({ ...found, seed: 2 }, offered)).toEqual([]);
  expect(reasonsFor({ ...found, byHand: { plan: "", job: "" } }, offered)).toEqual([]);
  expect(reasonsFor(found, nothingOffered)).toEqual([]);
});
