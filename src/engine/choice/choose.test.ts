import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeJob, madeLength } from "../../../test/made/cloth.ts";
import { type Style, styles } from "../back/index.ts";
import type { LayoutNode } from "../layout/index.ts";
import { areaOf, finished, inches, length } from "../length/index.ts";
import { choose, lookDifferent, meritsOf, type Offered } from "./index.ts";
import { dominates, hasLight, isLighter, smallUsed } from "./merits.ts";

const job = madeJob([]);
const forty = finished(inches(40));

/** Three plain parts across, the seams at these places: in inches. */
function layoutAt(first: number, second: number): LayoutNode {
  const sides = [first, second - first, 40 - second].map((side) => finished(length(side * inches(1))));
  const parts = sides.map((height): LayoutNode => {
    return { kind: "cloth", role: "plain", fabric: "plain", source: "buy", width: forty, height };
  });
  return { kind: "join", direction: "below", seam: inches(1, 2), parts, width: forty, height: forty };
}

type Facts = { work?: number; buy?: number; used?: number; contrast?: number; seams?: [number, number] };

/** A plan as the choice sees it: hours of work, yards to buy. */
function plan(style: Style, { work = 4, buy = 2, used = 0.8, contrast = 20, seams }: Facts = {}): Offered {
  const place = 2 + 2 * styles.indexOf(style);
  const rows = [{ use: "plain" as const, fabric: "plain", width: inches(42), length: inches(36 * buy) }];
  return {
    style,
    layout: layoutAt(...(seams ?? [place, place + 18])),
    figures: {
      covered: used,
      contrast,
      minutes: [work * 40, work * 80],
      plain: areaOf(inches(1)),
      plainCells: 1,
      trimWaste: 0,
      joins: 1,
      cuts: 1,
      seamLength: inches(1),
    },
    buy: buy === 0 ? [] : rows,
    unused: [],
  };
}

const stylesOf = (plans: readonly Offered[], more = {}) =>
  choose(plans, { ...job, ...more }).chosen.map(({ plan }) => plan.style);

describe("merits of a plan", () => {
  it("one beats another that is no better in anything and worse in something", () => {
    const [one, same] = [meritsOf(plan("cross")), meritsOf(plan("chunks"))];
    expect(dominates(one, same)).toBe(false);
    for (const worse of [{ work: 5 }, { buy: 3 }, { used: 0.7 }, { contrast: 19 }]) {
      expect(dominates(one, meritsOf(plan("cross", worse)))).toBe(true);
      expect(dominates(meritsOf(plan("cross", worse)), one)).toBe(false);
    }
    expect(dominates(one, meritsOf(plan("cross", { work: 5, contrast: 21 })))).toBe(false);
  });

  it.each([
    [2.8, 0.7, true],
    [2.9, 0.7, false],
    [2.8, 0.69, false],
    [1, 1, true],
  ])("%f hours and %f used against 4 hours and 0.8: lighter is %s", (work, used, is) => {
    expect(isLighter(meritsOf(plan("cross", { work, used })), meritsOf(plan("chunks")))).toBe(is);
  });

  it("counts the small ones that are used", () => {
    const small = madeLength("square-1", 4, 4, { kind: "square", count: 6 });
    const large = madeLength("square-2", 9, 9, { kind: "square", count: 6 });
    const heap = madeJob([small, large]);
    expect(smallUsed({ unused: [{ piece: "square-1", count: 2 }] }, heap)).toBeCloseTo(4 / 6);
    expect(smallUsed({ unused: [{ piece: "square-2", count: 2 }] }, heap)).toBe(1);
    expect(smallUsed({ unused: [] }, job)).toBe(1);
  });
});

describe("the choice", () => {
  it("leaves out what another plan beats in everything", () => {
    const plans = [plan("cross"), plan("chunks", { work: 5, contrast: 25 }), plan("strippy", { work: 5 })];
    expect(stylesOf(plans)).toEqual(["cross", "chunks"]);
    expect(choose(plans, job).notes).toEqual([{ kind: "no-more", count: 2 }]);
  });

  it("leaves out what looks like another, and one of two of a style", () => {
    const like = plan("strippy", { seams: [4, 22.25], work: 3.9, contrast: 10 });
    const twice = plan("cross", { work: 3, used: 0.6 });
    expect(stylesOf([plan("insert-down"), like, plan("cross"), twice])).toHaveLength(2);
  });

  it("has all-over last, however well it does", () => {
    const full = plan("all-over", { used: 1, work: 4.5 });
    expect(stylesOf([full, plan("cross"), plan("chunks"), plan("squares")]).at(-1)).toBe("all-over");
  });

  it("has one with far less work among them where there is one, though others are worth more", () => {
    const alike = (["insert-across", "insert-down", "cross", "chunks", "strippy", "block-line"] as const).map(
      (style, at) => plan(style, { used: 0.8 + at / 100, work: 4 + at / 5 }),
    );
    const light = plan("squares", { used: 0.76, work: 2.9, contrast: 5 });
    expect(stylesOf([...alike, light])).toContain("squares");
    expect(hasLight(choose([...alike, light], job).chosen.map(({ plan }) => meritsOf(plan)))).toBe(true);
  });

  it("goes by her wishes", () => {
    const quick = plan("cross", { work: 1, used: 0.5, contrast: 5 });
    const bold = plan("chunks", { work: 6, used: 0.7, contrast: 45 });
    const own = plan("strippy", { work: 6, used: 0.7, contrast: 10, buy: 0 });
    const first = (wished: object) => stylesOf([quick, bold, own], wished)[0];
    expect(
      [{ wishes: ["sew-less"] }, { contrast: "strong" }, { wishes: ["buy-nothing"] }].map(first),
    ).toEqual(["cross", "chunks", "strippy"]);
  });

  it("says so where nothing can be had without buying", () => {
    const noted = (plans: readonly Offered[]) => choose(plans, { ...job, wishes: ["buy-nothing"] }).notes;
    const three = [plan("cross"), plan("chunks"), plan("squares")];
    expect(noted(three)).toEqual([{ kind: "must-buy", area: 2 * 36 * 42 * inches(1) ** 2 }]);
    expect(noted([...three, plan("strippy", { buy: 0, work: 6 })])).toEqual([]);
  });
});

const facts = fc.record({
  style: fc.constantFrom(...styles),
  work: fc.integer({ min: 1, max: 9 }),
  buy: fc.integer({ min: 0, max: 4 }),
  used: fc.integer({ min: 1, max: 10 }).map((tenths) => tenths / 10),
  contrast: fc.integer({ min: 5, max: 30 }),
  seams: fc.tuple(fc.integer({ min: 2, max: 18 }), fc.integer({ min: 20, max: 38 })),
});

describe("whatever there is to choose from", () => {
  const plans = fc
    .array(facts, { maxLength: 14 })
    .map((all) => all.map(({ style, ...rest }) => plan(style, rest)));

  it("what is offered differs in style and look, is beaten by nothing, and has a reason each", () => {
    fc.assert(
      fc.property(plans, (all) => {
        const { chosen, others } = choose(all, job);
        expect(chosen.length + others.length).toBe(all.length);
        expect(chosen.length).toBeLessThanOrEqual(6);
        expect(chosen.length > 0).toBe(all.length > 0);
        const offered = chosen.map((one) => one.plan);
        expect(new Set(offered.map(({ style }) => style)).size).toBe(offered.length);
        for (const one of offered)
          expect(all.some((other) => dominates(meritsOf(other), meritsOf(one)))).toBe(false);
        for (const [at, one] of offered.entries())
          for (const other of offered.slice(at + 1))
            expect(lookDifferent(one.layout, other.layout)).toBe(true);
        for (const { reasons } of chosen) expect([1, 2]).toContain(reasons.length);
        expect(offered.slice(0, -1).every(({ style }) => style !== "all-over")).toBe(true);
      }),
    );
  });

  it("nothing that could be offered beside is held back while there are fewer than three", () => {
    fc.assert(
      fc.property(plans, (all) => {
        const { chosen, others } = choose(all, job);
        if (chosen.length >= 3) return;
        const more = others.filter(
          (one) =>
            !all.some((other) => dominates(meritsOf(other), meritsOf(one))) &&
            chosen.every(({ plan }) => plan.style !== one.style && lookDifferent(plan.layout, one.layout)),
        );
        expect(more).toEqual([]);
      }),
    );
  });
});
