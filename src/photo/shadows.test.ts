import { describe, expect, test } from "vitest";
import { look, underShadow } from "./shadows.ts";

const step = 0.012;
const blur = 0.015;

type Rgb = readonly [number, number, number];
type Seen = {
  /** In inches from where the side was seen, outwards: the cloth's own color. */
  readonly cloth: (from: number, station: number) => Rgb;
  /** Where it ends. */
  readonly ends: number;
  readonly shadow?: { readonly takes: number; readonly reach: number };
};

const floor: Rgb = [0.8, 0.8, 0.78];

/** Twenty-four stations of cloth on a light floor, with a little noise that is always the same. */
function across({ cloth, ends, shadow = { takes: 0, reach: 0.1 } }: Seen): readonly Float64Array[] {
  return Array.from({ length: 24 }, (_, station) =>
    Float64Array.from({ length: 6 * Math.round(look / step) }, (_, at) => {
      const [x, channel] = [(Math.floor(at / 3) + 0.5) * step - look, at % 3];
      const isCloth = 1 / (1 + Math.exp((1.702 * (x - ends)) / blur));
      const far = Math.max(0, Math.min(1, (x - ends) / shadow.reach));
      const lit = 1 - shadow.takes * (1 - far * far * (3 - 2 * far));
      const noise = 0.004 * Math.sin(12.9 * at + 78.2 * station);
      return (
        isCloth * (cloth(x - ends, station)[channel] ?? 0) +
        (1 - isCloth) * lit * (floor[channel] ?? 0) +
        noise
      );
    }),
  );
}

const cream: Rgb = [0.74, 0.72, 0.66];
const navy: Rgb = [0.03, 0.05, 0.12];

describe("a side seen where its shadow ends", () => {
  test.each<[string, Seen]>([
    [
      "light cloth on a light floor",
      { cloth: () => cream, ends: -0.08, shadow: { takes: 0.4, reach: 0.12 } },
    ],
    [
      "a block of two cloths",
      {
        cloth: (_, n) => (n < 12 ? cream : [0.5, 0.2, 0.2]),
        ends: -0.05,
        shadow: { takes: 0.3, reach: 0.1 },
      },
    ],
  ])("lies as far in as the cloth ends: %s", (_, seen) => {
    expect(underShadow({ lights: across(seen), step, blur })).toBeCloseTo(-seen.ends, 2);
  });

  test.each<[string, Seen]>([
    ["dark cloth without a shadow", { cloth: () => navy, ends: 0 }],
    [
      "dark cloth with a shadow outside of it",
      { cloth: () => navy, ends: 0, shadow: { takes: 0.3, reach: 0.1 } },
    ],
    ["a dark stripe along it", { cloth: (x) => (x > -0.09 ? navy : cream), ends: 0 }],
    [
      "a gray stripe along it, like a shadow but for its edge",
      { cloth: (x) => (x > -0.09 ? [0.5, 0.5, 0.49] : cream), ends: 0 },
    ],
  ])("stays where cloth ends: %s", (_, seen) => {
    expect(underShadow({ lights: across(seen), step, blur })).toBeLessThan(0.006);
  });

  test("stays where too little is seen of it", () => {
    expect(underShadow({ lights: [], step, blur })).toBe(0);
  });
});
