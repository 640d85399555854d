import { describe, expect, test } from "vitest";
import { type DisplayUnit, inches } from "../../../engine/length/index.ts";
import { type Measured, measuredLength, newProject, type Project } from "../../../files/index.ts";
import { sizeFacts } from "./sizeFacts.ts";

const blank = newProject({ title: "A back", createdAt: 0 });
const measured = (text: string, unit: DisplayUnit = "in") => measuredLength(text, unit);
type Three = readonly [Measured<never> | null, Measured<never> | null, Measured<never> | null];
const three = (...texts: string[]) => [0, 1, 2].map((at) => measured(texts[at] ?? "")) as unknown as Three;

function projectOf(size: Partial<Project["size"]>, others: Partial<Project> = {}): Project {
  return { ...blank, ...others, size: { ...blank.size, ...size } };
}

const throwSize = { topWidths: three("60"), topHeights: three("80") };

describe("what the page about the size works out", () => {
  test("a 60 × 80 in top on a frame: 68 × 88 in, 4 in cut away on each side (common practice)", () => {
    const { back, edge, drawing, differ } = sizeFacts(projectOf(throwSize));
    expect(back).toEqual({ width: inches(68), height: inches(88) });
    expect(edge).toEqual({ width: inches(4), height: inches(4) });
    expect(drawing?.cutOff?.outline).toMatchObject({ x: inches(4), width: inches(60), height: inches(80) });
    expect(differ).toEqual({ width: null, height: null });
  });

  test("the largest of three counts, and it is said by how much they differ", () => {
    const { top, differ } = sizeFacts(
      projectOf({ topWidths: three("59 1/2", "60 1/4", "60"), topHeights: three("80", "", "80") }),
    );
    expect(top?.width).toBe(inches(241, 4));
    expect(differ).toEqual({ width: inches(3, 4), height: null });
  });

  test("while nothing, or one side alone, is measured nothing is drawn and nothing is wrong", () => {
    for (const project of [
      blank,
      projectOf({ topWidths: three("60") }),
      projectOf({ topWidths: three("60 1/") }),
    ]) {
      const { back, drawing, oneCloth, backProblems } = sizeFacts(project);
      expect([back, drawing, oneCloth, backProblems]).toEqual([null, null, null, []]);
    }
  });

  test("without a top nothing is known to be cut away", () => {
    const facts = sizeFacts(
      projectOf({ from: "back", backWidth: measured("68"), backHeight: measured("88") }),
    );
    expect([facts.top, facts.edge, facts.drawing?.cutOff]).toEqual([null, null, null]);
  });

  test("a back smaller than its top is said, and drawn without it", () => {
    const facts = sizeFacts(projectOf({ ...throwSize, backWidth: measured("50") }));
    expect(facts.backProblems.map(({ kind }) => kind)).toContain("top-larger-than-back");
    expect([facts.edge, facts.drawing?.cutOff]).toEqual([null, null]);
  });

  test("an extra no one asks for is named beside the extra", () => {
    const { extraProblems } = sizeFacts(projectOf({ ...throwSize, extra: measured("40") }));
    expect(extraProblems.map(({ kind }) => kind)).toEqual(["extra-out-of-range"]);
  });

  // 68 × 88 in from 42 in cloth with ½ in seams: common practice, as in the yardage tables.
  test("all of one cloth, either way", () => {
    const { oneCloth } = sizeFacts(projectOf(throwSize));
    expect(oneCloth?.vertical).toMatchObject({ widths: 2, each: inches(88) });
    expect(oneCloth?.horizontal).toMatchObject({ widths: 3, each: inches(68) });
    expect(oneCloth?.wide?.buy).toBe(inches(72));
  });

  test("cloth narrower than its two seams gives no yardage", () => {
    const settings = { ...blank.settings, clothWidth: measured("1") };
    expect(sizeFacts(projectOf(throwSize, { settings })).oneCloth).toBeNull();
  });
});
