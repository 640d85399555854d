import fc from "fast-check";
import { describe, expect, test } from "vitest";
import sharma from "../../../test/data/ciede2000-sharma.json" with { type: "json" };
import { colourDifference, readColour, valueWord } from "./colour.ts";
import type { Lab } from "./types.ts";

const labOf = (text: string): Lab => readColour(text)?.lab ?? { l: Number.NaN, a: 0, b: 0 };
const chroma = ({ a, b }: Lab) => Math.hypot(a, b);
const hue = ({ a, b }: Lab) => ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;

describe("CSS colour to CIELAB under D65", () => {
  // Sources: red, test files of three public colour packages; the others, CIELCh table of a public Swift colour
  // library's tests, 18 May 2019; greys derived from IEC 61966-2-1:1999 and CIE 15. The standard's own 4-digit matrix
  // and the 7-digit one differ by up to 0.02, hence 0.03.
  test.each([
    ["#ff0000", 53.2408, 104.5518, 39.999],
    ["rgb(0, 255, 0)", 87.7347, 119.7759, 136.016],
    ["#00f", 32.297, 133.8076, 306.2849],
    ["yellow", 97.1393, 96.9054, 102.8512],
    ["Cyan", 91.1132, 50.1209, 196.3762],
    ["hsl(300 100% 50%)", 60.3242, 115.5407, 328.235],
  ])("%s", (text, l, c, h) => {
    const lab = labOf(text);
    expect(Math.abs(lab.l - l)).toBeLessThan(0.03);
    expect(Math.abs(chroma(lab) - c)).toBeLessThan(0.03);
    expect(Math.abs(hue(lab) - h)).toBeLessThan(0.03);
  });

  test.each([
    ["#ffffff", 100],
    ["black", 0],
    ["#808080", 53.585],
    ["rgb(119 119 119)", 50.034],
  ])("%s has no hue", (text, l) => {
    const lab = labOf(text);
    expect(Math.abs(lab.l - l)).toBeLessThan(0.001);
    expect(chroma(lab)).toBeLessThan(0.001);
  });

  test("value follows the Munsell scale: L* is about ten times it", () => {
    // ASTM D1535: value 5 reflects 19.272 %, which is sRGB grey 121.6 and L* 51.00.
    expect(labOf("rgb(121.6 121.6 121.6)").l).toBeCloseTo(51, 0);
  });

  test.each([
    ["3e4257", "#3e4257"],
    [" #3E4257 ", "#3e4257"],
    ["teal", "#008080"],
    ["hwb(0 0% 0%)", "#ff0000"],
    ["lab(50 20 30)", "#a16945"],
    ["oklch(0.7 0.1 120)", "#96a85e"],
  ])("%s is %s", (text, hex) => expect(readColour(text)?.hex).toBe(hex));

  test.each([
    "",
    "nothing",
    "100",
    "2024",
    "abc",
    "#12345",
    "rgb(1 2)",
    "transparent",
    "#ff000080",
    "none",
    "url(x)",
  ])("%j is no colour of cloth", (text) => expect(readColour(text)).toBeNull());

  test("no text makes it fail", () => {
    const cssParts = fc.constantFrom(
      ..."rgb( hsl( lab( color( srgb 0 50% / 0A - . , ) # none e9".split(" "),
      " ",
    );
    const anyText = fc.oneof(
      fc.string(),
      fc.array(cssParts).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(anyText, (text) => {
        const read = readColour(text);
        expect(read === null || /^#[0-9a-f]{6}$/.test(read.hex)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

// Sharma, Wu, Dalal, Color Research & Application 30(1), 21-30, 2005, Table 1.
describe("CIEDE2000", () => {
  const lab = ([l = 0, a = 0, b = 0]: readonly number[]): Lab => ({ l, a, b });

  test("the table has its 34 pairs", () => expect(sharma.pairs).toHaveLength(34));

  test.each(sharma.pairs)("published pair $pair, both ways", ({ lab1, lab2, dE00 }) => {
    expect(Math.abs(colourDifference(lab(lab1), lab(lab2)) - dE00)).toBeLessThan(1e-4);
    expect(Math.abs(colourDifference(lab(lab2), lab(lab1)) - dE00)).toBeLessThan(1e-4);
  });
});

describe("value in words", () => {
  // Limits: common practice.
  test.each([
    [50, 54.9, "same"],
    [50, 45, "low"],
    [20, 34.9, "low"],
    [20, 35, "medium"],
    [60, 30, "medium"],
    [60, 29.9, "strong"],
  ])("L* %d beside %d: %s", (one, other, word) => {
    expect(valueWord({ l: one, a: 40, b: 0 }, { l: other, a: -40, b: 0 })).toBe(word);
  });
});
