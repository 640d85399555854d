import { describe, expect, test } from "vitest";
import { everyAdvice } from "../../test/generators/everyAdvice.ts";
import {
  draftProblems,
  layoutProblems,
  lengthProblems,
  planProblems,
  sizeProblems,
  tableProblems,
} from "../../test/generators/everyProblem.ts";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { styles } from "../engine/back/index.ts";
import { directions, grains, keeps, kinds, methods, times, uses } from "../engine/cloth/index.ts";
import { clothRoles } from "../engine/layout/index.ts";
import { areaOf, cut, finished, inches, unitsPerInch } from "../engine/length/index.ts";
import { presses, type Step } from "../engine/sewing/index.ts";
import { buyUses } from "../engine/supplies/index.ts";
import { type CliLocale, cautions, cliLocales, type Words, wordsFor } from "./index.ts";
import { bracketed, isBracketed } from "./pseudo.ts";

const plan = handMadePlan();
const advices = everyAdvice(plan);

/** Every text of a catalogue, by the entry that gives it. Each entry must be here: the type says so. */
const textsOf: { readonly [K in Exclude<keyof Words, "locale">]: (words: Words) => readonly string[] } = {
  length: (words) => [words.length(inches(25, 2))],
  size: (words) => [words.size({ width: inches(25, 2), height: inches(161, 8) })],
  area: (words) => [
    words.area(areaOf(120 * unitsPerInch ** 2)),
    words.area(areaOf(1.26 * unitsPerInch ** 2)),
  ],
  number: (words) => [words.number(1234)],
  percent: (words) => [words.percent(0.342)],
  bolt: (words) => [words.bolt(inches(103))],
  time: (words) => [words.time([10, 12]), words.time([20, 40]), words.time([60, 60]), words.time([95, 212])],
  kind: (words) => kinds.flatMap((kind) => [words.kind(kind, 1), words.kind(kind, 2)]),
  style: (words) => styles.map(words.style),
  use: (words) => uses.map(words.use),
  keep: (words) => keeps.map(words.keep),
  direction: (words) => directions.map(words.direction),
  grain: (words) => grains.map(words.grain),
  method: (words) => methods.map(words.method),
  timeGiven: (words) => times.map(words.timeGiven),
  role: (words) => clothRoles.map(words.role),
  pattern: (words) => ["pinwheel", "strip-set", "unheard-of"].map(words.pattern),
  batting: (words) => [words.batting()],
  muslin: (words) => [words.muslin()],
  selvage: (words) => [words.selvage()],
  piece: (words) => ["strip-4", "half-square-triangle-12", "mine"].map(words.piece),
  unit: (words) => ["23", "mine"].map(words.unit),
  place: (words) => [words.place([1, 0], plan.layout), words.place([2, 4]), words.place([])],
  styleIs: (words) => styles.map(words.styleIs),
  press: (words) => presses.map(words.press),
  step: (words) => plan.steps.map((step) => words.step(step, plan)),
  stepPart: (words) => plan.steps.flatMap(({ from }) => from.map((part) => words.stepPart(part, plan))),
  buy: (words) =>
    buyUses.map((use) => words.buy({ use, fabric: "f1", width: inches(42), length: inches(30) }, plan)),
  figures: (words) =>
    [null, 2, 10, 20, 40].flatMap((contrast) =>
      words.figures({
        ...plan.figures,
        contrast,
        trimWaste: (contrast ?? 0) / 1000,
        plainCells: contrast ?? 0,
      }),
    ),
  usable: (words) =>
    times.flatMap((time) =>
      [12, 100].map((side) =>
        words.usable({ used: areaOf(inches(12) ** 2), most: areaOf(inches(side) ** 2), time }),
      ),
    ),
  unused: (words) => [
    words.unused([]),
    words.unused([{ piece: "strip-1", count: 1 }]),
    words.unused(Array.from({ length: 12 }, (_, index) => ({ piece: `strip-${index + 1}`, count: 2 }))),
  ],
  reasons: (words) =>
    [
      [{ kind: "lighter", than: "cross", work: 0.32, used: 0.04 } as const],
      [{ kind: "lighter", than: "cross", work: 0.32, used: 0 } as const],
      [{ kind: "least-work", minutes: [100, 220] } as const, { kind: "nothing-to-buy" } as const],
      [{ kind: "all-over" } as const, { kind: "uses-most", used: 0.97 } as const],
      [{ kind: "buys-least" } as const, { kind: "strongest-contrast", contrast: 22 } as const],
      [{ kind: "between", used: 0.5, minutes: [60, 90] } as const],
    ].map(words.reasons),
  choiceNote: (words) => [
    words.choiceNote({ kind: "no-more", count: 1 }),
    words.choiceNote({ kind: "no-more", count: 2 }),
    words.choiceNote({ kind: "must-buy", area: areaOf(inches(36) ** 2) }),
  ],
  advice: (words) => advices.map((advice) => words.advice(advice, plan)),
  caution: (words) => cautions.map(words.caution),
  tableProblem: (words) => tableProblems.map(words.tableProblem),
  draftProblem: (words) => draftProblems.map(words.draftProblem),
  lengthProblem: (words) =>
    (["size", "area", "weight"] as const).flatMap((measured) =>
      lengthProblems.map((problem) => words.lengthProblem(problem, measured)),
    ),
  sizeProblem: (words) => sizeProblems.map(words.sizeProblem),
  layoutProblem: (words) =>
    layoutProblems.flatMap((problem) => [
      words.layoutProblem(problem),
      words.layoutProblem(problem, plan.layout),
    ]),
  planProblem: (words) => planProblems.map(words.planProblem),
};

const allTexts = (locale: CliLocale, unit: "in" | "cm" = "in") =>
  Object.values(textsOf).flatMap((texts) => texts(wordsFor(locale, unit)));

const spoken = cliLocales.filter((locale) => locale !== "en-XA");
const us = wordsFor("en-US");

describe("no text bypasses the catalogue", () => {
  test("every text of the bracketed locale is in brackets, once", () => {
    const texts = allTexts("en-XA");
    expect(texts.length).toBeGreaterThan(300);
    expect(texts.filter((text) => !isBracketed(text))).toEqual([]);
    expect(texts.filter((text) => text.slice(1, -1).match(/[⟦⟧]/))).toEqual([]);
  });

  test("it says the same as the locale it is made of", () => {
    expect(allTexts("en-XA")).toEqual(allTexts("en-US").map(bracketed));
  });

  test("accents keep a letter recognisable and hit each word", () => {
    expect(bracketed("Strip 4")).toBe("⟦Šţŕîþ 4⟧");
  });
});

describe.each(spoken)("voice of %s", (locale) => {
  const texts = [...allTexts(locale, "in"), ...allTexts(locale, "cm")];

  test("is calm and speaks no program's words", () => {
    const wrong =
      /!|\b(invalid|illegal|null|undefined|NaN|Infinity|session|error|exception|parse[ds]?|string|integer|boolean|array|must not|please|oops|sorry|failed)\b|\[object/i;
    expect(texts.filter((text) => wrong.test(text))).toEqual([]);
  });

  test("leaves nothing empty, doubled or open", () => {
    expect(texts.filter((text) => /^\s|\s$| {2}|\.\.|,,|\( |\$\{/.test(text) || text === "")).toEqual([]);
  });

  test("its problems are whole sentences that say what is so and what to do", () => {
    const words = wordsFor(locale);
    const problems = [
      ...tableProblems.map(words.tableProblem),
      ...draftProblems.filter(({ severity }) => severity === "stop").map(words.draftProblem),
      ...layoutProblems.map((problem) => words.layoutProblem(problem)),
    ];
    expect(problems.filter((text) => !/^[A-Z].*\.$/.test(text))).toEqual([]);
    // Two sentences at least: after the colon, or after the first full stop.
    expect(problems.filter((text) => (text.match(/[.:](?= [A-Za-z“])/g) ?? []).length < 1)).toEqual([]);
  });

  test("never writes inches as decimals", () => {
    const steps = plan.steps.map((step) => wordsFor(locale).step(step, plan));
    expect(steps.filter((text) => /\d\.\d+\s?in/.test(text))).toEqual([]);
  });
});

describe("the trade's words of each country", () => {
  test.each([
    ["en-US", "batting", "muslin", "selvage", "on a home machine", "2⅞ yd"],
    ["en-GB", "wadding", "calico", "selvedge", "on a domestic machine", "2.7 m"],
    ["en-AU", "wadding", "calico", "selvedge", "on a domestic machine", "2.7 m"],
  ] as const)("%s", (locale, batting, muslin, selvage, machine, bolt) => {
    const words = wordsFor(locale);
    expect([words.batting(), words.muslin(), words.selvage(), words.method("machine")]).toEqual([
      batting,
      muslin,
      selvage,
      machine,
    ]);
    expect(words.bolt(inches(103)).replace("\u00a0", " ")).toBe(bolt);
  });

  test("no British spelling in American texts, nor the other way round", () => {
    // The plan's own names are hers and stay as they are.
    const spelling = (locale: CliLocale) =>
      Object.entries(textsOf)
        .filter(([entry]) => entry !== "step" && entry !== "stepPart")
        .flatMap(([, texts]) => texts(wordsFor(locale)));
    expect(
      spelling("en-US").filter((text) => /colour|centre|neighbour|wadding|calico|grey\b|\bcot\b/i.test(text)),
    ).toEqual([]);
    expect(
      spelling("en-GB").filter((text) =>
        /color\b|colors\b|center|neighbor\b|batting|muslin|gray\b|\bcrib\b/i.test(text),
      ),
    ).toEqual([]);
  });
});

describe("cloth off the bolt is never short", () => {
  test.each([
    [inches(36), "1 yd", "1 m"],
    [inches(73, 2), "1⅛ yd", "1 m"],
    [inches(4), "⅛ yd", "0.2 m"],
    [inches(30), "⅞ yd", "0.8 m"],
    [inches(288), "8 yd", "7.4 m"],
    // 110 in is 3.06 yd (worked example, community source of a 108 in wide backing).
    [inches(110), "3⅛ yd", "2.8 m"],
  ])("%d", (length, yards, metres) => {
    expect(us.bolt(length).replace("\u00a0", " ")).toBe(yards);
    expect(wordsFor("en-GB").bolt(length).replace("\u00a0", " ")).toBe(metres);
  });
});

describe("what is said, read aloud", () => {
  const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

  test("a fraction that became a date", () => {
    expect(
      us.tableProblem({
        kind: "not-a-size",
        row: 12,
        field: "width",
        problem: { kind: "date", text: "2-Jan", fraction: "1/2" },
      }),
    ).toBe(
      "Row 12, width: “2-Jan” looks like a date. A spreadsheet may have changed 1/2. Type 1/2 again as text, or as 0.5.",
    );
  });

  test("a strip that is all seam", () => {
    const [problem] = draftProblems.filter(({ kind }) => kind === "narrower-than-seams");
    expect(problem && plain(us.draftProblem(problem))).toBe(
      "Row 4, width: ⅜ in is no wider than its two seams, ½ in together. Sew it into a slab, or leave it out.",
    );
  });

  test("names: leftovers by pile and number, units by step, places by row", () => {
    expect(us.piece("strip-4")).toBe("strip 4");
    expect(us.piece("half-square-triangle-12")).toBe("half-square triangle 12");
    expect(us.piece("odd-1")).toBe("odd piece 1");
    expect(us.unit("23")).toBe("unit 23");
    expect(us.place([0, 3], plan.layout)).toBe("row 1, place 4");
    expect(us.kind("square", 1)).toBe("square");
    expect(us.kind("square", 0)).toBe("squares");
  });

  test("time as a range, never a promise", () => {
    expect(us.time([95, 212])).toBe("between 1½ and 3½ hours");
    expect(us.time([28, 63])).toBe("between 30 and 65 minutes");
    expect(us.time([58, 62])).toBe("about 60 minutes");
    expect(us.time([600, 1200])).toBe("between 10 and 20 hours");
  });

  const row: Step = {
    id: "9",
    kind: "join",
    direction: "beside",
    from: [
      { piece: "square-3", count: 6, width: cut(inches(5, 2)), height: cut(inches(5, 2)) },
      { step: "8", count: 1, width: cut(inches(17, 2)), height: cut(inches(5, 2)) },
      {
        piece: "strip-4",
        copy: 2,
        turned: true,
        count: 1,
        width: cut(inches(21, 2)),
        height: cut(inches(5, 2)),
      },
      {
        cloth: "f2",
        source: "buy",
        role: "spacer",
        count: 1,
        width: cut(inches(3)),
        height: cut(inches(5, 2)),
      },
    ],
    seam: inches(1, 4),
    press: "to-one-side",
    unfinished: { width: cut(inches(65, 2)), height: cut(inches(5, 2)) },
    finished: { width: finished(inches(32)), height: finished(inches(2)) },
  };
  const facts = {
    fabric: "f1",
    use: "yes",
    keep: "cut",
    direction: "none",
    grain: "unknown",
    washed: null,
    cloth: "",
  } as const;
  const names = {
    fabrics: [
      { id: "f1", name: "teal", colour: "teal", colours: [] },
      { id: "f2", name: "oat", colour: "tan", colours: [] },
    ],
    pieces: [
      {
        ...facts,
        id: "square-3",
        kind: "square",
        count: 9,
        name: "",
        width: cut(inches(5, 2)),
        height: cut(inches(5, 2)),
      },
      {
        ...facts,
        id: "strip-4",
        kind: "strip",
        count: 3,
        name: "from\nIda",
        width: cut(inches(5, 2)),
        height: cut(inches(40)),
      },
    ],
  } as const;

  test("a step: what, in which order, how large, the seam, pressing, what comes out", () => {
    expect(plain(us.step(row, names))).toBe(
      "Sew 9 parts together, side by side from left to right: 6 of square 3 (teal), 2½ × 2½ in each; " +
        "unit 8, 8½ × 2½ in; cut from number 2 of strip 4 (teal, from Ida), 10½ × 2½ in, turned on its side; " +
        "spacer of oat, 3 × 2½ in. Seam ¼ in. Press the seams to one side. " +
        "It measures 32½ × 2½ in; it shows 32 × 2 in once it is sewn in.",
    );
  });

  test("in centimetres", () => {
    expect(plain(wordsFor("en-GB", "cm").step({ ...row, from: row.from.slice(1, 2) }, names))).toContain(
      "Take unit 8, 21.59 × 6.35 cm.",
    );
  });

  test("the last step makes the back, and plain cloth is cut to what was sewn", () => {
    const plainPart = { ...row.from[3], role: "plain", source: "buy" } as Extract<
      Step["from"][number],
      { cloth: string }
    >;
    const last: Step = { ...row, from: [...row.from.slice(1, 2), plainPart], squareUp: row.unfinished };
    const text = plain(us.step(last, { ...names, steps: [last] }));
    expect(text).toMatch(/^Measure the sewn part through the middle and near both edges/);
    expect(text).toMatch(/Square it up to 32½ × 2½ in; this is the back\.$/);
  });

  test("what is left long is said with its size, and when it is trimmed", () => {
    const long = { width: inches(3), height: inches(2) } as const;
    const spacer = { ...row.from[3], leftLong: { height: inches(1) } } as Step["from"][number];
    const beside: Step = { ...row, from: [...row.from.slice(0, 3), spacer], squareUp: row.unfinished };
    const text = plain(us.step(beside, names));
    expect(text).toContain("spacer of oat, 3 × 3½ in, 1 in taller than needed.");
    expect(text).toMatch(/Trim what stands over and square it up to 32½ × 2½ in; it shows 32 × 2 in/);
    const within = { ...row.from[3], leftLong: { width: inches(1) } } as Step["from"][number];
    const fitted = plain(
      us.step({ ...row, from: [...row.from.slice(0, 2), within, ...row.from.slice(2, 3)] }, names),
    );
    expect(fitted).toContain(
      "Sew one seam beside spacer of oat last; trim there first, so that all comes to 32½ in.",
    );
    const ofRow = plain(us.step({ ...row, leftLong: long }, names));
    expect(ofRow).toContain("It measures 35½ × 4½ in, 3 in wider and 2 in taller than needed; it shows");
  });

  test("a long seam beside which nothing is left long is pinned at its shares first", () => {
    const pinned = "Pin the ends, the middle and the quarters first.";
    const below: Step = { ...row, direction: "below", from: row.from.slice(1, 3) };
    expect(plain(us.step(below, names))).toContain(pinned);
    expect(plain(us.step(row, names))).not.toContain(pinned);
    const long = { ...row.from[1], leftLong: { width: inches(1) } } as Step["from"][number];
    expect(plain(us.step({ ...below, from: [long] }, names))).not.toContain(pinned);
  });

  test("plain cloth that is left long is marked to what was sewn, not cut to it yet", () => {
    const cloth = { ...row.from[3], role: "plain", leftLong: { height: inches(1) } } as Step["from"][number];
    const text = plain(
      us.step({ ...row, from: [...row.from.slice(1, 2), cloth], squareUp: row.unfinished }, names),
    );
    expect(text).toContain("mark the plain cloth to it; do not cut it there yet. Sew 2 parts together");
  });

  test("her own words are quoted on one line, short, and cannot steer a terminal", () => {
    const text = us.tableProblem({ kind: "stray-quote", row: 2, text: `a\n\u001b[31m${"x".repeat(90)}` });
    expect(text).toContain("“a \ufffd[31mxxx");
    expect(text).toContain("x…”");
    expect(text.length).toBeLessThan(160);
    expect(us.piece("\u001b[2J")).toBe("“\ufffd[2J”");
    expect(us.pattern("\u001bx")).toBe("\ufffdx");
  });
});
