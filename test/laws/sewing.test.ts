import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { backFor, extraFor, type Style } from "../../src/engine/back/index.ts";
import { checkDraft, type Method } from "../../src/engine/cloth/index.ts";
import { drawPlan } from "../../src/engine/drawing/index.ts";
import { checkLayout, type LayoutNode, type LeftLong, withoutGivers } from "../../src/engine/layout/index.ts";
import { inches, type Length } from "../../src/engine/length/index.ts";
import { makePlan, type Plan } from "../../src/engine/plan/index.ts";
import { flattened, reassemble, type Step, seamsIn } from "../../src/engine/sewing/index.ts";
import { readLeftovers } from "../../src/files/index.ts";
import { joinsWithoutGiver } from "../plans/rules.ts";
import { seamsWithoutGiver } from "./givers.ts";

// Two heaps with lengths and two without, in the styles that are sewn most differently.
const cases: readonly (readonly [string, Style])[] = [
  ["real-r.15-s1", "strippy"],
  ["real-r.3-s1", "insert-across"],
  ["real-r.3-s2", "cross"],
  ["real-r.5-s2", "all-over"],
];

describe.each(cases)("the plan of %s as %s", (heap, style) => {
  const plan = planOf(heap, style);

  it("is what its steps sew up to, read from their labels and sizes alone", () => {
    const layout: LayoutNode = JSON.parse(JSON.stringify(plan.layout));
    expect(reassemble(JSON.parse(JSON.stringify(plan.steps)))).toEqual(flattened(layout));
    expect(flattened(layout)).toEqual(layout);
  });

  it("has something left long beside each long seam, as the layout says, trimmed after, and is the same back without it", () => {
    // Where her one length of a fabric is used up to the last inch, a seam has none; the rules know which.
    expect(seamsWithoutGiver(plan.steps)).toHaveLength(joinsWithoutGiver(plan).length);
    expect(plan.steps.some(({ from }) => from.some(({ leftLong }) => leftLong !== undefined))).toBe(true);
    const cutToSize = leftAs(plan.steps, null);
    expect(reassemble(cutToSize)).toEqual(flattened(withoutGivers(plan.layout)));
    expect(seamsWithoutGiver(cutToSize).length).toBeGreaterThan(joinsWithoutGiver(plan).length);
  });

  it("can't be sewn from parts that are left too short to trim", () => {
    const tooShort = leftAs(plan.steps, inches(7, 8));
    expect(seamsWithoutGiver(tooShort).length).toBeGreaterThan(joinsWithoutGiver(plan).length);
    expect(() => reassemble(tooShort)).toThrow("at least an inch");
    const layout: LayoutNode = JSON.parse(
      JSON.stringify(plan.layout, (key, value) => (key === "leftLong" ? left(value, inches(7, 8)) : value)),
    );
    expect(checkLayout({ ...plan, layout }).map(({ kind }) => kind)).toContain("left-too-short");
  });

  it("can't be sewn if what is left long is never trimmed", () => {
    const steps = plan.steps.map(({ squareUp: _, ...step }) => step);
    expect(() => reassemble(steps)).toThrow();
  });

  it("has as many seams in its steps as its figures say", () => {
    expect(plan.steps.reduce((total, step) => total + seamsIn(step), 0)).toBe(plan.figures.joins);
  });

  it("is drawn from raw edge to raw edge", () => {
    const { shapes, size } = drawPlan(plan);
    const covered = shapes.reduce((total, { width, height }) => total + width * height, 0);
    expect(covered).toBe(size.width * size.height);
  });
});

/** The steps with all that is left long left so much; null: nothing is. */
function leftAs(steps: readonly Step[], by: Length | null): Step[] {
  return JSON.parse(
    JSON.stringify(steps, (key, value) =>
      key === "leftLong" ? (by === null ? undefined : left(value, by)) : value,
    ),
  );
}

function left(leftLong: LeftLong, by: Length): LeftLong {
  return Object.fromEntries(Object.keys(leftLong).map((side) => [side, by]));
}

type Entry = { name: string; top: [number, number]; method: Method };

function planOf(heap: string, style: Style): Plan {
  const index: Entry[] = JSON.parse(readFileSync(dataFile("index.json"), "utf8"));
  const entry = index.find(({ name }) => name === heap);
  if (!entry) throw new Error(`${heap} is not in the index`);
  const { pieces } = readLeftovers(readFileSync(dataFile(`${heap}.csv`)), "in");
  const extra = extraFor(entry.method, "in");
  const top = { width: inches(entry.top[0]), height: inches(entry.top[1]), method: entry.method, extra };
  const plain = { name: "Unbleached cotton" };
  const checked = checkDraft({ unit: "in", top, back: backFor(top, extra), time: "any", plain, pieces });
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return makePlan(checked.value.job, { style, seed: 1, effort: 300 });
}

function dataFile(name: string): URL {
  return new URL(`../data/heaps/${name}`, import.meta.url);
}
