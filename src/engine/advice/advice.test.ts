import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { type Patch, type Patchwork, patchwork } from "../../../test/generators/patchwork.ts";
import { heaps, jobOf } from "../../../test/plans/heaps.ts";
import { styles } from "../back/index.ts";
import { fabricOf, hexOf, type Job, undyed } from "../cloth/index.ts";
import { canBeCut } from "../layout/index.ts";
import { finished, inches, subtract } from "../length/index.ts";
import { makePlan, type Plan } from "../plan/index.ts";
import { buyRows, untrueEnd } from "../supplies/index.ts";
import { areApart, edgesOf, goodShare } from "./edges.ts";
import { type Advice, type AdviceKind, adviceFor, type Where } from "./index.ts";
import { hueOf } from "./palette.ts";
import { sceneOf } from "./scene.ts";
import { mostOfHeap, reachedBySwaps } from "./swaps.ts";
import { beforeShrinking, mayBleed } from "./washing.ts";

const grey = (l: number): Patch => ({ colour: `lab(${l} 0 0)` });

function adviceOn({ layout, job }: Patchwork): readonly Advice[] {
  return adviceFor({ layout, buy: buyRows(layout, job) }, job);
}

function oneOf<K extends AdviceKind>(work: Patchwork, kind: K): Extract<Advice, { kind: K }> | undefined {
  return adviceOn(work).find((advice): advice is Extract<Advice, { kind: K }> => advice.kind === kind);
}

const kindsOn = (work: Patchwork) => adviceOn(work).map(({ kind }) => kind);

describe("told apart", () => {
  const lab = (l: number, a = 0, b = 0) => ({ l, a, b });
  // The issue's own thresholds, as none is published for cloth: value 10 apart, or CIEDE2000 of 20.
  test.each([
    ["value 10 apart", lab(50), lab(60), true],
    ["value 9.9 apart", lab(50), lab(59.9), false],
    ["one value, red and green", lab(50, 50, 20), lab(50, -40, 30), true],
    ["one value, two near blues", lab(50, 0, -30), lab(50, 6, -30), false],
  ])("%s", (_, one, other, apart) => {
    expect(areApart(one, other)).toBe(apart);
    expect(areApart(other, one)).toBe(apart);
  });
});

describe("contrast", () => {
  test("nothing is said where fabrics stand apart", () => {
    expect(adviceOn(patchwork(["ab", "ba"], { a: grey(50), b: grey(62) }))).toEqual([]);
  });

  test("nothing can be said of cloth without a colour", () => {
    expect(adviceOn(patchwork(["ab", "ba"], { a: {}, b: {} }))).toEqual([]);
  });

  test("a heap that can't give any is said so, with the one fabric that would mend it", () => {
    const work = patchwork(["abab", "baba", "abab", "baba"], { a: grey(50), b: grey(52) });
    const advice = oneOf(work, "contrast");
    expect(advice).toMatchObject({ now: 0, swapped: 0, most: 0 });
    // Five of sixteen cells, none beside another and all inside as far as can be: 20 of 24 edges at most.
    expect(advice?.mend).toMatchObject({ instead: "pieces", hue: "grey", cells: 5, width: inches(42) });
    expect(advice?.mend?.value).not.toBe("medium");
    expect(advice?.mend?.reach).toBeGreaterThanOrEqual(0.7);
    // Five squares of 4 1/2 in lie beside one another on 42 in: 4 1/2 + 1/2 in, sold as 1/4 yd at 1/8 yd.
    expect(advice?.mend?.length).toBe(inches(9));
    expect(advice?.where.cells).toHaveLength(5);
  });

  test("what swaps would reach is told apart from what the heap can give", () => {
    // Fabrics in halves: 2 of 4 edges are alike; a four-patch of corners has none that is.
    const advice = oneOf(
      patchwork(["aa", "bb"], { a: grey(45), b: grey(70) }, { wishes: ["more-contrast"] }),
      "contrast",
    );
    expect(advice).toMatchObject({ now: 0.5, swapped: 1, most: 1 });
  });

  test("bought plain cloth is exchanged first, as it is bought anyway", () => {
    const rows = ["a.a.", ".a.a", "a.a.", ".a.a"];
    const advice = oneOf(patchwork(rows, { a: grey(60), ".": grey(64) }), "contrast");
    expect(advice?.mend).toMatchObject({ instead: "plain", cells: 8, reach: 1 });
    expect(advice?.where).toMatchObject({ pieces: [], steps: ["1", "2", "3", "4"] });
  });

  test("she asked for more contrast, and more is asked of the plan", () => {
    // 2 of 22 edges alike: enough as a rule (80 %), not where she asks for more (97 %).
    const rows = ["abababab", "babababb"];
    const patches = { a: grey(50), b: grey(70) };
    expect(kindsOn(patchwork(rows, patches))).toEqual([]);
    const asked = patchwork(rows, patches, { wishes: ["more-contrast"] });
    expect(oneOf(asked, "contrast")?.now).toBeCloseTo(20 / 22);
  });

  it("is never said to be able to do what no arrangement can, nor less than one that was found", () => {
    const letters = fc.array(fc.constantFrom("a", "b", "c"), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(letters, (row) => {
        const scene = sceneFrom(row);
        const known = edgesOf(scene);
        const best = Math.max(...orders(row).map((order) => goodShare(edgesOf(sceneFrom(order)))));
        const swapped = reachedBySwaps(scene, known);
        expect(swapped).toBeGreaterThanOrEqual(goodShare(known));
        expect(swapped).toBeLessThanOrEqual(best + 1e-9);
        expect(mostOfHeap(scene, known)).toBeGreaterThanOrEqual(best - 1e-9);
      }),
      { numRuns: 30 },
    );
  });
});

describe("the fabric that would mend it", () => {
  const grids = fc.array(fc.array(fc.constantFrom("a", "b", "c"), { minLength: 5, maxLength: 5 }), {
    minLength: 3,
    maxLength: 5,
  });

  it("does what is said of it once it lies there, and the cloth is enough", () => {
    let mended = 0;
    const law = (grid: string[][]) => {
      const rows = grid.map((row) => row.join(""));
      const work = patchwork(rows, three, { wishes: ["more-contrast"] });
      const advice = oneOf(work, "contrast");
      if (!advice?.mend) return;
      mended++;
      const { l, a, b } = advice.mend.lab;
      const laid = patchwork(withNew(rows, advice.where.cells), {
        ...three,
        n: { colour: hexOf({ l, a, b }) },
      });
      const after = goodShare(edgesOf(sceneOf({ layout: laid.layout, buy: [] }, laid.job)));
      expect(after).toBeCloseTo(advice.mend.reach, 6);
      const needed = advice.where.cells.map(() => ({
        width: inches(9, 2),
        height: inches(9, 2),
        mayTurn: true,
      }));
      const cloth = { width: advice.mend.width, height: subtract(advice.mend.length, untrueEnd) };
      expect(canBeCut(needed, [cloth])).toBe(true);
    };
    fc.assert(fc.property(grids, law), { numRuns: 60 });
    expect(mended).toBeGreaterThan(20);
  });

  /** The letter n in each of the cells, which are 4 in and begin 1/4 in from the raw edge. */
  function withNew(rows: readonly string[], cells: Where["cells"]): readonly string[] {
    const letters = rows.map((row) => [...row]);
    for (const { x, y } of cells) {
      const [row, column] = [y, x].map((at) => (at - inches(1, 4)) / inches(4));
      letters[row ?? -1]?.splice(column ?? -1, 1, "n");
    }
    return letters.map((row) => row.join(""));
  }
});

const three = { a: grey(50), b: grey(53), c: grey(75) };

function sceneFrom(letters: readonly string[]) {
  const work = patchwork([letters.slice(0, 3).join(""), letters.slice(3).join("")], three);
  return sceneOf({ layout: work.layout, buy: [] }, work.job);
}

/** Every different order: 90 at most for six of three sorts. */
function orders(letters: readonly string[]): readonly (readonly string[])[] {
  if (letters.length < 2) return [letters];
  return [...new Set(letters)].flatMap((first) => {
    const rest = letters.toSpliced(letters.indexOf(first), 1);
    return orders(rest).map((order) => [first, ...order]);
  });
}

describe("hues by name", () => {
  // CSS names of colours: common practice of naming.
  test.each([
    ["firebrick", "red"],
    ["darkorange", "orange"],
    ["gold", "yellow"],
    ["forestgreen", "green"],
    ["teal", "teal"],
    ["steelblue", "blue"],
    ["rebeccapurple", "violet"],
    ["hotpink", "pink"],
    ["gray", "grey"],
  ])("%s is %s", (colour, hue) => {
    const lab = fabricOf("f", "", colour)?.colours[0]?.lab;
    expect(lab && hueOf(lab)).toBe(hue);
  });
});

describe("show-through", () => {
  // Common practice: cloth of L* under 45 shows through cloth of L* over 75.
  test.each([
    [44, 76, true],
    [46, 76, false],
    [44, 74, false],
  ])("a seam between L* %d and L* %d", (dark, light, said) => {
    const work = patchwork(["ab", "ba"], { a: grey(dark), b: grey(light) });
    expect(kindsOn(work).includes("dark-beside-light")).toBe(said);
  });

  test("the steps are those that sew dark to pale, and the dark piece is named", () => {
    const work = patchwork(["abc", "ccc"], { a: grey(30), b: grey(80), c: grey(60) });
    expect(oneOf(work, "dark-beside-light")?.where).toMatchObject({ pieces: ["square-1"], steps: ["1"] });
    expect(oneOf(work, "dark-beside-light")?.where.cells).toHaveLength(1);
    const outside = patchwork(
      ["abbc", "bbbb", "bbbb"],
      { a: grey(30), b: grey(80), c: grey(30) },
      { top: 4 },
    );
    expect(kindsOn(outside)).not.toContain("dark-beside-light");
  });

  test("a seam inside a unit counts, as its own step", () => {
    const { job } = patchwork(["ab", "ab"], { a: grey(30), b: grey(80) });
    const size = { width: finished(inches(4)), height: finished(inches(4)) };
    const pieces = ["square-1", "square-2"].map((piece) => ({ piece, count: 2 }));
    const unit = { kind: "unit", pattern: "squares", pieces, cloth: [], ...size } as const;
    const advice = adviceFor({ layout: unit, buy: [] }, { ...job, top: null });
    expect(advice.map(({ kind }) => kind)).toContain("dark-beside-light");
    expect(advice[0]?.where).toMatchObject({ pieces: ["square-1"], steps: ["1"] });
  });

  test("an even dark back shades its top evenly: nothing is said; nor of what is cut off", () => {
    expect(kindsOn(patchwork(["ab", "ba"], { a: grey(20), b: grey(38) }))).toEqual([]);
    const ring = ["aaaa", "abba", "abba", "aaaa"];
    const work = patchwork(ring, { a: grey(20), b: grey(60) }, { top: 4 });
    expect(kindsOn(work)).not.toContain("dark-under-top");
    const under = patchwork(["abaa", "abaa", "abaa"], { a: grey(60), b: grey(20) }, { top: 4 });
    expect(oneOf(under, "dark-under-top")).toMatchObject({ pale: null, where: { pieces: ["square-2"] } });
  });

  test("where a photo shows the top: how much of it is pale, and nothing where none of it is", () => {
    const { layout, job } = patchwork(["abaa", "abaa", "abaa"], { a: grey(60), b: grey(20) }, { top: 4 });
    const underTopOf = (...values: readonly (readonly [l: number, share: number])[]) => {
      const topColours = values.map(([l, share]) => ({ lab: { l, a: 0, b: 0 }, share }));
      return adviceFor({ layout, buy: buyRows(layout, job), topColours }, job).filter(
        ({ kind }) => kind === "dark-under-top",
      );
    };
    expect(underTopOf([30, 0.5], [80, 0.375], [70, 0.125])).toMatchObject([{ pale: 0.5 }]);
    expect(underTopOf([30, 0.5], [60, 0.5])).toEqual([]);
    expect(underTopOf()).toMatchObject([{ pale: null }]);
  });
});

describe("washing", () => {
  // Common practice: strong reds, and dark cloth of a strong colour, are tested first.
  test.each([
    ["crimson", true],
    ["#8b0000", true],
    ["navy", true],
    ["indigo", true],
    ["pink", false],
    ["beige", false],
    ["black", false],
    ["skyblue", false],
    [undyed, false],
  ])("%s may run: %s", (colour, runs) => {
    const fabric = fabricOf("f", "", colour);
    expect(fabric && mayBleed(fabric)).toBe(runs);
  });

  test("a red is named until it has been washed", () => {
    const patches = (washed: Patch) => ({ a: { colour: "crimson", ...washed }, b: grey(60) });
    const where = { pieces: ["square-1"], steps: ["1", "2"] };
    expect(oneOf(patchwork(["ab", "ba"], patches({})), "bleeding")).toMatchObject({ small: true, where });
    expect(oneOf(patchwork(["ab", "ba"], patches({ washed: false })), "bleeding")).toBeDefined();
    expect(kindsOn(patchwork(["ab", "ba"], patches({ washed: true })))).not.toContain("bleeding");
  });

  test("unwashed beside washed is said where she told of both", () => {
    const work = (a: Patch, b: Patch) =>
      patchwork(["ab"], { a: { ...grey(50), ...a }, b: { ...grey(62), ...b } });
    const advice = oneOf(work({ washed: true }, { washed: false }), "unwashed");
    expect(advice).toMatchObject({ bought: [], where: { pieces: ["square-2"], steps: ["1"] } });
    expect(kindsOn(work({ washed: true }, {}))).toEqual([]);
    expect(kindsOn(work({ washed: true }, { washed: true }))).toEqual([]);
    expect(kindsOn(work({ washed: false }, { washed: false }))).toEqual([]);
  });

  test("cloth to buy is new: with washed leftovers it is washed too, and a little more of it bought", () => {
    const work = patchwork(["a.", ".a"], { a: { ...grey(50), washed: true }, ".": grey(62) });
    const advice = oneOf(work, "unwashed");
    expect(advice?.where).toMatchObject({
      pieces: [],
      steps: ["1", "2", "3"].slice(0, advice?.where.steps.length),
    });
    expect(advice?.bought).toHaveLength(1);
    expect(advice?.bought[0]?.length).toBeGreaterThan(buyRows(work.layout, work.job)[0]?.length ?? 0);
  });

  test("90 in after a wash that takes 5 % is 94.7 in before, sold as 2 3/4 yd", () => {
    // Derived: 90 ÷ 0.95 = 94.74; rounded up to 1/8 yd of 4 1/2 in.
    expect(beforeShrinking(inches(90), { unit: "in" })).toBe(inches(99));
  });
});

describe("weights", () => {
  test.each([
    ["flannel", "", ["flannel"]],
    ["Flannel ", "quilting cotton", ["Flannel"]],
    ["cotton", "Quilting  cotton", null],
    ["denim", "denim", null],
  ])("%s and %s", (a, b, cloths) => {
    const patches = { a: { ...grey(50), cloth: a }, b: { ...grey(62), cloth: b } };
    const advice = oneOf(patchwork(["abb"], patches), "weights");
    expect(advice?.cloths ?? null).toEqual(cloths);
    if (advice) expect(advice.where.pieces).toEqual(["square-1"]);
  });
});

describe("direction", () => {
  const turned = (work: Patchwork, at: number): Patchwork => {
    const rows = work.layout.kind === "join" ? work.layout.parts : [];
    const parts = rows.map((row) =>
      row.kind === "join"
        ? { ...row, parts: row.parts.map((leaf, index) => (index === at ? { ...leaf, turned: true } : leaf)) }
        : row,
    );
    return { ...work, layout: { ...work.layout, parts } as Patchwork["layout"] };
  };
  const one = { ...grey(50), direction: "one-way" } as const;
  const stripe = { ...grey(62), direction: "stripe" } as const;

  test("a one-way print on its side, stripes that run both ways", () => {
    const upright = patchwork(["abbb"], { a: one, b: stripe });
    expect(kindsOn(upright)).not.toContain("not-upright");
    expect(kindsOn(upright)).not.toContain("stripes-sideways");
    expect(oneOf(turned(upright, 0), "not-upright")?.where).toMatchObject({
      pieces: ["square-1"],
      steps: ["1"],
    });
    expect(oneOf(turned(upright, 1), "stripes-sideways")?.where.cells).toHaveLength(1);
  });

  test("a one-way print through which the top's edge runs; what is wholly outside or inside is let be", () => {
    const print = { a: one, b: grey(62) };
    const rows = ["bbbb", "babb", "bbbb"];
    expect(kindsOn(patchwork(rows, print, { top: 5 }))).toContain("print-cut-off");
    expect(kindsOn(patchwork(rows, print, { top: 4 }))).not.toContain("print-cut-off");
    expect(kindsOn(patchwork(["abbb", "bbbb", "bbbb"], print, { top: 5 }))).not.toContain("print-cut-off");
    const edge = { a: { ...one, use: "edge" }, b: grey(62) } as const;
    expect(kindsOn(patchwork(rows, edge, { top: 5 }))).not.toContain("print-cut-off");
  });
});

describe("on a frame", () => {
  const print = { a: grey(50), b: grey(62) };
  function framed(rows: readonly string[]): Patchwork {
    const { job, layout } = patchwork(rows, print, { top: 2 });
    if (job.top === null) throw new Error("it has a top");
    return { job: { ...job, top: { ...job.top, method: "frame" } }, layout };
  }
  const wide = ["abababab", "babababa", "abababab"];
  const high = ["aba", "bab", "aba", "bab", "aba", "bab", "aba", "bab"];

  test("a back whose long seams run down is loaded sideways: seven of 12 in, two of 32", () => {
    expect(oneOf(framed(wide), "load-sideways")?.where.cells).toHaveLength(24);
    expect(kindsOn(framed(high))).not.toContain("load-sideways");
  });

  test("as many down as across: it may stay as it is", () => {
    expect(kindsOn(framed(["ab", "ba"]))).not.toContain("load-sideways");
  });

  test("elsewhere there are no rollers", () => {
    expect(kindsOn(patchwork(wide, print, { top: 2 }))).not.toContain("load-sideways");
  });
});

describe("any plan", () => {
  // Every style twice, on the heaps in turn. What is advised changes with what is known of the cloth; plans don't.
  const jobs = [...styles, ...styles].map((style, index) => {
    const job = jobOf(heaps[index % heaps.length] ?? "", "weekend");
    return { style, job: { ...job, contrast: index < styles.length ? "mixed" : "strong" } } as const;
  });
  const plans = jobs.map(({ style, job }) => makePlan(job, { style, seed: 1, effort: 20 }));
  const cases = fc.record({
    made: fc.nat(jobs.length - 1),
    /** What she knows of each row of the heap, in turn. */
    washed: fc.array(fc.constantFrom(true, false, null), { minLength: 1, maxLength: 5 }),
    cloths: fc.array(fc.constantFrom("", "", "flannel", "linen"), { minLength: 1, maxLength: 5 }),
  });
  type Case = typeof cases extends fc.Arbitrary<infer C> ? C : never;

  function knowing({ made, washed, cloths }: Case): { readonly plan: Plan; readonly job: Job } {
    const [plan, job] = [plans[made], jobs[made]?.job];
    if (plan === undefined || job === undefined) throw new Error("a plan was made of every job");
    const told = <P extends object>(piece: P, index: number) => ({
      ...piece,
      washed: washed[index % washed.length] ?? null,
      cloth: cloths[index % cloths.length] ?? "",
    });
    return {
      plan: { ...plan, pieces: plan.pieces.map(told) },
      job: { ...job, pieces: job.pieces.map(told) },
    };
  }

  it("is the same whatever is known of how its cloth was washed and woven", () => {
    const { plan, job } = knowing({ made: 3, washed: [false, true], cloths: ["", "flannel"] });
    expect(makePlan(job, { style: plan.style, seed: 1, effort: 20 })).toEqual(plan);
  });

  it("is advised on what is in it, each thing once, and the same every time", () => {
    const seen = new Set<AdviceKind>();
    const law = (asked: Case) => {
      const { plan, job } = knowing(asked);
      const advice = adviceFor(plan, job);
      for (const { kind } of advice) seen.add(kind);
      expect(new Set(advice.map(({ kind }) => kind)).size).toBe(advice.length);
      expect(adviceFor(plan, job)).toEqual(advice);
      for (const { where } of advice) expectInPlan(where, plan, job);
    };
    fc.assert(fc.property(cases, law), { numRuns: 50 });
    expect([...seen]).toEqual(expect.arrayContaining(["contrast", "unwashed", "weights", "dark-under-top"]));
  });

  it("of cloth about which nothing is known gets no advice", () => {
    for (const made of plans.keys()) {
      const { plan, job } = knowing({ made, washed: [null], cloths: [""] });
      const fabrics = job.fabrics.map((fabric) => ({ ...fabric, colour: undyed }));
      const unmarked = <P extends object>(piece: P) => ({ ...piece, direction: "none" as const });
      const pieces = { plan: plan.pieces.map(unmarked), job: job.pieces.map(unmarked) };
      const bare = { ...plan, fabrics, pieces: pieces.plan };
      // How a back is loaded has nothing to do with its cloth.
      const kinds = adviceFor(bare, { ...job, fabrics, pieces: pieces.job }).map(({ kind }) => kind);
      expect(kinds.filter((kind) => kind !== "load-sideways")).toEqual([]);
    }
  });
});

function expectInPlan(where: Where, { layout, steps }: Plan, { back, seam }: Job): void {
  const used = JSON.stringify(layout);
  const known = new Set(steps.map(({ id }) => id));
  expect(where.cells.length).toBeGreaterThan(0);
  expect(where.pieces.filter((id) => !used.includes(`"${id}"`))).toEqual([]);
  expect(where.steps.filter((id) => !known.has(id))).toEqual([]);
  for (const list of [where.pieces, where.steps]) expect(new Set(list).size).toBe(list.length);
  for (const { x, y, width, height } of where.cells) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(seam);
    expect(x + width).toBeLessThanOrEqual(back.width - seam);
    expect(y + height).toBeLessThanOrEqual(back.height - seam);
  }
}
