import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  centimetres,
  fromNumber,
  inches,
  length,
  millimetres,
  roundDownTo,
  roundUpTo,
  share,
  sum,
  toNumber,
} from "./arithmetic.ts";
import { cut, finished, toCut, toFinished } from "./index.ts";

// Up to 10,000 in, as far as a length may be read.
const anyLength = fc.integer({ min: 1, max: 81_280_000 }).map(length);
const anySeam = fc.integer({ min: 1, max: 8128 }).map(length);

describe("exact units", () => {
  test.each([
    // 1 in = 25.4 mm: NIST Handbook 44, Appendix C.
    ["1 in is 25.4 mm", inches(1), millimetres(25.4)],
    ["1/64 in is 127 units", inches(1, 64), length(127)],
    ["0.1 mm is 32 units", millimetres(0.1), length(32)],
    ["6.3 cm is 63 mm, although 6.3 has no binary fraction", centimetres(6.3), millimetres(63)],
    ["2 1/2 in is 6.35 cm", inches(5, 2), centimetres(6.35)],
  ])("%s", (_, one, other) => expect(one).toBe(other));

  test.each([() => inches(1, 3), () => millimetres(0.001), () => length(0.5), () => length(Number.NaN)])(
    "what 1/320 mm cannot hold is refused (%#)",
    (make) => expect(make).toThrow(),
  );
});

describe("laws", () => {
  test("shares add up to the whole and differ by one step at most", () => {
    const shares = fc.tuple(anyLength, fc.integer({ min: 1, max: 60 }));
    fc.assert(
      fc.property(shares, ([total, count]) => {
        const parts = share(total, count);
        expect(sum(parts)).toBe(total);
        expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("shares on the ruler: all but the last lie on the step, and the last takes what is left", () => {
    fc.assert(
      fc.property(anyLength, fc.integer({ min: 1, max: 60 }), anySeam, (total, count, step) => {
        const parts = share(total, count, step);
        expect(sum(parts)).toBe(total);
        expect(parts.slice(0, -1).every((part) => part % step === 0)).toBe(true);
      }),
    );
  });

  test("finished and cut are inverses", () => {
    fc.assert(
      fc.property(anyLength, anySeam, anySeam, (size, one, other) => {
        expect(toFinished(toCut(finished(size), one, other), one, other)).toBe(size);
        expect(toCut(toFinished(cut(size), one, other), one, other)).toBe(size);
      }),
    );
  });

  test("rounding goes its own way by less than a step, and leaves what is on the step", () => {
    fc.assert(
      fc.property(anyLength, anySeam, (size, step) => {
        const [down, up] = [roundDownTo(size, step), roundUpTo(size, step)];
        expect(down % step === 0 && up % step === 0).toBe(true);
        expect(down <= size && size <= up && up - down < 2 * step).toBe(true);
        expect(roundUpTo(up, step)).toBe(up);
        expect(roundDownTo(down, step)).toBe(down);
      }),
    );
  });

  test("a file's number is the length again", () => {
    fc.assert(
      fc.property(anyLength, fc.constantFrom("in" as const, "cm" as const), (size, unit) => {
        expect(fromNumber(toNumber(size, unit), unit)).toBe(size);
      }),
    );
  });

  test("a file's number more than a millionth off is refused", () => {
    expect(fromNumber(1 / 3, "in")).toBeNull();
    expect(fromNumber(Number.NaN, "in")).toBeNull();
    expect(fromNumber(1e300, "cm")).toBeNull();
  });
});
