import { describe, expect, test } from "vitest";
import { candidatesFor, choose, jobFor } from "../../engine/choice/index.ts";
import { makePlan } from "../../engine/plan/index.ts";
import { checkProject, newProject } from "../../files/index.ts";
import { sampleProject } from "../screens/projects/sample.ts";
import { Choosing, nameOf } from "./judging.ts";
import { pack, unpack } from "./packed.ts";

const { job } = checkProject({
  ...newProject({ title: "A sample", createdAt: 0 }),
  ...sampleProject("A sample"),
});
if (job === null) throw new Error("the sample can be planned");

const laid = candidatesFor(job).map((candidate) => ({
  ...candidate,
  plan: makePlan(jobFor(job, candidate.amount), { style: candidate.style, seed: 1, effort: 40 }),
}));

describe("choosing beside the page", () => {
  test("is the engine's own choice, each plan by what it was made for", () => {
    const choosing = new Choosing(job);
    for (const one of laid) choosing.lay(one);
    const expected = choose(
      laid.map(({ plan }) => plan),
      job,
    );
    const named = choosing.choose();
    expect(named.notes).toEqual(expected.notes);
    expect(named.chosen.map(({ reasons }) => reasons)).toEqual(expected.chosen.map(({ reasons }) => reasons));
    expect(named.chosen.map(nameOf)).toEqual(
      expected.chosen.flatMap(({ plan }) => laid.filter((one) => one.plan === plan).map(nameOf)),
    );
  });

  test("comes out the same, in whatever order the searches came to their end", () => {
    const [one, other] = [new Choosing(job), new Choosing(job)];
    for (const plan of laid) one.lay(plan);
    for (const plan of laid.toReversed()) other.lay(plan);
    expect(other.choose()).toEqual(one.choose());
  });

  test("a later plan of the same candidate takes the place of the earlier one", () => {
    const choosing = new Choosing(job);
    const [first] = laid;
    if (first === undefined) throw new Error("there is a candidate");
    choosing.lay(first);
    choosing.lay(first);
    expect(choosing.choose().chosen.map(nameOf)).toEqual([nameOf(first)]);
  });

  test("nothing there gives nothing, and says so", () => {
    expect(new Choosing(job).choose()).toEqual({ chosen: [], notes: [{ kind: "no-more", count: 0 }] });
  });
});

test("a plan that was packed comes out as it went in", () => {
  for (const { plan } of laid.slice(0, 4)) expect(unpack(pack(plan))).toEqual(plan);
});
