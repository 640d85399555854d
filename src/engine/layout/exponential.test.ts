import { describe, expect, it } from "vitest";
import { exponential } from "./exponential.ts";

describe("e to a power", () => {
  // Digits: OEIS A001113 (e) and its powers, common tables.
  it.each([
    [0, 1],
    [-1, 0.36787944117144233],
    [-0.5, 0.6065306597126334],
    [-2, 0.1353352832366127],
    [-10, 4.5399929762484854e-5],
    [-100, 3.720075976020836e-44],
  ])("%f", (power, value) => {
    expect(Math.abs(exponential(power) / value - 1)).toBeLessThan(5e-15);
  });

  it("falls with its power, without a step back", () => {
    let before = 1;
    for (let power = 0; power > -40; power -= 0.001) {
      const value = exponential(power);
      expect(value).toBeLessThanOrEqual(before);
      before = value;
    }
  });

  it("is nothing where nothing could tell it from that", () => {
    expect(exponential(-701)).toBe(0);
    expect(exponential(Number.NEGATIVE_INFINITY)).toBe(0);
  });
});
