import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { centimetres, inches, length, millimetres } from "./arithmetic.ts";
import { formatLength, formatSize, formatWithUnit, showsExactly, typedLength } from "./format.ts";
import { parseLength, parseSizePair } from "./parse.ts";

describe("a length as she would write it", () => {
  test.each([
    [inches(0), "0"],
    [inches(12), "12"],
    [inches(25, 2), "12½"],
    [inches(161, 8), "20⅛"],
    [inches(3, 4), "¾"],
    [inches(5, 16), "5⁄16"],
    [inches(35, 16), "2\u202f3⁄16"],
    [inches(63, 64), "63⁄64"],
    [length(-inches(3, 2)), "−1½"],
  ])("%s in inches is %s", (size, text) => expect(formatLength(size, { unit: "in" })).toBe(text));

  test.each([
    [centimetres(31.8), "cm", "31.8"],
    [centimetres(32), "cm", "32"],
    [centimetres(100), "cm", "100"],
    [inches(5, 2), "cm", "6.35"],
    [millimetres(63), "mm", "63"],
    [millimetres(63.5), "mm", "63.5"],
  ] as const)("%s in %s is %s", (size, unit, text) => expect(formatLength(size, { unit })).toBe(text));

  test("a decimal comma where her tongue has one", () => {
    expect(formatWithUnit(centimetres(31.8), { unit: "cm", decimal: "," })).toBe("31,8\u202fcm");
  });

  test("a size: multiplication sign, thin spaces that do not break, one unit", () => {
    const size = { width: inches(25, 2), height: inches(161, 8) };
    expect(formatSize(size, { unit: "in" })).toBe("12½\u202f×\u202f20⅛\u202fin");
  });

  test("rounded to the ruler's step, once and by name", () => {
    const size = inches(79, 32); // 2 15/32
    const step = inches(1, 8);
    expect(formatLength(size, { unit: "in", step })).toBe("2½");
    expect(formatLength(size, { unit: "in", step, round: "down" })).toBe("2⅜");
    expect(formatLength(inches(77, 32), { unit: "in", step, round: "up" })).toBe("2½");
    expect(formatLength(inches(25, 2), { unit: "cm", step: millimetres(1) })).toBe("31.8");
    expect(formatLength(millimetres(10), { unit: "in", step: millimetres(1) })).toBe("25⁄64");
  });

  test("says whether it lost anything", () => {
    expect(showsExactly(inches(5, 2), { unit: "in" })).toBe(true);
    expect(showsExactly(length(2709), { unit: "in" })).toBe(false);
    expect(showsExactly(inches(5, 2), { unit: "cm", step: millimetres(1) })).toBe(false);
  });

  test("to be typed into a table: plain signs, nothing lost", () => {
    expect(typedLength(inches(35, 16), "in")).toBe("2 3/16");
    expect(typedLength(inches(12), "in")).toBe("12");
    expect(typedLength(centimetres(6.35), "cm")).toBe("6.35");
    expect(typedLength(length(2710), "in")).toBe("8.46875 mm");
    expect(typedLength(length(1), "cm")).toBe("0.003125 mm");
  });
});

describe("parse and format are inverses", () => {
  const sixtyFourths = fc.integer({ min: 1, max: 640_000 }).map((count) => length(count * 127));
  const tenths = fc.integer({ min: 1, max: 2_540_000 }).map((count) => length(count * 32));

  test("every length on the 1/64 in marks", () => {
    fc.assert(
      fc.property(sixtyFourths, (size) => {
        for (const text of [formatLength(size, { unit: "in" }), formatWithUnit(size, { unit: "in" })]) {
          expect(parseLength(text, "in")).toEqual({ ok: true, value: size });
        }
      }),
    );
  });

  test("all 64 fractions of the first three inches", () => {
    for (let count = 1; count <= 192; count += 1) {
      const size = length(count * 127);
      expect(parseLength(formatLength(size, { unit: "in" }), "in")).toEqual({ ok: true, value: size });
    }
  });

  test("every tenth of a millimetre, in cm and mm, with either decimal sign", () => {
    const decimals = fc.constantFrom("." as const, "," as const);
    fc.assert(
      fc.property(tenths, fc.constantFrom("cm" as const, "mm" as const), decimals, (size, unit, decimal) => {
        const text = formatWithUnit(size, { unit, decimal });
        expect(parseLength(text, "in")).toEqual({ ok: true, value: size });
      }),
    );
  });

  test("sizes", () => {
    fc.assert(
      fc.property(sixtyFourths, sixtyFourths, (width, height) => {
        const text = formatSize({ width, height }, { unit: "in" });
        expect(parseSizePair(text, "cm")).toEqual({ ok: true, value: { width, height } });
      }),
    );
  });

  test("every length at all, typed", () => {
    const any = fc.integer({ min: 1, max: 81_280_000 }).map(length);
    fc.assert(
      fc.property(any, fc.constantFrom("in" as const, "cm" as const), (size, unit) => {
        expect(parseLength(typedLength(size, unit), unit)).toEqual({ ok: true, value: size });
      }),
      { numRuns: 1000 },
    );
  });
});
