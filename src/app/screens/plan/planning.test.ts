import { describe, expect, test } from "vitest";
import { styles } from "../../../engine/back/index.ts";
import { inches } from "../../../engine/length/index.ts";
import { makePlan } from "../../../engine/plan/index.ts";
import { lengthAsMeasured, measuredLength, newProject, type Project } from "../../../files/index.ts";
import { sampleProject } from "../projects/sample.ts";
import { isTheKept, type Planning, planningFor, shownFor } from "./planning.ts";
import { textOf } from "./planText.ts";

const blank = newProject({ title: "A back", createdAt: 0 });
const sample: Project = { ...blank, ...sampleProject("A sample") };

function ready(project: Project): Planning & { kind: "ready" } {
  const planning = planningFor(project);
  if (planning.kind !== "ready") throw new Error("this project can be planned");
  return planning;
}

function pages(project: Project): string[] {
  const planning = planningFor(project);
  return planning.kind === "ready" ? [] : planning.missing.map(({ page }) => page);
}

describe("what is needed before there can be a plan", () => {
  const sized = { ...blank, size: sample.size };
  const [row] = sample.leftovers;
  const spoilt = row && {
    ...row,
    cells: { ...row.cells, width: measuredLength("4 foo", "in") ?? row.cells.width },
  };

  test.each([
    ["nothing yet", blank, ["size", "leftovers"]],
    ["the size alone", sized, ["leftovers"]],
    ["leftovers alone", { ...sample, size: blank.size }, ["size"]],
    [
      "an extra no one asks for",
      { ...sample, size: { ...sample.size, extra: lengthAsMeasured(inches(40), "in") } },
      ["size"],
    ],
    ["a plain cloth of no colour", { ...sample, plain: { name: "", colour: "tealish" } }, ["size"]],
  ] as const)("%s", (_, project, expected) => {
    expect(pages(project)).toEqual(expected);
  });

  test("a side that is not known is one thing to mend, not two", () => {
    const planning = planningFor(blank);
    expect(planning.kind === "not-ready" && planning.missing[0]?.problems).toHaveLength(1);
  });

  test("rows that wait are counted, and the others are planned", () => {
    const leftovers = spoilt ? [spoilt as Project["leftovers"][number], ...sample.leftovers.slice(1)] : [];
    expect(ready({ ...sample, leftovers }).waiting).toBe(1);
    const planning = planningFor({ ...sample, leftovers: leftovers.slice(0, 1) });
    expect(planning).toMatchObject({ kind: "not-ready", rows: { all: 1, waiting: 1 } });
  });
});

const plainly = { amount: "usual", stays: null } as const;

describe("what she sees", () => {
  test("at first what suits her leftovers best, two more beside it, all others one tap away", () => {
    const planning = ready(sample);
    const shown = shownFor(sample, planning);
    expect(shown.chosen).toEqual({ ...plainly, style: planning.styles[0], seed: 1 });
    expect([shown.best.length, shown.others.length]).toEqual([3, styles.length - 3]);
    expect([...shown.best, ...shown.others].map(({ style }) => style)).toEqual(planning.styles);
  });

  test("her own choice, with its seed, wherever it stands in the row", () => {
    const planning = ready(sample);
    const style = planning.styles[5] ?? "cross";
    const shown = shownFor({ ...sample, wishes: { ...sample.wishes, style, seed: 4 } }, planning);
    expect(shown.chosen).toEqual({ ...plainly, style, seed: 4 });
    expect(shown.others).toContain(shown.chosen);
  });

  test("the plan she keeps, as long as it is for this very job", () => {
    const planning = ready(sample);
    const plan = makePlan(planning.job, { style: "cross", seed: 2, effort: 60 });
    const kept = {
      text: textOf(plan),
      job: planning.hash,
      style: plan.style,
      seed: 2,
      effort: 60,
      keptAt: 0,
    };
    const shown = shownFor({ ...sample, plan: kept }, planning);
    expect(shown.chosen).toEqual({ ...plainly, style: "cross", seed: 2 });
    expect(shown.kept && isTheKept(shown.kept, kept)).toBe(true);
    expect(isTheKept(plan, kept)).toBe(true);
    expect(isTheKept(makePlan(planning.job, { style: "cross", seed: 3, effort: 60 }), kept)).toBe(false);
    expect(shown.keptIsOld).toBe(false);

    const changed = { ...sample, plan: kept, leftovers: sample.leftovers.slice(1) };
    const old = shownFor(changed, ready(changed));
    expect([old.kept, old.keptIsOld, old.chosen.seed]).toEqual([null, true, 1]);
  });
});
