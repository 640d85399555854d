/** Every text of the app's pages in one word set and unit. */

import { backingYardage, styles } from "../../src/engine/back/index.ts";
import { papers } from "../../src/engine/cards/index.ts";
import { kinds, methods, pileNames, times } from "../../src/engine/cloth/index.ts";
import { leavesOf, nodesOf } from "../../src/engine/layout/index.ts";
import { areaOf, inches } from "../../src/engine/length/index.ts";
import {
  documentOf,
  type LineProblem,
  type ProjectProblem,
  projectValueTypes,
} from "../../src/files/index.ts";
import { doubts, photoWarnings } from "../../src/photo/index.ts";
import {
  type AdviceTexts,
  adviceTexts,
  type ComparisonTexts,
  cautions,
  comparisonTexts,
  type DrawingTexts,
  drawingTexts,
  type FrameWords,
  frameWords,
  type HandTexts,
  handTexts,
  type LeftoversTexts,
  type Locale,
  leftoversTexts,
  type PhotoTexts,
  type PlanTexts,
  type ProjectStage,
  type ProjectsTexts,
  photoTexts,
  planTexts,
  projectsTexts,
  type SettingsTexts,
  type SewTexts,
  type ShelfTexts,
  type SittingTexts,
  type SizeTexts,
  settingsTexts,
  sewTexts,
  shelfTexts,
  sittingTexts,
  sizeTexts,
  type TakeAwayTexts,
  type TopPhotoTexts,
  takeAwayTexts,
  topPhotoTexts,
  type ViewTexts,
  viewTexts,
} from "../../src/words/index.ts";
import { everyAdvice } from "./everyAdvice.ts";
import { draftProblems, layoutProblems, lengthProblems, tableProblems } from "./everyProblem.ts";
import { handMadePlan } from "./handMadePlan.ts";

export const plan = handMadePlan();
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

const reasons = ["full", "no-storage", "newer-tab", "failed"] as const;
const framed: Partial<TextsOf<FrameWords>> = {
  pageTitle: (texts) => [texts.pageTitle("Plan", "Ida"), texts.pageTitle("Plan", null)],
  notSavedWhy: (texts) => reasons.map(texts.notSavedWhy),
  notReadableWhat: (texts) => reasons.map(texts.notReadableWhat),
};

const drawing: Partial<TextsOf<DrawingTexts>> = {
  ruler: (texts) => [texts.ruler(inches(12))],
  nameOfPlan: (texts) => styles.map((style) => texts.nameOfPlan(style, size)),
  nameOfBack: (texts) => [texts.nameOfBack(size, null), texts.nameOfBack(size, top)],
  fabric: (texts) => [texts.fabric("plain", plan)],
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
  sampleName: (texts) => [texts.sampleName("moss")],
  takenIn: (texts) => [
    texts.takenIn({ added: 0, known: 1, damaged: 0, shelf: 3 }),
    texts.takenIn({ added: 1, known: 0, damaged: 1, shelf: 0 }),
    texts.takenIn({ added: 3, known: 2, damaged: 2, shelf: 3 }),
  ],
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

export const cloth = {
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
  side: (texts) => [texts.side(size.width)],
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

const named = { name: "Sunday", at: now };
const compared: Partial<TextsOf<ComparisonTexts>> = {
  coveredOf: (texts) => [0, 0.4].map((covered) => texts.coveredOf({ ...plan.figures, covered })),
  seamsOf: (texts) => [texts.seamsOf(plan.figures)],
  plainOf: (texts) => [0, 1, 7].map((plainCells) => texts.plainOf({ ...plan.figures, plainCells })),
  contrastOf: (texts) =>
    [null, 2, 10, 20, 40].map((contrast) => texts.contrastOf({ ...plan.figures, contrast })),
  keptUnder: (texts) => [texts.keptUnder(named)],
  takeOf: (texts) => [texts.takeOf("Sunday")],
  goBackTo: (texts) => [texts.goBackTo(named)],
  wasKept: (texts) => [texts.wasKept("Sunday")],
  wentBack: (texts) => [texts.wentBack(named)],
  removeNamed: (texts) => [texts.removeNamed(named)],
  wasRemoved: (texts) => [texts.wasRemoved(named)],
  wasPutBack: (texts) => [texts.wasPutBack(named)],
};

const advised: Partial<TextsOf<AdviceTexts>> = {
  title: (texts) => everyAdvice(plan).map(texts.title),
  text: (texts) => everyAdvice(plan).map((advice) => texts.text(advice, plan)),
  where: (texts) => everyAdvice(plan).map((advice) => texts.where(advice, plan)),
  showOf: (texts) => everyAdvice(plan).map(texts.showOf),
  marked: (texts) => everyAdvice(plan).map(texts.marked),
};

const [piece] = leavesOf(plan.layout, plan).flatMap(({ node }) => (node.kind === "piece" ? [node] : []));

const looked: Partial<TextsOf<ViewTexts>> = {
  sewn: (texts) => [texts.sewn(0, 1), texts.sewn(2, 9), texts.sewn(9, 9)],
};

const shifts = (["move", "resize"] as const).flatMap((kind) =>
  (["width", "height"] as const).flatMap((along) =>
    [inches(-1), inches(1)].map((by) => ({ kind, at: [], along, by })),
  ),
);

const byHand: Partial<TextsOf<HandTexts>> = {
  problem: (texts) => lengthProblems.map(texts.problem),
  meant: (texts) => [texts.meant("2½ in")],
  made: (texts) =>
    [
      { kind: "swap", at: [], with: [] } as const,
      { kind: "turn", at: [] } as const,
      { kind: "make-plain", at: [] } as const,
      ...(piece === undefined ? [] : [{ kind: "put", at: [], piece } as const]),
      { kind: "cloth", at: [], fabric: "plain" } as const,
      ...shifts,
    ].map((edit) => texts.made(edit, plan)),
  whyNot: (texts) =>
    [
      { kind: "same" } as const,
      { kind: "sewn" } as const,
      { kind: "another-size" } as const,
      { kind: "would-stretch", piece: piece?.piece ?? "" } as const,
      { kind: "too-little-cloth", fabric: "plain" } as const,
      { kind: "off-ruler", step: inches(1, 8) } as const,
      { kind: "at-the-end" } as const,
      ...[inches(0), inches(2)].flatMap((most) => [
        { kind: "no-room", most } as const,
        { kind: "keeps-size", most } as const,
      ]),
      ...layoutProblems.map((problem) => ({ kind: "cannot-be-sewn", problem }) as const),
    ].map((refusal) => texts.whyNot(refusal, plan)),
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
  uncoloured: (texts) => [texts.uncoloured(["stars"]), texts.uncoloured(["stars", "dots"])],
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

const settings: Partial<TextsOf<SettingsTexts>> = {
  thisBackWhat: (texts) => [texts.thisBackWhat("Ida")],
  mark: (texts) => [texts.mark(inches(1, 8)), texts.mark(inches(1, 16))],
  usual: (texts) => [texts.usual(inches(1, 4))],
  problem: (texts) => lengthProblems.map(texts.problem),
  meant: (texts) => [texts.meant("1/2")],
  jobProblem: (texts) => draftProblems.map(texts.jobProblem),
  space: (texts) => [texts.space(0, 900_000_000), texts.space(2_600_000, 11_000_000_000)],
  copies: (texts) => [
    texts.copies({ backs: 0, without: 0, lastAt: null }),
    texts.copies({ backs: 3, without: 3, lastAt: null }),
    texts.copies({ backs: 3, without: 1, lastAt: 1_900_000_000_000 }),
    texts.copies({ backs: 3, without: 2, lastAt: 1_900_000_000_000 }),
    texts.copies({ backs: 3, without: 0, lastAt: 1_900_000_000_000 }),
  ],
  ready: (texts) => [
    ...(["ready", "coming", "never"] as const).map((kind) => texts.ready({ kind })),
    ...[1, 12].map((files) => texts.ready({ kind: "missing", files })),
  ],
  everythingFile: (texts) => [texts.everythingFile(1_900_000_000_000)],
  deleteAllAsk: (texts) => [0, 1, 3].map(texts.deleteAllAsk),
};

const side = { width: inches(5, 2), height: inches(11) };
const refusals = [
  { kind: "not-a-photo" },
  { kind: "cut-short" },
  { kind: "too-large", megapixels: 81, most: 60 },
  { kind: "no-cards" },
] as const;

const photos: Partial<TextsOf<PhotoTexts>> = {
  bar: (texts) => papers.map(texts.bar),
  stage: (texts) =>
    (["waiting", "opening", "markers", "floor", "pieces", "pictures"] as const).map((stage) =>
      texts.stage(stage, "heap.jpg"),
    ),
  refused: (texts) => refusals.map((why) => texts.refused(why, "heap.jpg")),
  failed: (texts) => [texts.failed("heap.jpg")],
  awayNamed: (texts) => [texts.awayNamed("heap.jpg")],
  photo: (texts) => [texts.photo("heap.jpg")],
  found: (texts) => [texts.found(0, 0), texts.found(1, 1), texts.found(18, 3)],
  warning: (texts) => photoWarnings.map(texts.warning),
  piece: (texts) => [texts.piece(12)],
  keptPhoto: (texts) => [texts.keptPhoto(3)],
  letGoNamed: (texts) => [texts.letGoNamed(3)],
  keptFull: (texts) => [texts.keptFull(24)],
  onPhoto: (texts) => kinds.map((kind) => texts.onPhoto(12, kind, side)),
  takeIt: (texts) => [texts.takeIt(12)],
  is: (texts) => kinds.flatMap((kind) => [texts.is(kind, side), texts.is(kind, null)]),
  times: (texts) => [texts.times(4)],
  check: (texts) => [texts.check(["near-floor"]), texts.check(doubts)],
  changeNamed: (texts) => [texts.changeNamed(12)],
  doneNamed: (texts) => [texts.doneNamed(12)],
  lengthProblem: (texts) => lengthProblems.map(texts.lengthProblem),
  meant: (texts) => [texts.meant("1/2")],
  corner: (texts) => [texts.corner(2, 12)],
  toLine: (texts) => [texts.toLine(12)],
  cornersHow: (texts) => [0, 1, 3].map(texts.cornersHow),
  cloth: (texts) => [texts.cloth(3)],
  add: (texts) => [texts.add(1), texts.add(18)],
  needsSize: (texts) => [texts.needsSize(1), texts.needsSize(2)],
  added: (texts) => [texts.added(1, 1), texts.added(18, 9)],
};

const shelf: Partial<TextsOf<ShelfTexts>> = {
  shelf: (texts) => [1, 12].map(texts.shelf),
  row: (texts) => spoken.map(texts.row),
  join: (texts) => [0, 1, 3].map(texts.join),
  joined: (texts) => [1, 3].map(texts.joined),
  takenOff: (texts) => [1, 3].map(texts.takenOff),
  movedToShelf: (texts) => [1, 3].map(texts.movedToShelf),
  remark: (texts) => [
    texts.remark({ kind: "much-of-one", fabric, share: 0.62 }),
    texts.remark({ kind: "much-of-one", fabric: { ...fabric, name: "" }, share: 0.62 }),
    ...(["light", "medium", "dark"] as const).map((value) => texts.remark({ kind: "one-value", value })),
  ],
};

const sitting: Partial<TextsOf<SittingTexts>> = {
  minutes: (texts) => [1, 45].map(texts.minutes),
  iHave: (texts) => [1, 45].map(texts.iHave),
  tooShort: (texts) => [texts.tooShort([40, 70])],
  is: (texts) => [texts.is(1, [10, 20]), texts.is(4, [20, 45])],
  step: (texts) => plan.steps.map(texts.step),
};

const navy = { l: 20, a: 5, b: -30 };
const topPhoto: Partial<TextsOf<TopPhotoTexts>> = {
  refused: (texts) => [texts.refused({ kind: "not-a-photo" }), texts.refused({ kind: "cut-short" })],
  colour: (texts) => [texts.colour(navy, 0.4)],
  forPlain: (texts) => [texts.forPlain(navy, 0.4)],
};

const takeAway: Partial<TextsOf<TakeAwayTexts>> = {
  tableName: (texts) => [texts.tableName("Ida")],
  picture: (texts) => {
    const { more, ...said } = texts.picture(documentOf(plan), inches(12));
    return [...textsIn(said), ...(more === undefined ? [] : [more(1), more(3)])];
  },
};

export const allTexts = (locale: Locale, unit: "in" | "cm" = "in") => [
  ...all(frameWords(locale), framed),
  ...all(drawingTexts(locale, unit), drawing),
  ...all(projectsTexts(locale), projects),
  ...all(sizeTexts(locale, unit), sizes),
  ...all(leftoversTexts(locale, unit), leftovers),
  ...all(photoTexts(locale, unit), photos),
  ...all(planTexts(locale, unit), plans),
  ...all(handTexts(locale, unit), byHand),
  ...all(adviceTexts(locale, unit), advised),
  ...all(viewTexts(locale, unit), looked),
  ...all(topPhotoTexts(locale, unit), topPhoto),
  ...all(comparisonTexts(locale, unit), compared),
  ...all(sewTexts(locale, unit), sewing),
  ...all(settingsTexts(locale, unit), settings),
  ...all(shelfTexts(locale, unit), shelf),
  ...all(sittingTexts(locale, unit), sitting),
  ...all(takeAwayTexts(locale, unit), takeAway),
];
