import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clothDifference, isOneCloth } from "./likeness.ts";

const lab = fc.record({
  l: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -80, max: 80, noNaN: true }),
  b: fc.double({ min: -80, max: 80, noNaN: true }),
});
const cloth = fc.record({
  colours: fc.array(fc.record({ lab, share: fc.double({ min: 0.06, max: 1, noNaN: true }) }), {
    minLength: 1,
    maxLength: 4,
  }),
  busyness: fc.double({ min: 0, max: 40, noNaN: true }),
});

const teal = { l: 50, a: -25, b: -5 };
const cream = { l: 90, a: 0, b: 10 };
const plain = { colours: [{ lab: teal, share: 1 }], busyness: 2 };

describe("how like two cloths are", () => {
  it("is the same both ways, and nothing between a cloth and itself", () => {
    fc.assert(
      fc.property(cloth, cloth, (one, other) => {
        expect(clothDifference(one, one)).toBeCloseTo(0, 6);
        expect(clothDifference(one, other)).toBeCloseTo(clothDifference(other, one), 6);
        expect(clothDifference(one, other)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each([
    [
      "a little lighter, as in another photo",
      { ...plain, colours: [{ lab: { ...teal, l: 52.5 }, share: 1 }] },
      true,
    ],
    ["of another color", { ...plain, colours: [{ lab: cream, share: 1 }] }, false],
    [
      "with dots of another color",
      {
        colours: [
          { lab: teal, share: 0.7 },
          { lab: cream, share: 0.3 },
        ],
        busyness: 22,
      },
      false,
    ],
  ])("%s", (_, other, one) => {
    expect(isOneCloth(plain, other)).toBe(one);
  });
});
