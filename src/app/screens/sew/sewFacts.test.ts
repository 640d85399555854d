import { describe, expect, test } from "vitest";
import { handMadePlan } from "../../../../test/generators/handMadePlan.ts";
import { nodesOf } from "../../../engine/layout/index.ts";
import { type Step, stepsFor } from "../../../engine/sewing/index.ts";
import {
  documentOf,
  type KeptPlan,
  newProject,
  type PlanDocument,
  type Project,
  writePlan,
} from "../../../files/index.ts";
import {
  cautionsAt,
  doneIn,
  partsOf,
  pictureOfStep,
  placeIn,
  sewingFor,
  turnAfter,
  waitsFor,
} from "./sewFacts.ts";

const plan = documentOf(handMadePlan());
const { steps } = plan;
const all = new Set(steps.map(({ id }) => id));
const blank = newProject({ title: "A back", createdAt: 0 });

function step(id: string): Step {
  const found = steps.find((one) => one.id === id);
  if (found === undefined) throw new Error(`the plan made by hand has a step ${id}`);
  return found;
}

function kept(text: string): Project {
  const plan: KeptPlan = {
    text,
    job: "of another day",
    style: "insert-across",
    seed: 7,
    effort: 1,
    keptAt: 0,
  };
  return { ...blank, plan };
}

const ids = (some: readonly Step[]) => some.map(({ id }) => id);

describe("the kept plan", () => {
  test("is read from its text, and told to be old where the job is another one", () => {
    expect(sewingFor(blank)).toEqual({ kind: "no-plan" });
    const sewing = sewingFor(kept(writePlan(plan)));
    expect(sewing).toMatchObject({ kind: "ready", isOld: true });
    expect(sewing.kind === "ready" && ids(sewing.plan.steps)).toEqual(ids(steps));
  });

  test("that can't be read, or tells nothing to sew, is said so", () => {
    for (const text of ["{", "", writePlan({ ...plan, steps: [] })])
      expect(sewingFor(kept(text))).toEqual({ kind: "unreadable" });
  });
});

describe("where she is", () => {
  test("at the first step, with none done", () => {
    expect(placeIn(plan, new Set(), null)).toMatchObject({
      step: steps[0],
      number: 1,
      isDone: false,
      done: 0,
      before: null,
      after: steps[1],
      open: steps[0],
      isLastOpen: false,
      waitsFor: [],
    });
  });

  test("at the first open step when she comes back, at any other she turned to", () => {
    const ticked = new Set(["1", "2"]);
    expect(placeIn(plan, ticked, null)).toMatchObject({ number: 3, done: 2, open: steps[2] });
    expect(placeIn(plan, ticked, "1")).toMatchObject({ number: 1, isDone: true, open: steps[2] });
    expect(placeIn(plan, ticked, "of another plan")).toMatchObject({ number: 3 });
  });

  test("at the last one when all are done", () => {
    const last = steps.at(-1);
    expect(placeIn(plan, all, null)).toMatchObject({
      step: last,
      open: null,
      after: null,
      isLastOpen: false,
    });
  });

  test("ticks of no step of this plan count for nothing", () => {
    expect(placeIn(plan, new Set(["1", "of another plan"]), null)).toMatchObject({ done: 1 });
  });

  test("with the last open one all are done, wherever it stands", () => {
    const butTwo = new Set([...all].filter((id) => id !== "2"));
    expect(placeIn(plan, butTwo, null)).toMatchObject({ number: 2, isLastOpen: true });
    expect(placeIn(plan, butTwo, "1")).toMatchObject({ isLastOpen: false });
  });

  test("a plan without steps is no place", () => {
    expect(placeIn({ ...plan, steps: [] }, new Set(), null)).toBeNull();
  });
});

describe("after a tick", () => {
  // What is shown then, as `placeIn` says it.
  const shown = (ticked: readonly string[], done: string) => {
    const at = turnAfter(plan, new Set(ticked), step(done));
    return { at, number: placeIn(plan, new Set([...ticked, done]), at)?.number };
  };

  test("the next open step, and undoing leads back", () => {
    expect(shown([], "1")).toEqual({ at: null, number: 2 });
    expect(placeIn(plan, new Set(), null)).toMatchObject({ number: 1 });
  });

  test("on from where she is, though one before was left out", () => {
    expect(shown(["1"], "3")).toEqual({ at: "4", number: 4 });
  });

  test("round to what was left out, once she is through", () => {
    const last = steps.at(-1)?.id ?? "";
    const butTwo = [...all].filter((id) => id !== "2" && id !== last);
    expect(shown(butTwo, last)).toEqual({ at: null, number: 2 });
  });

  test("the last one stays when nothing is left", () => {
    const last = steps.at(-1)?.id ?? "";
    expect(shown(ids(steps.slice(0, -1)), last)).toEqual({ at: null, number: steps.length });
  });
});

describe("what a step waits for", () => {
  test("the units it takes, as long as they are not done", () => {
    for (const one of steps) {
      const takes = one.from.flatMap((part) => ("step" in part ? [part.step] : []));
      expect(ids(waitsFor(plan, new Set(), one)).toSorted(), one.id).toEqual([...new Set(takes)].toSorted());
      expect(waitsFor(plan, new Set(takes), one)).toEqual([]);
    }
    expect(steps.filter((one) => waitsFor(plan, new Set(), one).length > 0).length).toBeGreaterThan(1);
  });

  test("nothing once it is done itself", () => {
    for (const one of steps) expect(waitsFor(plan, new Set([one.id]), one)).toEqual([]);
  });
});

describe("section by section", () => {
  test("every step once, in the order of sewing: units and slabs, sections, sections together", () => {
    const parts = partsOf(plan);
    expect(parts.flatMap((part) => ids(part.steps))).toEqual(ids(steps));
    expect(parts[0]?.is).toEqual({ kind: "units" });
    expect(parts[0]?.steps.every(({ kind }) => kind !== "join")).toBe(true);
    expect(parts.at(-1)?.is).toEqual({ kind: "together" });
    const numbers = parts.flatMap(({ is }) => (is.kind === "section" ? [is.number] : []));
    expect(numbers).toEqual(numbers.map((_, index) => index + 1));
    expect(numbers.length).toBeGreaterThan(0);
  });

  test("how far each has come", () => {
    for (const part of partsOf(plan)) {
      expect(doneIn(part, new Set())).toBe(0);
      expect(doneIn(part, new Set([part.steps[0]?.id ?? "", "of another plan"]))).toBe(1);
      expect(doneIn(part, all)).toBe(part.steps.length);
    }
  });
});

describe("what there is to see", () => {
  test("each step's parts, and where it goes; the back goes nowhere", () => {
    const pictures = steps.map((one) => pictureOfStep(plan, one));
    expect(pictures.every((picture) => picture !== null)).toBe(true);
    expect(pictures.map((picture) => picture?.place === null)).toEqual(
      steps.map((_, index) => index === steps.length - 1),
    );
  });

  test("a back of one piece of cloth is seen as it is", () => {
    const one = singleCloth();
    const [only] = one.steps;
    expect(only && pictureOfStep(one, only)).toMatchObject({ place: null });
    expect(partsOf(one)).toHaveLength(1);
  });

  test("steps that are not those of the layout have no picture, and break nothing", () => {
    const stranger = { ...step("1"), id: "99" };
    const other = { ...step("2"), unfinished: step("1").unfinished, id: "3" };
    expect(pictureOfStep(plan, stranger)).toBeNull();
    expect(pictureOfStep(plan, other)).toBeNull();
    expect(partsOf({ ...plan, steps: [stranger] })).toHaveLength(1);
  });
});

function singleCloth(): PlanDocument {
  const made = handMadePlan();
  const leaf = nodesOf(made.layout, made).find(({ node }) => node.kind === "cloth")?.node;
  if (leaf === undefined) throw new Error("the plan made by hand has plain cloth");
  return documentOf({ ...made, layout: leaf, steps: stepsFor(leaf, { ...made, top: null }) });
}

describe("cautions", () => {
  test("each is said once: the cutter with the first step, the iron with the first seam", () => {
    expect(steps.flatMap((one) => cautionsAt(plan, one)).toSorted()).toEqual(["cutter", "iron"]);
    expect(cautionsAt(plan, step("1"))).toContain("cutter");
  });
});
