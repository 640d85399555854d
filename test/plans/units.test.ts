import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fabricOf, type Grain, type Job, type Piece, type SizedPiece } from "../../src/engine/cloth/index.ts";
import { checkLayout, figuresOf, type LayoutNode } from "../../src/engine/layout/index.ts";
import { areaOf, cut, inches, larger, length, millimetres } from "../../src/engine/length/index.ts";
import { stepsFor } from "../../src/engine/sewing/index.ts";
import { type Offer, seamLengthInside, unitsFrom } from "../../src/engine/units/index.ts";
import { heaps, jobOf } from "./heaps.ts";

// Every unit that a heap is said to give, sewn up as a back of its own and held against the checker's own formulas.

function checked(offer: Offer, job: Job) {
  const layout: LayoutNode = offer.made;
  const back = { width: length(layout.width + 2 * job.seam), height: length(layout.height + 2 * job.seam) };
  const cloth = { use: "plain", fabric: job.plain, width: job.clothWidth, length: inches(80) };
  return { ...job, layout, back, top: null, buy: offer.cloth.length > 0 ? [cloth] : [] };
}

function problemsOf(offer: Offer, job: Job): string[] {
  return checkLayout(checked(offer, job)).map((problem) => `${offer.pattern}: ${JSON.stringify(problem)}`);
}

function row(id: string, more: Partial<SizedPiece> & Pick<SizedPiece, "kind">): SizedPiece {
  return {
    id,
    width: cut(inches(5)),
    height: cut(inches(5)),
    count: 1,
    fabric: id,
    keep: "trim",
    use: "yes",
    direction: "none",
    grain: "straight",
    washed: null,
    cloth: "",
    name: "",
    ...more,
  };
}

function jobWith(pieces: readonly Piece[], more: Partial<Job> = {}): Job {
  const ids = ["plain", ...new Set(pieces.map(({ fabric }) => fabric))];
  return {
    unit: "in",
    step: inches(1, 8),
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    top: null,
    back: { width: inches(68), height: inches(88) },
    time: "any",
    wishes: [],
    contrast: "mixed",
    floor: inches(5, 2),
    clothWidth: inches(42),
    plain: "plain",
    fabrics: ids.flatMap((id) => fabricOf(id, id, "#888") ?? []),
    pieces,
    ...more,
  };
}

const eighths = (count: number) => cut(inches(count, 8));
const square = (side: number) => ({ width: eighths(side), height: eighths(side) });

describe.each(heaps)("what is left over: %s", (heap) => {
  const job = jobOf(heap, "weekend");
  const offers = unitsFrom(job);

  it("gives units, each of which the checker lets pass", () => {
    expect(offers.length).toBeGreaterThan(0);
    expect(offers.flatMap((offer) => problemsOf(offer, job))).toEqual([]);
  });

  it("gives the same ones again", () => {
    expect(unitsFrom(job)).toEqual(offers);
  });
});

describe("any heap", () => {
  const rows = fc.record({
    kind: fc.constantFrom(
      ...([
        "strip",
        "square",
        "rectangle",
        "block",
        "part-block",
        "triangle",
        "half-square-triangle",
        "odd",
      ] as const),
    ),
    width: fc.integer({ min: 6, max: 110 }),
    height: fc.integer({ min: 6, max: 110 }),
    count: fc.integer({ min: 1, max: 9 }),
    fabric: fc.constantFrom("moss", "rust", "oat"),
    keep: fc.constantFrom(...(["trim", "whole", "cut"] as const)),
    use: fc.constantFrom(
      ...(["first", "yes", "if-needed", "edge", "must", "keep-back", "give-away"] as const),
    ),
    direction: fc.constantFrom(...(["none", "none", "one-way", "stripe"] as const)),
    loose: fc.boolean(),
  });
  /** Sizes in eighths, or in millimetres that the ruler's step does not always show. */
  const jobs = fc
    .record({
      rows: fc.array(rows, { minLength: 1, maxLength: 14 }),
      metric: fc.boolean(),
      bag: fc.integer({ min: 10, max: 900 }),
    })
    .map(({ rows: made, metric, bag }) => {
      const side = (size: number) => cut(metric ? millimetres(size * 3.2) : inches(size, 8));
      const pieces: Piece[] = made.map(({ kind, width, height, loose, ...facts }, index) => {
        const grain: Grain = loose
          ? "unknown"
          : kind === "triangle"
            ? index % 2
              ? "legs"
              : "long-side"
            : "straight";
        const even = kind === "square" || kind === "triangle" || kind === "half-square-triangle";
        // Few sizes, so that there are like ones.
        const wide = side(even ? 20 + 8 * (width % 3) : width);
        return row(`row-${index}`, {
          kind,
          ...facts,
          grain,
          width: wide,
          height: even ? wide : side(height),
        });
      });
      const bits = {
        ...row("bag", { kind: "odd" }),
        kind: "crumbs" as const,
        area: areaOf(bag * inches(1) ** 2),
      };
      const ruler = metric ? { unit: "cm" as const, step: millimetres(1), seam: millimetres(7.5) } : {};
      return jobWith([...pieces, bits], ruler);
    });

  const eachOffer = (law: (offer: Offer, job: Job) => void) =>
    fc.assert(
      fc.property(jobs, (job) => {
        for (const offer of unitsFrom(job)) law(offer, job);
      }),
      { numRuns: 150 },
    );

  it("gives units that the checker lets pass", () => {
    eachOffer((offer, job) => expect(problemsOf(offer, job)).toEqual([]));
  });

  it("gives no more pieces than it has, as often as is said, and not once more", () => {
    eachOffer((offer, job) => {
      const countOf = (id: string) => job.pieces.find((piece) => piece.id === id)?.count ?? 0;
      expect(offer.atMost).toBeGreaterThan(0);
      expect(new Set(offer.pieces.map(({ piece }) => piece)).size).toBe(offer.pieces.length);
      for (const { piece, count } of offer.pieces)
        expect(count * offer.atMost).toBeLessThanOrEqual(countOf(piece));
      if (offer.pieces.length === 0) return;
      const once = offer.pieces.some(({ piece, count }) => count * (offer.atMost + 1) > countOf(piece));
      expect(once).toBe(true);
    });
  });

  it("keeps what is to be kept back or given away", () => {
    eachOffer((offer, job) => {
      const ids = [
        ...offer.pieces.map(({ piece }) => piece),
        offer.made.kind === "slab" ? offer.made.crumbs : undefined,
      ];
      const used = job.pieces.filter(({ id }) => ids.includes(id));
      expect(used.filter(({ use }) => use === "keep-back" || use === "give-away")).toEqual([]);
    });
  });

  it("lies on the ruler's step", () => {
    eachOffer(({ width, height }, { step }) => expect([width % step, height % step]).toEqual([0, 0]));
  });

  it("takes the joins that are said: as many as its steps and as the checker counts", () => {
    eachOffer((offer, job) => {
      const steps = stepsFor(offer.made, job);
      const seams = steps.map(({ kind, from }) =>
        kind === "slab" ? 0 : from.reduce((sum, part) => sum + part.count, -1),
      );
      expect(seams.reduce((sum, next) => sum + next, 0)).toBe(offer.joins);
      const figures = figuresOf(checked(offer, job));
      expect(figures.joins).toBe(offer.joins);
      if (offer.made.kind !== "unit") return;
      const parts = job.pieces.flatMap((piece) => {
        const count = offer.pieces.find((part) => part.piece === piece.id)?.count ?? 0;
        return piece.kind === "crumbs" || count === 0
          ? []
          : [{ kind: piece.kind, width: piece.width, count }];
      });
      expect(seamLengthInside(offer.made, parts, job.seam)).toBe(figures.seamLength);
    });
  });

  it("has no one-way print lying in it, and unknown grain inside alone", () => {
    eachOffer((offer, job) => {
      const used = job.pieces.filter(({ id }) => offer.pieces.some(({ piece }) => piece === id));
      if (offer.made.kind === "unit")
        expect(used.some(({ direction }) => direction === "one-way")).toBe(false);
      // The centre of a square in a square lies inside whatever happens.
      const outer = used.filter(({ kind }) => offer.pattern !== "square-in-square" || kind === "triangle");
      const isLoose = outer.some(({ grain }) => grain === "unknown" || grain === "bias");
      expect(offer.insideOnly || !isLoose).toBe(true);
    });
  });
});

describe("triangles", () => {
  const two = (grain: Grain, count: number, more: Partial<SizedPiece> = {}) => [
    row("moss", { kind: "triangle", ...square(39), count, grain, ...more }),
    row("rust", { kind: "triangle", ...square(39), count, grain, ...more }),
  ];
  const patterns = (pieces: readonly Piece[]) => [
    ...new Set(unitsFrom(jobWith(pieces)).map(({ pattern }) => pattern)),
  ];
  const of = (pattern: string, pieces: readonly Piece[]) =>
    unitsFrom(jobWith(pieces)).filter((offer) => offer.pattern === pattern);

  it("with the short sides on grain make half-square triangles and fours of them", () => {
    expect(patterns(two("legs", 4))).toEqual([
      "half-square-triangle",
      "pinwheel",
      "broken-dishes",
      "diamond",
    ]);
  });

  it("with the long side on grain make hourglasses", () => {
    expect(patterns(two("long-side", 4))).toEqual(["hourglass"]);
  });

  it("of unknown grain make all of them, inside only", () => {
    const offers = unitsFrom(jobWith(two("unknown", 4)));
    expect(new Set(offers.map(({ pattern }) => pattern)).size).toBe(5);
    expect(offers.every(({ insideOnly }) => insideOnly)).toBe(true);
  });

  // J. Wickell, About.com: 4 7/8 in triangles, the pinwheel finishes 8.
  it("finish as the trade says", () => {
    const [pinwheel] = of("pinwheel", two("legs", 9));
    expect(pinwheel).toMatchObject({
      width: inches(8),
      height: inches(8),
      rotations: [1, 2, 0, 3],
      pieces: [
        { piece: "moss", count: 4 },
        { piece: "rust", count: 4 },
      ],
      atMost: 2,
      joins: 7,
      fabrics: ["moss", "rust"],
      insideOnly: false,
    });
  });

  it("of one fabric make no pinwheel: nobody would see it", () => {
    expect(patterns([row("moss", { kind: "triangle", ...square(39), count: 8, grain: "legs" })])).toEqual([
      "half-square-triangle",
    ]);
  });

  it("of two sizes make nothing", () => {
    const odd = [
      row("moss", { kind: "triangle", ...square(39), grain: "legs" }),
      row("rust", { kind: "triangle", ...square(47), grain: "legs" }),
    ];
    expect(unitsFrom(jobWith(odd))).toEqual([]);
  });
});

describe("a square in a square", () => {
  const heap = (centre: Partial<SizedPiece>, leg: number, grain: Grain = "legs") =>
    jobWith([
      row("centre", { kind: "square", ...square(44), ...centre }),
      row("moss", { kind: "triangle", ...square(leg), count: 5, grain }),
    ]);
  const offered = (job: Job) => unitsFrom(job).filter(({ pattern }) => pattern === "square-in-square");

  // Quiltingboard, 12 October 2019: a centre of 5 in finished, corners from 4 1/2 in squares. 5 √2 is 7.07.
  it("keeps its points: it finishes at the next step of the ruler", () => {
    expect(offered(heap({}, 36))).toMatchObject([
      { width: inches(57, 8), joins: 4, atMost: 1, insideOnly: false },
    ]);
  });

  it("of a block, which stays whole", () => {
    expect(offered(heap({ kind: "block", keep: "whole" }, 36))).toHaveLength(1);
  });

  it("not of triangles that are too small, far too large, or on the bias outside", () => {
    expect(offered(heap({}, 35))).toEqual([]);
    expect(offered(heap({}, 60))).toEqual([]);
    expect(offered(heap({}, 36, "long-side"))).toEqual([]);
    expect(offered(heap({}, 36, "unknown"))).toMatchObject([{ insideOnly: true }]);
  });

  it("not round a print that has an up, nor in its own fabric", () => {
    expect(offered(heap({ direction: "one-way" }, 36))).toEqual([]);
    expect(offered(heap({ fabric: "moss" }, 36))).toEqual([]);
  });
});

describe("half-square triangles", () => {
  const four = (count: number, side = 28) =>
    row("sewn", { kind: "half-square-triangle", keep: "whole", ...square(side), count });

  it("make fours, laid as they came", () => {
    const offers = unitsFrom(jobWith([four(9)]));
    expect(offers.map(({ pattern, atMost, joins, width }) => [pattern, atMost, joins, width])).toEqual([
      ["pinwheel", 2, 3, inches(6)],
      ["broken-dishes", 2, 3, inches(6)],
      ["diamond", 2, 3, inches(6)],
    ]);
  });

  it("too few, or of a size the ruler does not show, make none", () => {
    expect(unitsFrom(jobWith([four(3)]))).toEqual([]);
    const offStep = { ...four(4), width: cut(inches(225, 64)), height: cut(inches(225, 64)) };
    expect(unitsFrom(jobWith([offStep]))).toEqual([]);
  });
});

describe("squares and strips", () => {
  const squareOf = (id: string, count: number) => row(id, { kind: "square", ...square(28), count });

  it("two fabrics are chequered, a row takes them by turns", () => {
    const offers = unitsFrom(jobWith([squareOf("moss", 3), squareOf("rust", 3)]));
    const mixed = offers.find(({ pattern, fabrics }) => pattern === "four-patch" && fabrics.length === 2);
    expect(mixed).toMatchObject({ width: inches(6), height: inches(6), joins: 3, atMost: 1 });
    const [longest] = offers
      .filter(({ pattern }) => pattern === "squares")
      .toSorted((a, b) => b.width - a.width);
    expect(longest).toMatchObject({ width: inches(18), height: inches(3), joins: 5 });
    const order =
      longest?.made.kind === "join"
        ? longest.made.parts.map((part) => part.kind === "piece" && part.piece)
        : [];
    expect(order).toEqual(["moss", "rust", "moss", "rust", "moss", "rust"]);
  });

  const strip = (id: string, wide: number, long: number) =>
    row(id, { kind: "strip", keep: "cut", width: eighths(wide), height: eighths(long) });

  it("strips of like length are cut to the shortest", () => {
    const offers = unitsFrom(
      jobWith([strip("moss", 20, 132), strip("rust", 16, 128), strip("oat", 20, 112)]),
    );
    // 16 in and 16 1/2 in go together, 14 in does not.
    expect(offers.map(({ pattern, width, height, fabrics }) => [pattern, width, height, fabrics])).toEqual([
      ["strip-set", inches(7, 2), inches(31, 2), ["moss", "rust"]],
      ["strip-set", inches(31, 2), inches(7, 2), ["moss", "rust"]],
    ]);
  });

  it("beside each long seam of a set one strip is an inch longer, or the set is as much shorter", () => {
    const longOf = (...longs: readonly number[]) => {
      const rows = longs.map((long, at) => strip(`strip-${at}`, 16, long));
      return unitsFrom(jobWith(rows)).map(({ width, height }) => larger(width, height))[0];
    };
    // 20 in and half an inch more, an inch more; and 18 in finished, which is no long seam yet.
    expect(longOf(164, 160)).toBe(inches(37, 2));
    expect(longOf(168, 160)).toBe(inches(39, 2));
    expect(longOf(148, 148)).toBe(inches(18));
  });

  it("a round about a small block", () => {
    const strips = [1, 2, 3, 4].map((n) => strip(`strip-${n}`, 16, 100 + 24 * n));
    const block = row("block", { kind: "block", keep: "whole", ...square(52) });
    const [round] = unitsFrom(jobWith([...strips, block])).filter(({ pattern }) => pattern === "rounds");
    // 6 in, and 1 1/2 in all round.
    expect(round).toMatchObject({ width: inches(9), height: inches(9), joins: 4, atMost: 1 });
  });
});

describe("blocks", () => {
  const block = (id: string, side: number) => row(id, { kind: "block", keep: "whole", ...square(side) });

  it("of several widths are brought to one by strips that are no slivers", () => {
    const offers = unitsFrom(jobWith([block("large", 100), block("middle", 92), block("small", 52)]));
    // 12, 11 and 6 in: with 12 the middle one would get 1 in of strip; at 14 all do.
    const wide = offers.filter(({ made }) => made.kind === "join" && made.direction === "beside");
    expect(wide.map(({ width, height, joins }) => [width, height, joins])).toEqual([
      [inches(14), inches(12), 1],
      [inches(14), inches(11), 1],
      [inches(14), inches(6), 2],
    ]);
  });

  it("that fit already need nothing", () => {
    expect(unitsFrom(jobWith([block("one", 100), block("other", 100)]))).toEqual([]);
  });

  it("off the ruler's step get a strip that takes the difference", () => {
    const odd = { ...block("odd", 100), width: cut(inches(601, 64)), height: cut(inches(601, 64)) };
    const job = jobWith([odd]);
    const [offer] = unitsFrom(job);
    expect(offer?.joins).toBe(2);
    expect(offer && problemsOf(offer, job)).toEqual([]);
  });
});

describe("slabs", () => {
  const bag = (squareInches: number): Piece => ({
    ...row("bag", { kind: "odd" }),
    kind: "crumbs",
    area: areaOf(squareInches * inches(1) ** 2),
  });

  // Two fifths of the bag show: 400 sq in of 1000; 6 1/2 × 6 1/2 is 42 1/4.
  it("of crumbs, so many of each size", () => {
    const offers = unitsFrom(jobWith([bag(1000)]));
    expect(offers.map(({ width, atMost }) => [width, atMost])).toEqual([
      [inches(6), 9],
      [inches(8), 5],
      [inches(12), 2],
    ]);
  });

  it("of what is too small to be placed, never of what is sewn", () => {
    const small = row("small", { kind: "square", ...square(16), count: 60 });
    const sewn = row("sewn", { kind: "half-square-triangle", ...square(16), count: 3, keep: "trim" });
    const slabs = unitsFrom(jobWith([small, sewn])).filter(({ pattern }) => pattern === "slab");
    // A 2 in square shows 2 1/4 sq in: 19 of them make 42 3/4.
    expect(slabs.map(({ width, pieces, atMost }) => [width, pieces, atMost])).toEqual([
      [inches(6), [{ piece: "small", count: 19 }], 3],
      [inches(8), [{ piece: "small", count: 33 }], 1],
    ]);
  });
});
