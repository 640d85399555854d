import { describe, expect, test } from "vitest";
import { handMadePlan } from "../../../../test/generators/handMadePlan.ts";
import { inches } from "../../../engine/length/index.ts";
import { checkProject, newProject, type Project, writePlan } from "../../../files/index.ts";
import { sampleProject } from "./sample.ts";
import { nextPage, pictureOf, stageOf, tallnessOf } from "./stage.ts";

const blank = newProject({ title: "A back", createdAt: 0 });
const sample: Project = { ...blank, ...sampleProject("A sample") };
const plan = handMadePlan();
const ids = plan.steps.map(({ id }) => id);
const kept = { text: writePlan(plan), job: "", style: plan.style, seed: 1, effort: 1, keptAt: 0 };
const planned: Project = { ...sample, plan: kept };

describe("how far a back has come, and where she goes on", () => {
  test.each([
    ["nothing yet", blank, "empty", "size"],
    ["its size", { ...blank, size: sample.size }, "sized", "leftovers"],
    ["leftovers alone", { ...sample, size: blank.size }, "listed", "size"],
    ["size and leftovers", sample, "listed", "plan"],
    ["a plan", planned, "planned", "plan"],
    ["a plan that can't be read any more", { ...sample, plan: { ...kept, text: "" } }, "listed", "plan"],
    ["some steps", { ...planned, ticked: new Set(ids.slice(0, 2)) }, "sewing", "sew"],
    ["all steps", { ...planned, ticked: new Set(ids) }, "sewn", "sew"],
    ["ticks of another plan", { ...planned, ticked: new Set(["999"]) }, "planned", "plan"],
  ] as const)("%s", (_, project, kind, page) => {
    expect(stageOf(project).kind).toBe(kind);
    expect(nextPage(stageOf(project))).toBe(page);
  });
});

describe("its picture", () => {
  test("nothing, an empty outline, the plan", () => {
    expect(pictureOf(blank).drawing).toBeNull();
    expect(pictureOf(sample).drawing).toMatchObject({
      shapes: [],
      size: { width: inches(68), height: inches(88) },
    });
    expect(pictureOf(planned).drawing?.shapes.length).toBeGreaterThan(3);
  });

  test("all hang to one scale", () => {
    expect(tallnessOf(pictureOf(sample).drawing)).toBe(88);
    expect(tallnessOf(null)).toBe(0);
  });
});

test("the sample can be planned as it stands, and is marked as one", () => {
  const { job, stops, waiting } = checkProject(sample);
  expect([job?.top?.width, job?.pieces.length, stops, waiting]).toEqual([inches(60), 29, [], []]);
  expect(sample.sample).toBe(true);
  expect(new Set(sample.leftovers.map(({ id }) => id)).size).toBe(sample.leftovers.length);
});
