import { describe, expect, test } from "vitest";
import { allTexts, cloth, plan } from "../../test/generators/everyScreenText.ts";
import { inches } from "../engine/length/index.ts";
import { cliLocales, planTexts, sewTexts, sizeTexts } from "./index.ts";
import { bracketed, isBracketed } from "./pseudo.ts";

test("nothing on the pages bypasses the catalogue", () => {
  const pseudo = allTexts("en-XA");
  expect(pseudo.length).toBeGreaterThan(300);
  expect(pseudo.filter((text) => !isBracketed(text) || /[⟦⟧]/.test(text.slice(1, -1)))).toEqual([]);
  expect(pseudo).toEqual(allTexts("en-US").map(bracketed));
});

describe.each(cliLocales.filter((locale) => locale !== "en-XA"))("%s", (locale) => {
  const texts = [...allTexts(locale, "in"), ...allTexts(locale, "cm")];

  test("is calm and speaks no program's words", () => {
    const wrong =
      /!|\b(invalid|illegal|null|undefined|NaN|Infinity|session|error|exception|string|integer|boolean|please|oops|sorry|failed|loading)\b|\[object/i;
    expect(texts.filter((text) => wrong.test(text))).toEqual([]);
  });

  test("leaves nothing empty, doubled or open", () => {
    expect(texts.filter((text) => /^\s|\s$| {2}|\.\.|,,|\( |\$\{/.test(text) || text === "")).toEqual([]);
  });

  test("never writes inches as decimals", () => {
    expect(allTexts(locale, "in").filter((text) => /\d\.\d+\s?in\b/.test(text))).toEqual([]);
  });
});

test("each country's own words", () => {
  const american = allTexts("en-US").join("\n");
  const british = allTexts("en-GB").join("\n");
  expect(american).not.toMatch(/colour|centre\b|centimetre|selvedge|\bcot\b/i);
  expect(british).not.toMatch(/\bcolor|center|selvage|\bcrib\b/i);
  expect(british).toContain("On a domestic machine");
  expect(american).toContain("On a home machine");
});

describe("read aloud", () => {
  const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

  test("one cloth: both ways of running the seams", () => {
    // 68 × 88 from cloth of 42 in, seams of ½ in: two lengths of 88 in make 83 wide; three of 68 make 124 tall.
    const lines = sizeTexts("en-US", "in").backings({
      ...cloth,
      wide: { width: inches(108), buy: inches(72) },
    });
    expect(lines.map(plain)).toEqual([
      "Cloth 42 in wide, seams running down: 2 lengths of 88 in, 5 yd in all.",
      "Cloth 42 in wide, seams running across: 3 lengths of 68 in, 5¾ yd in all.",
      "Extra-wide cloth, 108 in, no seam: 2 yd.",
    ]);
  });

  test("plain cloth without a name is plain cloth, once", () => {
    const fabrics = plan.fabrics.map((fabric) => ({ ...fabric, name: "" }));
    const row = {
      use: "plain",
      fabric: fabrics[0]?.id ?? "",
      width: inches(42),
      length: inches(90),
    } as const;
    const texts = planTexts("en-US", "in");
    expect(plain(texts.buyRow(row, { ...plan, fabrics }))).toMatch(/^2½ yd of plain cloth, 42 in wide/);
    const said = plan.steps.flatMap(({ from }) =>
      from.map((part) => sewTexts("en-US", "in").partWhat(part, { ...plan, fabrics })),
    );
    expect(said.filter((text) => /plain cloth of plain cloth|of ,| of$/.test(text))).toEqual([]);
    expect(said.map(plain)).toContain("Plain cloth, 1 in wider and 1 in taller than needed");
  });

  test("a span of time, short", () => {
    const hours = (minutes: readonly [number, number]) =>
      plain(planTexts("en-US", "in").hours({ ...plan.figures, minutes }));
    expect([hours([95, 212]), hours([28, 63]), hours([600, 610])]).toEqual([
      "1½–3½ hours",
      "30–65 minutes",
      "10 hours",
    ]);
  });
});
