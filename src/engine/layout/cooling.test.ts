import { describe, expect, it } from "vitest";
import { Cooling } from "./cooling.ts";

function temperaturesOf(pieces: number, moves: number): number[] {
  const cooling = new Cooling(pieces);
  return Array.from({ length: moves }, () => {
    const { temperature } = cooling;
    cooling.next();
    return temperature;
  });
}

describe("cooling", () => {
  it("falls to about three hundredths, then begins again as hot as before, and takes longer", () => {
    const seen = temperaturesOf(100, 400 + 680 + 1);
    const [first, second] = [seen.slice(0, 400), seen.slice(400, 1080)];
    for (const round of [first, second]) {
      expect(round[0]).toBe(5.2);
      expect(round.at(-1)).toBeCloseTo(5.2 * 0.03, 1);
      expect(round.every((next, at) => at === 0 || next < (round[at - 1] ?? 0))).toBe(true);
    }
    expect(seen[1080]).toBe(5.2);
  });

  it("lets few pieces move about more freely than many, and none at all do no harm", () => {
    expect(temperaturesOf(20, 1)).toEqual([10]);
    expect(temperaturesOf(1000, 1)[0]).toBeCloseTo(4.12, 6);
    expect(temperaturesOf(0, 1)[0]).toBeGreaterThan(0);
  });
});
