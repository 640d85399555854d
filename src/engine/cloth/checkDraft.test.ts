import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { area, centimetres, inches, length, millimetres } from "../length/index.ts";
import { checkDraft } from "./checkDraft.ts";
import type { Draft, DraftPiece } from "./draft.ts";
import { isUndyed, undyed } from "./fabrics.ts";
import type { DraftProblem } from "./problems.ts";
import { grains, type Job, kinds } from "./types.ts";

const square: DraftPiece = {
  row: 2,
  kind: "square",
  width: inches(5),
  height: inches(5),
  fabric: "oat",
  colour: "#aa8866",
};

function draft(change: Partial<Draft> = {}): Draft {
  const back = { width: inches(68), height: inches(88) };
  return { unit: "in", back, plain: { name: "unbleached" }, pieces: [square], ...change };
}

const withPiece = (change: Partial<DraftPiece>) => draft({ pieces: [{ ...square, ...change }] });

function problemsOf(of: Draft): readonly DraftProblem[] {
  const checked = checkDraft(of);
  return checked.ok ? checked.value.notes : checked.error;
}

function jobOf(of: Draft): Job {
  const checked = checkDraft(of);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}

describe("a draft with nothing wrong", () => {
  test("is a job without notes", () => expect(problemsOf(draft())).toEqual([]));

  test("what she left out takes the usual", () => {
    const job = jobOf(draft({ pieces: [{ row: 1, width: inches(5, 2), height: inches(20) }] }));
    expect(job).toMatchObject({
      step: inches(1, 8),
      seam: inches(1, 4),
      plainSeam: inches(1, 2),
      floor: inches(5, 2),
      clothWidth: inches(42),
      time: "weekend",
      top: null,
    });
    expect(job.pieces[0]).toEqual({
      id: "strip-1",
      kind: "strip",
      width: inches(5, 2),
      height: inches(20),
      count: 1,
      fabric: "undyed",
      keep: "cut",
      use: "yes",
      direction: "none",
      grain: "straight",
      washed: null,
      cloth: "",
      name: "",
    });
  });

  test("in centimetres every cut size is a whole millimetre: any two seams together are", () => {
    const back = { width: centimetres(172), height: centimetres(222) };
    const { step, seam, plainSeam } = jobOf(draft({ unit: "cm", back }));
    expect(step).toBe(millimetres(1));
    for (const seams of [2 * seam, seam + plainSeam, 2 * plainSeam]) expect(seams % step).toBe(0);
  });

  test("what she gave stays as it is, off the ruler too", () => {
    const odd = {
      width: millimetres(63),
      height: length(54_321),
      count: 7,
      use: "must",
      name: " leaf ",
    } as const;
    expect(jobOf(withPiece(odd)).pieces[0]).toMatchObject({ ...odd, name: "leaf" });
  });

  test("a kind in the table is kept, whatever its sides", () => {
    expect(jobOf(withPiece({ kind: "block", height: inches(40) })).pieces[0]?.kind).toBe("block");
  });

  test("pieces are numbered within their kind, in the table's order", () => {
    const kindsInOrder = ["strip", "square", "strip", "block", "square", "strip"] as const;
    const pieces = kindsInOrder.map((kind, index) => ({ ...square, kind, row: index + 2 }));
    const ids = jobOf(draft({ pieces })).pieces.map(({ id }) => id);
    expect(ids).toEqual(["strip-1", "square-1", "strip-2", "block-1", "square-2", "strip-3"]);
  });

  test("crumbs by area or by weight", () => {
    const crumbs = { row: 1, kind: "crumbs", colour: "teal" } as const;
    const pieces = [
      { ...crumbs, area: area(inches(10), inches(12)) },
      { row: 2, colour: "teal", weight: 28.349523125 },
    ];
    const [one, other] = jobOf(draft({ pieces })).pieces;
    expect(one).toMatchObject({ id: "crumbs-1", area: 120 * inches(1) ** 2 });
    expect(other).toMatchObject({ id: "crumbs-2", area: 300 * inches(1) ** 2 });
  });
});

describe("every problem of a row", () => {
  const narrow = { size: inches(1, 2), seams: inches(1, 2) };

  test.each<[string, Partial<DraftPiece>, object[]]>([
    ["size 0", { width: length(0) }, [{ kind: "size-zero", field: "width", severity: "stop" }]],
    ["size below 0", { height: length(-1) }, [{ kind: "size-zero", field: "height", severity: "stop" }]],
    [
      "too large",
      { height: inches(10_001) },
      [{ kind: "piece-too-large", field: "height", most: inches(10_000) }],
    ],
    [
      "narrower than its seams",
      { kind: "strip", width: inches(1, 2) },
      [{ kind: "narrower-than-seams", field: "width", severity: "note", ...narrow }],
    ],
    [
      "a triangle that is all seam although both legs are longer than two seams",
      { kind: "triangle", width: inches(3, 4), height: inches(7, 8) },
      [{ kind: "narrower-than-seams", field: "width", size: inches(3, 4) }],
    ],
    ["count 0", { count: 0 }, [{ kind: "count-too-small", field: "count", count: 0, severity: "stop" }]],
    ["count below 0", { count: -3 }, [{ kind: "count-too-small", count: -3 }]],
    ["half a piece", { count: 1.5 }, [{ kind: "count-not-whole", count: 1.5 }]],
    ["no number of pieces", { count: Number.NaN }, [{ kind: "count-not-whole" }]],
    ["endless pieces", { count: Number.POSITIVE_INFINITY }, [{ kind: "count-not-whole" }]],
    ["a billion pieces", { count: 1e9 }, [{ kind: "count-too-large", count: 1e9, most: 5000 }]],
    ["no such colour", { colour: "tael" }, [{ kind: "unknown-colour", field: "colour", colour: "tael" }]],
    ["see-through", { colour: "transparent" }, [{ kind: "unknown-colour" }]],
    ["grain of a triangle on a square", { grain: "legs" }, [{ kind: "grain-not-for-kind", grain: "legs" }]],
    [
      "grain of a square on a triangle",
      { kind: "triangle", grain: "bias" },
      [{ kind: "grain-not-for-kind" }],
    ],
    ["an area beside its sides", { area: area(inches(5), inches(5)) }, [{ kind: "not-used", field: "area" }]],
    ["a weight beside its sides", { weight: 3 }, [{ kind: "not-used", field: "weight", severity: "note" }]],
  ])("%s", (_, change, expected) => {
    const found = problemsOf(withPiece(change));
    expect(found).toHaveLength(expected.length);
    expect(found).toMatchObject(expected.map((problem) => ({ row: 2, ...problem })));
  });

  const bare = { row: 2, colour: "teal" } as const;
  test.each<[string, DraftPiece, object[]]>([
    [
      "nothing but a colour",
      bare,
      [
        { kind: "size-missing", field: "width" },
        { kind: "size-missing", field: "height" },
      ],
    ],
    ["one side", { ...bare, width: inches(5) }, [{ kind: "size-missing", field: "height" }]],
    ["crumbs of no size", { ...bare, kind: "crumbs" }, [{ kind: "crumbs-without-amount", field: "area" }]],
    ["crumbs of nothing", { ...bare, kind: "crumbs", weight: 0 }, [{ kind: "amount-zero", field: "weight" }]],
    ["crumbs of no number", { ...bare, kind: "crumbs", weight: Number.NaN }, [{ kind: "amount-zero" }]],
    [
      "a ton of crumbs",
      { ...bare, kind: "crumbs", weight: 1e6 },
      [{ kind: "amount-too-large", field: "weight" }],
    ],
    [
      "crumbs counted",
      { ...bare, kind: "crumbs", weight: 30, count: 3 },
      [{ kind: "crumbs-counted", count: 3 }],
    ],
    [
      "crumbs weighed and measured",
      { ...bare, kind: "crumbs", weight: 30, area: area(inches(9), inches(9)) },
      [{ kind: "area-and-weight", field: "weight", severity: "note" }],
    ],
    [
      "crumbs with sides",
      { ...bare, kind: "crumbs", weight: 30, width: inches(9) },
      [{ kind: "not-used", field: "width", severity: "note" }],
    ],
  ])("%s", (_, piece, expected) => {
    const found = problemsOf(draft({ pieces: [piece] }));
    expect(found).toHaveLength(expected.length);
    expect(found).toMatchObject(expected);
  });
});

describe("every problem of the job", () => {
  const back = (width: number, height: number) => ({
    back: { width: inches(width), height: inches(height) },
  });
  const top = (width: number, height: number, extra = inches(4)) => ({
    top: { width: inches(width), height: inches(height), method: "frame", extra } as const,
  });

  test.each<[string, Partial<Draft>, object[]]>([
    ["back 0", back(0, 88), [{ kind: "back-zero", side: "width", severity: "stop" }]],
    ["back over 400 in", back(68, 401), [{ kind: "back-too-large", side: "height", most: inches(400) }]],
    ["back of 400 in", back(400, 400), []],
    [
      "back without room for one cell",
      back(2, 88),
      [{ kind: "back-too-small", side: "width", least: inches(5, 2) }],
    ],
    ["top 0", top(60, 0), [{ kind: "top-zero", side: "height" }]],
    [
      "top larger than the back",
      top(70, 60),
      [{ kind: "top-larger-than-back", side: "width", top: inches(70) }],
    ],
    ["top and extra just fit", top(60, 80), []],
    [
      "back smaller than top and extra",
      top(62, 80),
      [{ kind: "back-short-of-extra", side: "width", wanted: inches(70), severity: "note" }],
    ],
    ["extra below 0", top(60, 80, length(-1)), [{ kind: "extra-out-of-range", field: "top" }]],
    ["step 0", { step: length(0) }, [{ kind: "out-of-range", field: "step", least: inches(1, 64) }]],
    ["step of an inch", { step: inches(1) }, [{ kind: "out-of-range", field: "step" }]],
    ["seam 0", { seam: length(0) }, [{ kind: "out-of-range", field: "seam" }]],
    ["seam of 2 in", { seam: inches(2) }, [{ kind: "out-of-range", field: "seam" }]],
    ["plain seam of 2 in", { plainSeam: inches(2) }, [{ kind: "out-of-range", field: "plainSeam" }]],
    ["floor of 20 in", { floor: inches(20) }, [{ kind: "out-of-range", field: "floor" }]],
    ["floor 0", { floor: length(0) }, []],
    ["cloth 2 in wide", { clothWidth: inches(2) }, [{ kind: "out-of-range", field: "clothWidth" }]],
    ["extra-wide cloth", { clothWidth: inches(118) }, []],
    [
      "plain cloth of no colour",
      { plain: { name: "", colour: "whiteish" } },
      [{ kind: "unknown-plain-colour" }],
    ],
    ["no pieces", { pieces: [] }, [{ kind: "nothing-to-plan", field: "pieces" }]],
    ["all kept back", { pieces: [{ ...square, use: "keep-back" }] }, [{ kind: "nothing-to-plan" }]],
    [
      "5,001 pieces",
      { pieces: [{ ...square, count: 5000 }, square] },
      [{ kind: "too-many-pieces", total: 5001, most: 5000 }],
    ],
    ["5,000 pieces", { pieces: [{ ...square, count: 4999 }, square] }, []],
  ])("%s", (_, change, expected) => {
    const found = problemsOf(draft(change));
    expect(found).toHaveLength(expected.length);
    expect(found).toMatchObject(expected.map((problem) => ({ row: null, ...problem })));
  });

  test("a back between two marks of the ruler is made up to the next, and she is told", () => {
    const between = { width: inches(1089, 16), height: inches(88) };
    expect(problemsOf(draft({ back: between }))).toEqual([
      {
        kind: "back-off-step",
        severity: "note",
        row: null,
        field: "back",
        side: "width",
        size: inches(1089, 16),
        made: inches(545, 8),
        step: inches(1, 8),
      },
    ]);
    expect(jobOf(draft({ back: between })).back).toEqual({ width: inches(545, 8), height: inches(88) });
  });
});

describe("all at once", () => {
  test("rows first, in their order, stops and notes together; then the job", () => {
    const pieces: DraftPiece[] = [
      { row: 7, kind: "strip", width: length(0), height: inches(20), count: 0 },
      { row: 3, kind: "square", width: inches(1, 2), height: inches(5), colour: "tael" },
    ];
    const found = problemsOf(
      draft({ pieces, step: length(0), back: { width: inches(500), height: inches(88) } }),
    );
    expect(found.map(({ row, field, kind }) => [row, field, kind])).toEqual([
      [3, "width", "narrower-than-seams"],
      [3, "colour", "unknown-colour"],
      [7, "width", "size-zero"],
      [7, "count", "count-too-small"],
      [7, "colour", "no-colour"],
      [null, "back", "back-too-large"],
      [null, "step", "out-of-range"],
    ]);
  });

  const anyLength = fc.integer({ min: -10, max: 4_000_000 }).map(length);
  const anyPiece = fc.record(
    {
      row: fc.integer({ min: 1, max: 50 }),
      kind: fc.constantFrom(...kinds),
      width: anyLength,
      height: anyLength,
      count: fc.oneof(fc.integer({ min: -2, max: 40 }), fc.double()),
      fabric: fc.constantFrom("", " ", "oat", "Oat", "plain", "undyed", "фиалка", "__proto__"),
      colour: fc.constantFrom("", "teal", "#008080", "tael", "#e9e1d0", undyed),
      grain: fc.constantFrom(...grains),
      area: fc.integer({ min: -1, max: 1e12 }).map((units) => area(length(units), length(1))),
      weight: fc.double(),
    },
    { requiredKeys: ["row"] },
  );

  test("never throws; a job has every row, each with a fabric of its own list, ids told apart", () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 1, maxLength: 12 }), (pieces) => {
        const checked = checkDraft(draft({ pieces }));
        const found = checked.ok ? checked.value.notes : checked.error;
        expect(found.some(({ severity }) => severity === "stop")).toBe(!checked.ok);
        if (!checked.ok) return;
        const { job } = checked.value;
        const fabricIds = job.fabrics.map(({ id }) => id);
        expect(new Set(fabricIds).size).toBe(fabricIds.length);
        expect(fabricIds).toContain(job.plain);
        expect(job.pieces.map(({ count }) => count)).toEqual(pieces.map(({ count = 1 }) => count));
        expect(new Set(job.pieces.map(({ id }) => id)).size).toBe(pieces.length);
        for (const { fabric } of job.pieces) expect(fabricIds.indexOf(fabric)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });
});

describe("fabrics", () => {
  const cloths = (...pieces: Partial<DraftPiece>[]) =>
    draft({
      pieces: pieces.map((piece, index) => ({
        row: index + 2,
        width: inches(5),
        height: inches(5),
        ...piece,
      })),
    });
  const fabricIds = (of: Draft) => jobOf(of).pieces.map(({ fabric }) => fabric);

  test("one for each name and colour, however the name is typed", () => {
    const same = cloths(
      { fabric: "Harbour blue", colour: "teal" },
      { fabric: " harbour  blue ", colour: "#008080" },
      { fabric: "harbour blue" },
    );
    expect(fabricIds(same)).toEqual(["harbour-blue", "harbour-blue", "harbour-blue"]);
    expect(problemsOf(same)).toEqual([]);
  });

  test("a name without a colour takes the one it has further down", () => {
    expect(fabricIds(cloths({ fabric: "oat" }, { fabric: "oat", colour: "tan" }))).toEqual(["oat", "oat"]);
  });

  test("two colours under one name are two fabrics, and she is told", () => {
    const two = cloths({ fabric: "oat", colour: "tan" }, { fabric: "oat", colour: "navy" });
    expect(fabricIds(two)).toEqual(["oat", "oat-2"]);
    expect(problemsOf(two)).toEqual([
      {
        kind: "colour-conflict",
        severity: "note",
        row: 3,
        field: "colour",
        fabric: "oat",
        colour: "navy",
        firstRow: 2,
        firstColour: "tan",
      },
    ]);
  });

  test("without a name it is called by its colour; with neither it is undyed and nameless", () => {
    const job = jobOf(cloths({ colour: "#aa8866" }, {}, { width: inches(9) }));
    expect(job.pieces.map(({ fabric }) => fabric)).toEqual(["aa8866", "undyed", "undyed"]);
    expect(job.fabrics.map(({ name }) => name)).toEqual(["#aa8866", "", "unbleached"]);
    expect(job.fabrics.map(isUndyed)).toEqual([false, true, false]);
  });

  test("ids are words that can stand anywhere, and none is the plain cloth's", () => {
    const ids = fabricIds(
      cloths({ fabric: "Müllers Grün/2" }, { fabric: "plain" }, { fabric: "лён" }, { fabric: "—" }),
    );
    expect(ids).toEqual(["mullers-grun-2", "plain-2", "лен", "undyed"]);
  });

  test("a colour typed without its # is kept so that it can be drawn", () => {
    expect(jobOf(cloths({ fabric: "oat", colour: "AA8866" })).fabrics[0]?.colour).toBe("#aa8866");
  });

  test("a fabric's colour is read once, its shares add up to one", () => {
    const [fabric] = jobOf(cloths({ fabric: "oat", colour: "white" })).fabrics;
    expect(fabric?.colours.map(({ share }) => share)).toEqual([1]);
    expect(fabric?.colours[0]?.lab.l).toBeCloseTo(100, 6);
  });
});

describe("how fabrics meet", () => {
  const wished = (change: Partial<Draft>) => {
    const { wishes, contrast } = jobOf(draft(change));
    return [wishes, contrast];
  };

  test("mixed as a rule, strong for who wishes for more contrast", () => {
    expect(wished({})).toEqual([[], "mixed"]);
    expect(wished({ wishes: ["sew-less", "more-contrast", "sew-less"] })).toEqual([["sew-less"], "strong"]);
  });

  test("what she says of it goes before the wish", () => {
    expect(wished({ contrast: "blend", wishes: ["more-contrast"] })).toEqual([[], "blend"]);
    expect(wished({ contrast: "strong" })).toEqual([[], "strong"]);
  });
});

describe("the plain cloth to buy", () => {
  const plainColour = (of: Draft) => jobOf(of).fabrics.find(({ id }) => id === "plain")?.colour;

  test("hers, if she says", () => {
    expect(plainColour(draft({ plain: { name: "ink", colour: "navy" } }))).toBe("navy");
  });

  test("unbleached under most heaps, ink grey under a pale one", () => {
    expect(plainColour(draft())).toBe("#e9e1d0");
    expect(plainColour(withPiece({ colour: "#f4f0e8" }))).toBe("#4a5460");
  });

  test("a heap of unknown colour says nothing", () => {
    expect(plainColour(draft({ pieces: [{ row: 1, width: inches(9), height: inches(9) }] }))).toBe("#e9e1d0");
  });

  test("her lengths are plain themselves and do not count", () => {
    const length = { row: 1, kind: "length", width: inches(42), height: inches(90), fabric: "oat" } as const;
    const dark = { ...square, row: 2, colour: "black", fabric: "black" };
    expect(plainColour(draft({ pieces: [{ ...length, colour: "#f4f0e8" }, dark] }))).toBe("#e9e1d0");
  });

  test("each piece counts by its cloth, not by its row", () => {
    const pale = { ...square, colour: "white", fabric: "white", count: 40 };
    const dark = { ...square, row: 3, colour: "black", fabric: "black" };
    expect(plainColour(draft({ pieces: [pale, dark, { ...dark, row: 4 }, { ...dark, row: 5 }] }))).toBe(
      "#4a5460",
    );
  });
});
