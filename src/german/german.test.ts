import { describe, expect, test } from "vitest";
import { allTexts, plan } from "../../test/generators/everyScreenText.ts";

import { centimetres, inches, parseLength } from "../engine/length/index.ts";
import { readLine } from "../files/index.ts";
import { planTexts, putTables, sewTexts, sizeTexts } from "../words/index.ts";
import { german } from "./index.ts";

putTables("de", german);

const units = ["in", "cm"] as const;
const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

describe.each(units)("German in %s", (unit) => {
  const texts = allTexts("de", unit);

  test("says everything that English says", () => {
    expect(texts.length).toBe(allTexts("en-GB", unit).length);
  });

  test("is calm and speaks no program's words", () => {
    const wrong =
      /!|\b(ungültig|undefined|NaN|Infinity|Session|Fehler|String|Array|bitte warten|fehlgeschlagen|Sie haben|Ihre[nrs]?)\b|\[object/;
    expect(texts.filter((text) => wrong.test(text))).toEqual([]);
  });

  test("leaves nothing empty, doubled or open", () => {
    expect(texts.filter((text) => /^\s|\s$| {2}|\.\.|,,|\( |\$\{/.test(text) || text === "")).toEqual([]);
  });

  test("has no English left in it", () => {
    // Headings and words of the table, and what she typed herself, are as they are.
    const english =
      /\b(the|and|with|from|this|these|your|you|is|are|not|piece|pieces|strips?|seams?|cloth|cut|sewn|rows?|about|each|plain|inches)\b/i;
    const own = /„[^“]*“|\([^)]*\)/g;
    expect(
      texts.filter(
        (text) => english.test(text.replaceAll(own, "")) && !/teal dots|^Eingetragen\. 4 strips/.test(text),
      ),
    ).toEqual([]);
  });

  test("writes decimals with a comma, and inches never as decimals", () => {
    const written = texts.map((text) => text.replaceAll(/„[^“]*“/g, ""));
    expect(written.filter((text) => /\d\.\d{1,2}(?!\d)\s?(cm|mm|m|Inch|g)\b/.test(text))).toEqual([]);
    expect(written.filter((text) => /\d,\d+\s?Inch/.test(text) && !/wie|oder/.test(text))).toEqual([]);
  });
});

test("a length in German", () => {
  const { side } = sizeTexts("de", "cm");
  expect(plain(side(centimetres(31.8)))).toBe("31,8 cm");
  expect(plain(sizeTexts("de", "in").side(inches(25, 2)))).toBe("12½ Inch");
  expect(plain(planTexts("de", "cm").hours({ ...plan.figures, minutes: [95, 212] }))).toBe("1½–3½ Stunden");
});

test("plurals by the number", () => {
  const { progress } = sewTexts("de", "cm");
  expect([progress(0, 1), progress(0, 24), progress(4, 24)]).toEqual([
    "1 Schritt zu nähen.",
    "24 Schritte zu nähen.",
    "4 von 24 Schritten fertig.",
  ]);
});

test("every numbered thing of a plan is named by its number in German as in English", () => {
  const numbers = (text: string) => [...text.matchAll(/\d+/g)].map(String).toSorted();
  const names = (locale: "de" | "en-GB") =>
    plan.steps.map((step) => numbers(sewTexts(locale, "in").makes(step, plan)));
  expect(names("de")).toEqual(names("en-GB"));
});

test("what is written in German is read", () => {
  const read = (line: string, unit: "in" | "cm") => readLine(line, unit).piece;
  expect(read("4 Streifen 6,5 x 80 petrol", "cm")).toMatchObject({
    count: 4,
    kind: "strip",
    width: centimetres(6.5),
    height: centimetres(80),
    fabric: "petrol",
  });
  expect(read("12 Blöcke 16,5", "cm")).toMatchObject({ count: 12, kind: "block", width: centimetres(16.5) });
  expect(read("zwei Quadrate 2½ dunkelgrün", "in")).toMatchObject({
    count: 2,
    kind: "square",
    width: inches(5, 2),
    fabric: "dunkelgrün",
  });
  expect(read("Schnipsel 170 g", "cm")).toMatchObject({ kind: "crumbs", weight: 170 });
  for (const unit of units)
    for (const example of ["6,5 cm", "2½ Inch", "2 1/2 Zoll"])
      expect(parseLength(example, unit).ok).toBe(true);
});
