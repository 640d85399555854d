import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validInput } from "../../../test/generators/validLayouts.ts";
import type { JoinNode, LayoutNode } from "../layout/index.ts";
import { finished, inches, length } from "../length/index.ts";
import { apart, lookDifferent, shareApart } from "./apart.ts";
import { type Seam, seamsOf } from "./seams.ts";

const inch = inches(1);
const across = (at: number, from: number, to: number): Seam => ({
  across: true,
  at: at * inch,
  from: from * inch,
  to: to * inch,
});
const down = (at: number, from: number, to: number): Seam => ({ ...across(at, from, to), across: false });

function cloth(width: number, height: number): LayoutNode {
  const size = { width: finished(length(width * inch)), height: finished(length(height * inch)) };
  return { kind: "cloth", role: "plain", fabric: "plain", source: "buy", ...size };
}

/** Plain parts side by side, or one below the other, on a square of 40 in. */
function stripes(beside: boolean, ...sides: number[]): JoinNode {
  const parts = sides.map((side) => (beside ? cloth(side, 40) : cloth(40, side)));
  const direction = beside ? "beside" : "below";
  const size = { width: finished(length(40 * inch)), height: finished(length(40 * inch)) };
  return { kind: "join", direction, seam: inches(1, 2), parts, ...size };
}

describe("seams of a layout", () => {
  it("run where its parts meet, from end to end", () => {
    expect(seamsOf(stripes(true, 10, 30))).toEqual([down(10, 0, 40)]);
    expect(seamsOf(stripes(false, 10, 12, 18))).toEqual([across(10, 0, 40), across(22, 0, 40)]);
    expect(seamsOf(cloth(10, 10))).toEqual([]);
  });

  it("lie where the parts inside lie", () => {
    const inner = { ...stripes(false, 10, 30), width: finished(inches(20)) };
    const outer = stripes(true, 20, 20);
    const nested: LayoutNode = { ...outer, parts: [cloth(20, 40), inner] };
    expect(seamsOf(nested)).toEqual([down(20, 0, 40), across(10, 20, 40)]);
  });
});

// Worked by hand.
describe("how much of a seam lies more than half an inch from the others", () => {
  it.each<[string, Seam[], Seam[], number]>([
    ["the same seam", [across(10, 0, 40)], [across(10, 0, 40)], 0],
    ["half an inch beside it is near", [across(10, 0, 40)], [across(10.5, 0, 40)], 0],
    ["an inch beside it is not", [across(10, 0, 40)], [across(11, 0, 40)], 1],
    [
      "beyond the end of a shorter one, by more than half an inch",
      [across(10, 0, 40)],
      [across(10, 0, 19.5)],
      0.5,
    ],
    ["a crossing takes an inch", [across(10, 0, 40)], [down(20, 0, 40)], 39 / 40],
    ["a T just as much: the end of one touches the other", [across(10, 0, 40)], [down(20, 10, 40)], 39 / 40],
    [
      "one that ends 0.3 in off reaches 0.4 in to each side",
      [across(10, 0, 40)],
      [down(20, 10.3, 40)],
      39.2 / 40,
    ],
    ["one that ends an inch off does not reach", [across(10, 0, 40)], [down(20, 11, 40)], 1],
    [
      "crossings that overlap count once",
      [across(10, 0, 40)],
      [down(20, 0, 40), down(20.5, 0, 40)],
      38.5 / 40,
    ],
    ["at a border only what is there", [across(10, 0, 40)], [down(0, 0, 40)], 39.5 / 40],
    ["no others", [across(10, 0, 40)], [], 1],
    ["no seams at all", [], [across(10, 0, 40)], 0],
  ])("%s", (_, seams, others, share) => {
    expect(shareApart(seams, others)).toBeCloseTo(share, 9);
  });
});

const layout = fc.nat(10_000).map((seed) => validInput(seed).layout);
const layouts = fc.tuple(layout, layout);

describe("two backs", () => {
  it("look different when four tenths of the seams of each lie apart from the other's", () => {
    expect(lookDifferent(stripes(true, 10, 30), stripes(false, 10, 30))).toBe(true);
    expect(lookDifferent(stripes(true, 10, 30), stripes(true, 10.5, 29.5))).toBe(false);
    // All of the one seam lies on one of the other's two.
    expect(apart(stripes(true, 10, 30), stripes(true, 10, 10, 20))).toBe(0);
  });

  it("are as far apart one way as the other, and not at all from themselves", () => {
    fc.assert(
      fc.property(layouts, ([one, other]) => {
        expect(apart(one, one)).toBe(0);
        expect(apart(one, other)).toBe(apart(other, one));
        expect(apart(one, other)).toBeGreaterThanOrEqual(0);
        expect(apart(one, other)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40 },
    );
  });

  it("are as far apart as points along the seams say", () => {
    fc.assert(
      fc.property(layouts, ([one, other]) => {
        const [a, b] = [seamsOf(one), seamsOf(other)];
        expect(Math.abs(shareApart(a, b) - sampled(a, b))).toBeLessThan(0.02);
      }),
      { numRuns: 20 },
    );
  });
});

/** The same by looking at many points, with the distance of a point to a line written out. */
function sampled(seams: readonly Seam[], others: readonly Seam[]): number {
  let [all, far] = [0, 0];
  for (const seam of seams) {
    const points = Math.max(1, Math.round((seam.to - seam.from) / (inch / 40)));
    for (let at = 0; at < points; at++) {
      const along = seam.from + ((at + 0.5) * (seam.to - seam.from)) / points;
      const point = seam.across ? { x: along, y: seam.at } : { x: seam.at, y: along };
      const nearest = Math.min(...others.map((other) => distance(point, other)));
      all += (seam.to - seam.from) / points;
      if (nearest > inch / 2) far += (seam.to - seam.from) / points;
    }
  }
  return all === 0 ? 0 : far / all;
}

function distance({ x, y }: { x: number; y: number }, seam: Seam): number {
  const [along, aside] = seam.across ? [x, y] : [y, x];
  return Math.hypot(Math.max(seam.from - along, along - seam.to, 0), aside - seam.at);
}
