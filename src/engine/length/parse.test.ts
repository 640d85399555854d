import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, centimetres, inches, length, millimetres } from "./arithmetic.ts";
import { parseArea, parseLength, parseSizePair, parseWeight } from "./parse.ts";
import type { LengthProblem } from "./problems.ts";
import type { Result } from "./result.ts";

function readAs<T>(read: Result<T, unknown>): T | string {
  return read.ok ? read.value : JSON.stringify(read.error);
}

function problemOf(read: Result<unknown, LengthProblem>): LengthProblem | string {
  return read.ok ? `read as ${read.value}` : read.error;
}

describe("a length as people write it", () => {
  test.each([
    ["2 1/2", inches(5, 2)],
    ["2½", inches(5, 2)],
    ["2 ½", inches(5, 2)],
    // The hyphen is how pattern sheets print it. A proper fraction behind a whole number is no range and no sum.
    ["2-1/2", inches(5, 2)],
    ["2‑1/2", inches(5, 2)],
    ["2-½", inches(5, 2)],
    ["1/2", inches(1, 2)],
    ["½", inches(1, 2)],
    ["0 1/2", inches(1, 2)],
    ["2⁄4", inches(1, 2)],
    ["2 3⁄16", inches(35, 16)],
    ["2³⁄₁₆", inches(35, 16)],
    ["12 63/64", inches(831, 64)],
    ["13/16", inches(13, 16)],
    ["5/2", inches(5, 2)],
    ["2.5", inches(5, 2)],
    ["2,5", inches(5, 2)],
    [".5", inches(1, 2)],
    ["2.125", inches(17, 8)],
    ["0,125", inches(1, 8)],
    ['2.5"', inches(5, 2)],
    ["2.5″", inches(5, 2)],
    ["2½”", inches(5, 2)],
    ["2 1/2''", inches(5, 2)],
    ["2 1/2 in", inches(5, 2)],
    ["2 1/2 in.", inches(5, 2)],
    ["2 1/2in", inches(5, 2)],
    ["2.5 inches", inches(5, 2)],
    ["2,5 Zoll", inches(5, 2)],
    ["2\u00a01/2\u202fIN", inches(5, 2)],
    ["\ufeff2\u2009½", inches(5, 2)],
    ["63 mm", millimetres(63)],
    ["6,3 cm", centimetres(6.3)],
    ["6.35cm", inches(5, 2)],
    ["0.5 m", centimetres(50)],
    ["1,500 m", centimetres(150)],
    ["1 1/8 yd", inches(81, 2)],
    ["1⅛ yards", inches(81, 2)],
    ["2 ft", inches(24)],
    ["2 ft 6 in", inches(30)],
    ["2' 6\"", inches(30)],
    ["2′6½″", inches(61, 2)],
    ["1 yd 4 1/2 in", inches(81, 2)],
    ["2 m 50 cm", centimetres(250)],
    // No binary fraction, exact all the same: 0.1 in is 812.8 units, so it goes down to 812.
    ["0.1", length(812)],
    ["1/3", length(2709)],
    ["2.333", length(18_962)],
  ])("%s", (text, expected) => expect(readAs(parseLength(text, "in"))).toBe(expected));

  test.each([
    ["6.3", centimetres(6.3)],
    ["6,35", centimetres(6.35)],
    ["2½", centimetres(2.5)],
    ['2½"', inches(5, 2)],
    ["63 mm", millimetres(63)],
  ])("%s, where she thinks in centimetres", (text, expected) =>
    expect(readAs(parseLength(text, "cm"))).toBe(expected),
  );

  test("a table with decimal commas has no thousands in it", () => {
    expect(readAs(parseLength("2,125", "in", { decimal: "," }))).toBe(inches(17, 8));
    expect(problemOf(parseLength("2.125", "in", { decimal: "," }))).toMatchObject({ kind: "ambiguous" });
    expect(readAs(parseLength("2.5", "in", { decimal: "," }))).toBe(inches(5, 2));
  });
});

describe("what is no length is refused with its reason", () => {
  test.each<[string, Partial<LengthProblem>]>([
    ["", { kind: "empty" }],
    [" \u00a0", { kind: "empty" }],
    ["teal", { kind: "not-a-number" }],
    ["2 3", { kind: "not-a-number" }],
    ["2 1/2 1/2", { kind: "not-a-number" }],
    ["2.5 1/2", { kind: "not-a-number" }],
    ["2 9/8", { kind: "not-a-number" }],
    ["1/0", { kind: "not-a-number" }],
    ["½5", { kind: "not-a-number" }],
    ["½½", { kind: "not-a-number" }],
    ["2 - 1/2", { kind: "not-a-number" }],
    ["2-3", { kind: "not-a-number" }],
    ["2 ± 1", { kind: "not-a-number" }],
    ["1e3", { kind: "not-a-number" }],
    ["0x10", { kind: "not-a-number" }],
    ["2\u200b5", { kind: "not-a-number" }],
    ["2²", { kind: "not-a-number" }],
    ["2,5,5", { kind: "not-a-number" }],
    ["1'234", { kind: "not-a-number" }],
    ["2' 6", { kind: "not-a-number" }],
    ["2 ft 14 in", { kind: "not-a-number" }],
    ["2 in 1 ft", { kind: "not-a-number" }],
    ["1.5 ft 2 in", { kind: "not-a-number" }],
    ["2 ft 6 cm", { kind: "not-a-number" }],
    ["NaN", { kind: "not-a-number" }],
    ["∞", { kind: "not-a-number" }],
    ["2026-30-40", { kind: "not-a-number" }],
    ["=1+1", { kind: "not-a-number" }],
    ["2".repeat(2000), { kind: "not-a-number" }],
    ["2 hands", { kind: "unknown-unit", unit: "hands" }],
    ["2 sq in", { kind: "unknown-unit", unit: "sq in" }],
    ["٢", { kind: "other-digits" }],
    ["２", { kind: "other-digits" }],
    ["2 १/२", { kind: "other-digits" }],
    ["0", { kind: "zero" }],
    ["0/8", { kind: "zero" }],
    ["0,0 cm", { kind: "zero" }],
    ["0.00001", { kind: "zero" }],
    ["-2", { kind: "negative" }],
    ["−2½", { kind: "negative" }],
    ["-½", { kind: "negative" }],
    ["10001", { kind: "too-large" }],
    ["278 yd", { kind: "too-large" }],
    ["1000000000", { kind: "too-large" }],
    ["1,234.5", { kind: "ambiguous", readings: ["1234.5", "1.2345"] }],
    ["1.234,5", { kind: "ambiguous", readings: ["1234.5", "1.2345"] }],
    ["1,500", { kind: "ambiguous", readings: ["1.5", "1500"] }],
    ["1,500 mm", { kind: "ambiguous", readings: ["1.5", "1500"] }],
    ["1.500 mm", { kind: "ambiguous", readings: ["1.5", "1500"] }],
    // A mixed number that lost its space on the way looks like this.
    ["21/2", { kind: "ambiguous", readings: ["2 1/2", "10 1/2"] }],
    ["125/8 in", { kind: "ambiguous", readings: ["12 5/8", "15 5/8"] }],
  ])("%s", (text, problem) => expect(problemOf(parseLength(text, "in"))).toMatchObject(problem));
});

describe("a fraction that a spreadsheet made a date", () => {
  test.each([
    // Month first: 1/2 becomes the second of January.
    ["2-Jan", "1/2"],
    ["Jan-02", "1/2"],
    ["Jan 2", "1/2"],
    ["4-Mar", "3/4"],
    ["8-Jul-26", "7/8"],
    ["16-Mar", "3/16"],
    // Day first: it becomes the first of February.
    ["1-Feb", "1/2"],
    ["1. Feb", "1/2"],
    ["01. Feb", "1/2"],
    ["3. Apr. 2026", "3/4"],
    ["02.Jan", "1/2"],
    ["02. Jan", "1/2"],
    ["1/août", "1/8"],
    // What can be no day became a year.
    ["Jan-64", "1/64"],
    ["May-32", "5/32"],
    ["2016-03-01", "3/16"],
    ["2026-01-02", "1/2"],
    ["2026-01-02 00:00:00", "1/2"],
    ["2026-01-02T00:00:00.000Z", "1/2"],
    ["1/2/2026", "1/2"],
    ["2/1/26", "1/2"],
    ["01.02.2026", "1/2"],
    ["1.2.", "1/2"],
    // With a decimal comma in use, a full stop makes a date.
    ["02. Mai", "2.5"],
    ["2. Mrz", "2.3"],
    ["2-März", "2/3"],
    ["2–Jan", "1/2"],
    ["2-Feb", null],
  ])("%s may have been %s", (text, fraction) => {
    for (const unit of ["in", "cm"] as const) {
      expect(problemOf(parseLength(text, unit))).toMatchObject({ kind: "date", text, fraction });
    }
  });

  test("every ruler fraction that became a date, in either order, is refused and named", () => {
    const names = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    const spelled = (day: number, month: number) => `${day}-${names[month - 1]}`;
    for (const under of [2, 4, 8, 16]) {
      for (let over = 1; over < under && over <= 12; over += 2) {
        const named = { kind: "date", fraction: `${over}/${under}` };
        expect(problemOf(parseLength(spelled(under, over), "in"))).toMatchObject(named);
        if (under <= 12) expect(problemOf(parseLength(spelled(over, under), "in"))).toMatchObject(named);
      }
    }
  });
});

describe("two lengths", () => {
  const size = (width: number, height: number) => ({ width: inches(width), height: inches(height) });

  test.each([
    ["60x80", size(60, 80)],
    ["60 x 80", size(60, 80)],
    ["60X80", size(60, 80)],
    ["60×80", size(60, 80)],
    ["60 by 80 in", size(60, 80)],
    ['60"x80"', size(60, 80)],
    ["5 ft x 80 in", size(60, 80)],
    ["67 1/2 x 87 1/2", { width: inches(135, 2), height: inches(175, 2) }],
    ["60 × 80 cm", { width: centimetres(60), height: centimetres(80) }],
    ["60x80cm", { width: centimetres(60), height: centimetres(80) }],
    ["1,5 m × 2", { width: centimetres(150), height: centimetres(200) }],
  ])("%s", (text, expected) => expect(readAs(parseSizePair(text, "in"))).toEqual(expected));

  test.each([
    ["60", { kind: "not-two-lengths" }],
    ["", { kind: "not-two-lengths" }],
    ["60x80x2", { kind: "not-two-lengths" }],
    // Nobody can say whether 8 is feet or inches.
    ["5 ft 2 in x 8", { kind: "not-two-lengths" }],
    ["60x", { kind: "side", side: "height", problem: { kind: "empty" } }],
    ["0x80", { kind: "side", side: "width", problem: { kind: "zero" } }],
    ["-60x80", { kind: "side", side: "width", problem: { kind: "negative" } }],
  ])("%s is refused", (text, problem) => {
    const read = parseSizePair(text, "in");
    expect(read.ok ? read.value : read.error).toMatchObject(problem);
  });
});

describe("areas and weights of crumbs", () => {
  const squareInches = (count: number) => areaOf(count * 8128 * 8128);

  test.each([
    ["120 sq in", squareInches(120)],
    ["120 sq. in.", squareInches(120)],
    ["120 square inches", squareInches(120)],
    ["120 in²", squareInches(120)],
    ["120in2", squareInches(120)],
    ["120", squareInches(120)],
    ["1/4 sq yd", squareInches(324)],
    ["3 cm²", areaOf(3 * 3200 * 3200)],
    ["3 qcm", areaOf(3 * 3200 * 3200)],
  ])("%s", (text, expected) => expect(readAs(parseArea(text, "in"))).toBe(expected));

  test("a bare area takes the unit's square", () => {
    expect(readAs(parseArea("3", "cm"))).toBe(3 * 3200 * 3200);
  });

  test.each([
    ["120 in", "unknown-unit"],
    ["1,500 sq in", "ambiguous"],
    ["0", "zero"],
    ["2-Jan", "date"],
  ])("area %s is refused", (text, kind) => expect(problemOf(parseArea(text, "in"))).toMatchObject({ kind }));

  // The ounce and the pound: NIST Handbook 44, Appendix C.
  test.each([
    ["3 oz", 85.048569375],
    ["85 g", 85],
    ["0.2 kg", 200],
    ["0,2 kg", 200],
    ["1 lb 4 oz", 566.9904625],
  ])("%s", (text, grams) => expect(readAs(parseWeight(text))).toBeCloseTo(grams as number, 9));

  test.each([
    ["85", "no-unit"],
    ["3 stone", "unknown-unit"],
    ["200 kg", "too-large"],
    ["0 g", "zero"],
    ["1.500 g", "ambiguous"],
  ])("weight %s is refused", (text, kind) => expect(problemOf(parseWeight(text))).toMatchObject({ kind }));
});

describe("laws", () => {
  const tokens = fc.constantFrom(
    ..."0 1 2 12 64 1/2 / ½ ⁄ - – . , ' \" x × in ft mm cm m sq ² Jan Mrz 2026 oz \u00a0 ३".split(" "),
    " ",
  );
  const anyText = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(tokens).map((parts) => parts.join("")),
  );

  test("no text makes the readers fail, and a length that was read is one", () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom("in" as const, "cm" as const), (text, unit) => {
        const read = parseLength(text, unit);
        expect(!read.ok || (Number.isSafeInteger(read.value) && read.value > 0)).toBe(true);
        for (const other of [parseSizePair(text, unit), parseArea(text, unit), parseWeight(text)]) {
          expect(typeof other.ok).toBe("boolean");
        }
      }),
      { numRuns: 2000 },
    );
  });

  test("a mixed number is its whole and its fraction, rounded down once", () => {
    const parts = fc.record({
      whole: fc.integer({ min: 0, max: 9_000 }),
      under: fc.integer({ min: 2, max: 97 }),
      share: fc.double({ min: 0, max: 0.999, noNaN: true }),
    });
    fc.assert(
      fc.property(parts, ({ whole, under, share }) => {
        const over = 1 + Math.floor(share * (under - 1));
        const units = (BigInt(whole * under + over) * 8128n) / BigInt(under);
        expect(readAs(parseLength(`${whole} ${over}/${under}`, "in"))).toBe(Number(units));
        expect(readAs(parseLength(`${whole}-${over}/${under} in`, "cm"))).toBe(Number(units));
      }),
    );
  });

  test("spaces around and between change nothing", () => {
    const spaces = fc.constantFrom(" ", "\u00a0", "\u202f", "\u2009", "  ");
    fc.assert(
      fc.property(spaces, spaces, spaces, (one, two, three) => {
        expect(readAs(parseLength(`${one}2${two}1/2${three}in${one}`, "cm"))).toBe(inches(5, 2));
      }),
    );
  });
});
