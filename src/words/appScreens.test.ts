import { describe, expect, test } from "vitest";
import { everyAdvice } from "../../test/generators/everyAdvice.ts";
import { draftProblems, lengthProblems, tableProblems } from "../../test/generators/everyProblem.ts";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { backingYardage, styles } from "../engine/back/index.ts";
import { kinds, methods, pileNames, times } from "../engine/cloth/index.ts";
import { leavesOf, nodesOf } from "../engine/layout/index.ts";
import { areaOf, inches } from "../engine/length/index.ts";
import { type LineProblem, type ProjectProblem, projectValueTypes } from "../files/index.ts";
import {
  type AdviceTexts,
  adviceTexts,
  cautions,
  type DrawingTexts,
  drawingTexts,
  type LeftoversTexts,
  type Locale,
  leftoversTexts,
  locales,
  type PlanTexts,
  type ProjectStage,
  type ProjectsTexts,
  planTexts,
  projectsTexts,
  type SewTexts,
  type SizeTexts,
  sewTexts,
  sizeTexts,
} from "./index.ts";
import { bracketed, isBracketed } from "./pseudo.ts";

const plan = handMadePlan();
const size = { width: inches(68), height: inches(88) };
const top = { width: inches(60), height: inches(80) };

type TextsOf<T> = { readonly [K in keyof T]: (texts: T) => readonly (string | null)[] };

/** An entry that is a text, or a table of texts, says itself. */
const itself = <T extends object, K extends keyof T>(name: K) => {
  return (texts: T) => textsIn(texts[name]);
};

function textsIn(entry: unknown): string[] {
  if (typeof entry === "string") return [entry];
  if (typeof entry !== "object" || entry === null) throw new Error("this entry is to be called");
  return Object.values(entry).flatMap(textsIn);
}

/** Every entry of a catalogue: those to be called are given, all others must be texts. */
function all<T extends object>(texts: T, called: Partial<TextsOf<T>>): string[] {
  const names = Object.keys(texts) as (keyof T)[];
  return names
    .flatMap((name) => (called[name] ?? itself<T, keyof T>(name))(texts))
    .filter((text) => text !== null);
}

const drawing: Partial<TextsOf<DrawingTexts>> = {
  ruler: (texts) => [texts.ruler(inches(12))],
  nameOfPlan: (texts) => styles.map((style) => texts.nameOfPlan(style, size)),
  nameOfBack: (texts) => [texts.nameOfBack(size, null), texts.nameOfBack(size, top)],
  leaf: (texts) => leavesOf(plan.layout, plan).map(({ node }) => texts.leaf(node, plan)),
  cell: (texts) => nodesOf(plan.layout, plan).map(({ path }) => texts.cell(path, plan.layout, plan)),
  part: (texts) =>
    nodesOf(plan.layout, plan).flatMap(({ node }) =>
      (["back", "below", "beside"] as const).map((within) => texts.part(node, { within, index: 2 }, plan)),
    ),
};

const stages: readonly ProjectStage[] = [
  { kind: "empty" },
  { kind: "sized", back: size },
  { kind: "listed", leftovers: 1, back: null },
  { kind: "listed", leftovers: 12, back: size },
  ...styles.map((style): ProjectStage => ({ kind: "planned", style })),
  { kind: "sewing", done: 3, steps: 24 },
  { kind: "sewn" },
];

const problems: readonly ProjectProblem[] = [
  { path: "", kind: "file-too-large", most: 50_000_000 },
  { path: "", kind: "not-a-zip" },
  { path: "", kind: "not-a-project" },
  { path: "", kind: "newer-version", version: 3, known: 1 },
  { path: "", kind: "entry-missing", entry: "plan.json" },
  { path: "", kind: "entry-unknown", entry: "a.txt" },
  { path: "", kind: "entry-damaged", entry: "project.json" },
  { path: "", kind: "entry-too-large", entry: "project.json", most: 10 },
  { path: "", kind: "not-json", entry: "project.json" },
  { path: "leftovers[2].id", kind: "missing" },
  ...projectValueTypes.map((expected): ProjectProblem => ({ path: "size", kind: "wrong-type", expected })),
  { path: "time", kind: "not-one-of", choices: ["afternoon"] },
  { path: "size.extra", kind: "not-a-length", value: 0.1 },
  { path: "createdAt", kind: "out-of-range", value: -1 },
  { path: "title", kind: "text-too-long", most: 200 },
  { path: "leftovers", kind: "too-many", most: 5000 },
  { path: "leftovers", kind: "twice", id: "a" },
  { path: "plan", kind: "plan", problem: { path: "", kind: "not-json" } },
  { path: "", kind: "more-problems" },
];

const now = Date.UTC(2026, 6, 12, 12);
const days = 86_400_000;

const versions = [
  { name: "as measured", at: now, leftovers: 1, planned: false },
  { name: null, at: now, leftovers: 12, planned: true },
];

const projects: Partial<TextsOf<ProjectsTexts>> = {
  stage: (texts) => stages.map(texts.stage),
  changed: (texts) => [0, 1, 40, 400].map((ago) => texts.changed(now - ago * days, now)),
  pictureOf: (texts) => stages.map((stage) => texts.pictureOf("Ida's", stage)),
  moreOf: (texts) => [texts.moreOf("Ida's")],
  copyOf: (texts) => [texts.copyOf("Ida's")],
  removed: (texts) => [texts.removed("Ida's")],
  bringBackOf: (texts) => [texts.bringBackOf("Ida's")],
  notOpened: (texts) => [texts.notOpened("a.verso")],
  problem: (texts) => problems.map(texts.problem),
  version: (texts) => versions.map(texts.version),
  versionHolds: (texts) => versions.map(texts.versionHolds),
  goBackTo: (texts) => versions.map(texts.goBackTo),
  wentBack: (texts) => versions.map(texts.wentBack),
};

const cloth = {
  clothWidth: inches(42),
  ...backingYardage(size, { clothWidth: inches(42), seam: inches(1, 2), roundTo: inches(9, 2) }),
};
const small = backingYardage(
  { width: inches(36), height: inches(50) },
  { clothWidth: inches(42), seam: inches(1, 2), roundTo: inches(9, 2) },
);

const sizes: Partial<TextsOf<SizeTexts>> = {
  measureOf: (texts) =>
    (["width", "height"] as const).flatMap((side) =>
      ([0, 1, 2] as const).map((place) => texts.measureOf(side, place)),
    ),
  differ: (texts) => [texts.differ("width", inches(3, 4)), texts.differ("height", inches(1))],
  methods: (texts) => methods.map(texts.methods),
  methodTakes: (texts) => [texts.methodTakes(inches(4))],
  extraUsual: (texts) => [texts.extraUsual(inches(4))],
  times: (texts) => times.map(texts.times),
  timeWhat: (texts) => times.map(texts.timeWhat),
  backIs: (texts) => [texts.backIs(size)],
  cutOffIs: (texts) => [
    texts.cutOffIs({ width: inches(4), height: inches(4) }),
    texts.cutOffIs({ width: inches(4), height: inches(5) }),
  ],
  topOnDrawing: (texts) => [texts.topOnDrawing(top)],
  clothWidthUsual: (texts) => [texts.clothWidthUsual(inches(42))],
  backings: (texts) => [
    ...texts.backings({ ...cloth, wide: { width: inches(108), buy: inches(72) } }),
    ...texts.backings({ clothWidth: inches(42), ...small, wide: null }),
  ],
  problem: (texts) => lengthProblems.map(texts.problem),
  jobProblem: (texts) => draftProblems.map(texts.jobProblem),
  meant: (texts) => [texts.meant("2 1/2")],
};

const advised: Partial<TextsOf<AdviceTexts>> = {
  title: (texts) => everyAdvice(plan).map(texts.title),
  text: (texts) => everyAdvice(plan).map((advice) => texts.text(advice, plan)),
  where: (texts) => everyAdvice(plan).map((advice) => texts.where(advice, plan)),
  showOf: (texts) => everyAdvice(plan).map(texts.showOf),
  marked: (texts) => everyAdvice(plan).map(texts.marked),
};

const plans: Partial<TextsOf<PlanTexts>> = {
  style: (texts) => styles.map(texts.style),
  styleIs: (texts) => styles.map(texts.styleIs),
  hours: (texts) =>
    [[95, 212] as const, [20, 40] as const, [60, 60] as const].map((minutes) =>
      texts.hours({ ...plan.figures, minutes }),
    ),
  toBuy: (texts) => [texts.toBuy([]), texts.toBuy(plan.buy), texts.toBuy([...plan.buy, ...plan.buy])],
  searchingShare: (texts) => [texts.searchingShare(0.62)],
  reasons: (texts) => [texts.reasons([{ kind: "nothing-to-buy" }])],
  choiceNote: (texts) => [texts.choiceNote({ kind: "no-more", count: 2 })],
  staying: (texts) => [texts.staying(1), texts.staying(3)],
  couldNotStay: (texts) => [texts.couldNotStay(1), texts.couldNotStay(3)],
  keepingClears: (texts) => [texts.keepingClears(1), texts.keepingClears(4)],
  time: (texts) => [texts.time(plan.figures)],
  figures: (texts) =>
    times.flatMap((time) =>
      [10, 12].flatMap((side) =>
        texts.figures(plan.figures, {
          used: areaOf(inches(10) ** 2),
          most: areaOf(inches(side) ** 2),
          time,
        }),
      ),
    ),
  buyRow: (texts) => plan.buy.map((row) => texts.buyRow(row, plan)),
  leftOver: (texts) =>
    plan.pieces.flatMap(({ id }) => [1, 3].map((count) => texts.leftOver({ piece: id, count }, plan))),
  note: (texts) => draftProblems.map(texts.note),
  waiting: (texts) => [texts.waiting(1), texts.waiting(3)],
  stops: (texts) =>
    draftProblems.flatMap((problem) =>
      [
        { all: 0, waiting: 0 },
        { all: 3, waiting: 3 },
        { all: 3, waiting: 1 },
      ].map((rows) => texts.stops(problem, rows)),
    ),
};

const sewing: Partial<TextsOf<SewTexts>> = {
  stepOf: (texts) => [texts.stepOf(5, 24)],
  progress: (texts) => [texts.progress(0, 24), texts.progress(4, 24), texts.progress(0, 1)],
  part: (texts) => [
    texts.part({ kind: "units" }),
    texts.part({ kind: "section", number: 3 }),
    texts.part({ kind: "together" }),
  ],
  partState: (texts) => [texts.partState(0, 1), texts.partState(2, 5), texts.partState(5, 5)],
  waits: (texts) => [1, 2, 3].map((count) => texts.waits(plan.steps.slice(0, count))),
  waitsInList: (texts) => [1, 2, 3].map((count) => texts.waitsInList(plan.steps.slice(0, count))),
  goTo: (texts) => plan.steps.map(texts.goTo),
  makes: (texts) => plan.steps.map((step) => texts.makes(step, plan)),
  lay: (texts) => plan.steps.map(texts.lay),
  // Nothing stands before what there is one of.
  partCount: (texts) =>
    plan.steps.flatMap(({ from }) => from.map((part) => texts.partCount({ ...part, count: 6 }))),
  partSize: (texts) => plan.steps.flatMap(({ from }) => from.map(texts.partSize)),
  partWhat: (texts) => plan.steps.flatMap(({ from }) => from.map((part) => texts.partWhat(part, plan))),
  measureFirst: (texts) => plan.steps.map(texts.measureFirst),
  sewing: (texts) => plan.steps.map((step) => texts.sewing(step, plan)),
  press: (texts) => plan.steps.map(texts.press),
  result: (texts) => plan.steps.map((step) => texts.result(step, plan)),
  placeOf: (texts) => plan.steps.map(texts.placeOf),
  drawingOf: (texts) => plan.steps.map((step) => texts.drawingOf(step, plan)),
  caution: (texts) => cautions.map(texts.caution),
  tickOf: (texts) => plan.steps.map((step) => texts.tickOf(step, plan)),
  measures: (texts) => plan.steps.map(texts.measures),
  inList: (texts) => plan.steps.map((step) => texts.inList(step, plan)),
};

const at = { start: 0, end: 4 } as const;
const lineProblems: readonly LineProblem[] = [
  ...lengthProblems.flatMap((problem) =>
    (["width", "area", "weight"] as const).map(
      (field) => ({ kind: "not-a-size", field, problem, ...at }) as const,
    ),
  ),
  ...[null, ...kinds].flatMap((pieceKind) => [
    { kind: "no-size", pieceKind, ...at } as const,
    { kind: "one-side", pieceKind, ...at } as const,
  ]),
  { kind: "no-amount", ...at },
  { kind: "not-square", text: "10 x 5 in", ...at },
  { kind: "three-numbers", text: "5 x 5 x 4", ...at },
  { kind: "not-a-count", text: "2.5", ...at },
  { kind: "extra-number", text: "7/8", ...at },
  { kind: "too-long", length: 900, most: 300, ...at },
];

const strip = {
  kind: "strip",
  count: 4,
  width: inches(5, 2),
  height: inches(31),
  fabric: "teal dots",
} as const;
const spoken = [
  strip,
  { ...strip, count: 1, use: "first" } as const,
  { width: inches(5), height: inches(5) },
  { kind: "crumbs", area: areaOf(inches(10) ** 2) } as const,
  { kind: "crumbs", weight: 170 } as const,
  {},
];
const asideCloth = { count: 8, width: inches(5, 2), height: inches(42), fabric: "teal" };
const needed = { width: inches(5, 2), length: inches(290) };
const fabric = { id: "teal", name: "teal dots", colour: "teal", colours: [] };

const leftovers: Partial<TextsOf<LeftoversTexts>> = {
  summary: (texts) =>
    [1, 62].map((count) => texts.summary({ count, rows: count, area: areaOf(inches(10) ** 2) })),
  stop: (texts) => draftProblems.map(texts.stop),
  understood: (texts) => spoken.map(texts.understood),
  understoodRough: (texts) =>
    ["", "teal"].map((name) => texts.understoodRough({ width: inches(5, 2), total: inches(324) }, name)),
  taken: (texts) => [
    texts.taken({ named: "fat quarter", clothWidth: null, size: { width: inches(18), height: inches(21) } }),
    texts.taken({ named: null, clothWidth: inches(42), size: {} }),
  ],
  added: (texts) => [texts.added("4 strips.")],
  lineProblem: (texts) => lineProblems.map(texts.lineProblem),
  meant: (texts) => [texts.meant("1/2")],
  ruler: (texts) => [texts.ruler(inches(12))],
  tableName: (texts) => [texts.tableName("Garden room")],
  entered: (texts) => [texts.entered(0, 0), texts.entered(1, 0), texts.entered(31, 3), texts.entered(0, 1)],
  notEntered: (texts) => tableProblems.map(texts.notEntered),
  waiting: (texts) => [texts.waiting(1), texts.waiting(3)],
  waitingLine: (texts) => [texts.waitingLine(12)],
  asWritten: (texts) => [texts.asWritten("sqare")],
  fault: (texts) => tableProblems.flatMap((problem) => ("row" in problem ? [texts.fault(problem)] : [])),
  rowProblem: (texts) => draftProblems.map(texts.rowProblem),
  leaveOutOf: (texts) => [texts.leaveOutOf(12)],
  pileIs: (texts) => [texts.pileIs(1, areaOf(inches(10) ** 2)), texts.pileIs(12, areaOf(inches(10) ** 2))],
  markPile: (texts) => pileNames.map(texts.markPile),
  rowCaption: (texts) => spoken.map(texts.rowCaption),
  roughCaption: (texts) => [texts.roughCaption("9 yd", "2 1/2")],
  more: (texts) => [texts.more(7)],
  chooseRow: (texts) => [texts.chooseRow(12)],
  allAboutRow: (texts) => [texts.allAboutRow(12)],
  nChosen: (texts) => [texts.nChosen(1), texts.nChosen(4)],
  removed: (texts) => [texts.removed(1), texts.removed(4)],
  fabric: (texts) => [texts.fabric(fabric), texts.fabric({ ...fabric, name: "" })],
  fabricIs: (texts) => [texts.fabricIs(areaOf(inches(10) ** 2), 0.34)],
  colourOf: (texts) => [texts.colourOf("teal dots")],
  valuesOf: (texts) => [texts.valuesOf(["cream", "teal", "ink"])],
  roughWhat: (texts) => [texts.roughWhat(inches(1, 8))],
  reserved: (texts) => [
    texts.reserved({ what: "binding", needed: null, from: [], short: null }),
    texts.reserved({
      what: "binding",
      needed,
      from: [asideCloth, { ...asideCloth, fabric: "" }],
      short: null,
    }),
    texts.reserved({ what: "binding", needed, from: [], short: inches(200) }),
    texts.reserved({ what: "label", needed: null, from: [], short: null }),
    texts.reserved({ what: "label", needed: null, from: [asideCloth], short: null }),
  ],
  stockStripsIs: (texts) => ["", "teal"].map((name) => texts.stockStripsIs("9 yd", "2 1/2", name)),
  stockBagIs: (texts) => ["", "teal"].map((name) => texts.stockBagIs("12 oz", name)),
  stockBagArea: (texts) => [texts.stockBagArea(areaOf(inches(60) ** 2))],
  weightProblem: (texts) => lengthProblems.map(texts.weightProblem),
  lengthProblem: (texts) => lengthProblems.map(texts.lengthProblem),
  removeStock: (texts) => [texts.removeStock("A bag")],
};

const allTexts = (locale: Locale, unit: "in" | "cm" = "in") => [
  ...all(drawingTexts(locale, unit), drawing),
  ...all(projectsTexts(locale), projects),
  ...all(sizeTexts(locale, unit), sizes),
  ...all(leftoversTexts(locale, unit), leftovers),
  ...all(planTexts(locale, unit), plans),
  ...all(adviceTexts(locale, unit), advised),
  ...all(sewTexts(locale, unit), sewing),
];

test("nothing on the pages bypasses the catalogue", () => {
  const pseudo = allTexts("en-XA");
  expect(pseudo.length).toBeGreaterThan(300);
  expect(pseudo.filter((text) => !isBracketed(text) || /[⟦⟧]/.test(text.slice(1, -1)))).toEqual([]);
  expect(pseudo).toEqual(allTexts("en-US").map(bracketed));
});

describe.each(locales.filter((locale) => locale !== "en-XA"))("%s", (locale) => {
  const texts = [...allTexts(locale, "in"), ...allTexts(locale, "cm")];

  test("is calm and speaks no program's words", () => {
    const wrong =
      /!|\b(invalid|illegal|null|undefined|NaN|Infinity|session|error|exception|string|integer|boolean|please|oops|sorry|failed|loading)\b|\[object/i;
    expect(texts.filter((text) => wrong.test(text))).toEqual([]);
  });

  test("leaves nothing empty, doubled or open", () => {
    expect(texts.filter((text) => /^\s|\s$| {2}|\.\.|,,|\( |\$\{/.test(text) || text === "")).toEqual([]);
  });

  test("never writes inches as decimals", () => {
    expect(allTexts(locale, "in").filter((text) => /\d\.\d+\s?in\b/.test(text))).toEqual([]);
  });
});

test("each country's own words", () => {
  const american = allTexts("en-US").join("\n");
  const british = allTexts("en-GB").join("\n");
  expect(american).not.toMatch(/colour|centre\b|centimetre|selvedge|\bcot\b/i);
  expect(british).not.toMatch(/\bcolor|center|selvage|\bcrib\b/i);
  expect(british).toContain("On a domestic machine");
  expect(american).toContain("On a home machine");
});

describe("read aloud", () => {
  const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

  test("one cloth: both ways of running the seams", () => {
    // 68 × 88 from cloth of 42 in, seams of ½ in: two lengths of 88 in make 83 wide; three of 68 make 124 tall.
    const lines = sizeTexts("en-US", "in").backings({
      ...cloth,
      wide: { width: inches(108), buy: inches(72) },
    });
    expect(lines.map(plain)).toEqual([
      "Cloth 42 in wide, seams running down: 2 lengths of 88 in, 5 yd in all.",
      "Cloth 42 in wide, seams running across: 3 lengths of 68 in, 5¾ yd in all.",
      "Extra-wide cloth, 108 in, no seam: 2 yd.",
    ]);
  });

  test("plain cloth without a name is plain cloth, once", () => {
    const fabrics = plan.fabrics.map((fabric) => ({ ...fabric, name: "" }));
    const row = {
      use: "plain",
      fabric: fabrics[0]?.id ?? "",
      width: inches(42),
      length: inches(90),
    } as const;
    const texts = planTexts("en-US", "in");
    expect(plain(texts.buyRow(row, { ...plan, fabrics }))).toMatch(/^2½ yd of plain cloth, 42 in wide/);
    const said = plan.steps.flatMap(({ from }) =>
      from.map((part) => sewTexts("en-US", "in").partWhat(part, { ...plan, fabrics })),
    );
    expect(said.filter((text) => /plain cloth of plain cloth|of ,| of$/.test(text))).toEqual([]);
    expect(said.map(plain)).toContain("Plain cloth, 1 in wider and 1 in taller than needed");
  });

  test("a span of time, short", () => {
    const hours = (minutes: readonly [number, number]) =>
      plain(planTexts("en-US", "in").hours({ ...plan.figures, minutes }));
    expect([hours([95, 212]), hours([28, 63]), hours([600, 610])]).toEqual([
      "1½–3½ hours",
      "30–65 minutes",
      "10 hours",
    ]);
  });
});
