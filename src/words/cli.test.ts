import { describe, expect, it } from "vitest";
import { styles } from "../engine/back/index.ts";
import { papers, referencePages } from "../engine/cards/index.ts";
import { centimetres, inches } from "../engine/length/index.ts";
import { doubts, photoKinds, photoWarnings } from "../photo/index.ts";
import { cardsWords } from "./cards.ts";
import { type CommandProblem, cliWordsFor, commandNames } from "./cli.ts";
import { cliLocales } from "./locales.ts";
import { photoWords } from "./photo.ts";
import { isBracketed } from "./pseudo.ts";

const size = { width: inches(60), height: inches(80) };

/** One of each kind; the compiler names one that is missing. */
const problems: { readonly [K in CommandProblem["kind"]]: CommandProblem & { readonly kind: K } } = {
  "unknown-command": { kind: "unknown-command", name: "paln" },
  "unknown-option": { kind: "unknown-option", option: "--colour", command: "plan" },
  "given-twice": { kind: "given-twice", option: "seed" },
  "needs-a-value": { kind: "needs-a-value", option: "json" },
  "takes-no-value": { kind: "takes-no-value", option: "skip-bad-rows" },
  "option-missing": { kind: "option-missing", option: "method" },
  "file-missing": { kind: "file-missing", wanted: "leftovers" },
  "one-too-many": { kind: "one-too-many", name: "other.csv" },
  "not-a-choice": { kind: "not-a-choice", option: "time", text: "month", choices: ["afternoon", "weekend"] },
  "not-a-length": { kind: "not-a-length", option: "floor", problem: { kind: "not-a-number", text: "wide" } },
  "not-a-size": { kind: "not-a-size", option: "top", problem: { kind: "not-two-lengths", text: "60" } },
  "not-a-number": { kind: "not-a-number", option: "seed", text: "x", least: 0, most: 9, whole: true },
  "not-both": { kind: "not-both", options: ["top", "back"] },
  "no-size": { kind: "no-size" },
  "method-without-top": { kind: "method-without-top" },
  "more-plans-than-styles": { kind: "more-plans-than-styles", most: 9 },
  "plans-with-all-styles": { kind: "plans-with-all-styles", styles: 9 },
  "two-documents-on-output": { kind: "two-documents-on-output", options: ["json", "svg"] },
  "pictures-on-output": { kind: "pictures-on-output" },
  "not-a-picture": { kind: "not-a-picture", option: "overlay", file: "a.gif" },
  "one-file-for-two": { kind: "one-file-for-two", file: "a", options: ["json", "csv"] },
  "would-overwrite-photo": { kind: "would-overwrite-photo", file: "a.jpg" },
  "not-a-photo": { kind: "not-a-photo", file: "a.jpg" },
  "photo-too-large": { kind: "photo-too-large", file: "a.jpg", megapixels: 108.2, most: 60 },
  "no-cards-found": { kind: "no-cards-found", file: "a.jpg" },
  "would-overwrite-leftovers": { kind: "would-overwrite-leftovers", file: "heap.csv" },
  "out-of-range": { kind: "out-of-range", option: "extra", least: inches(0), most: inches(24) },
  "back-too-large": { kind: "back-too-large", back: size, most: inches(400) },
  "no-such-file": { kind: "no-such-file", file: "a.csv" },
  "is-a-folder": { kind: "is-a-folder", file: "a" },
  "too-large-to-read": { kind: "too-large-to-read", file: "a.csv" },
  "no-such-folder": { kind: "no-such-folder", file: "a/b.svg", folder: "a" },
  "not-readable": { kind: "not-readable", file: "a.csv", code: "EACCES" },
  "not-writable": { kind: "not-writable", file: "a.csv", code: "EACCES" },
};

const american = cliWordsFor("en-US", "in");

describe("what keeps a command from being carried out", () => {
  it.each(Object.values(problems))("$kind: one line that says what is so and what to do", (problem) => {
    const text = american.problem(problem);
    // At least two sentences, or one that names the range or the file.
    expect(text).toMatch(
      /^\S[^\n]*\.( [^\n]*)?$|: see verso --help\.$|frame, machine or hand\.$|plan\.json$/,
    );
    expect(text).not.toMatch(/!|\b(invalid|null|undefined|error|failed|illegal|NaN)\b/i);
  });

  it("shows what she wrote on one line, however it was written", () => {
    const text = american.problem({ kind: "one-too-many", name: "a\nb\u001b[31mc" });
    expect(text).not.toMatch(/\p{Cc}/u);
    expect(american.inFile("a\u001bb.csv", "this is so.")).not.toMatch(/\p{Cc}/u);
  });
});

describe("the reference cards", () => {
  it("are said to be written, with what to mind in printing", () => {
    expect(american.cardsWritten("a\u001b.pdf")).toMatch(/^Written: a\ufffd\.pdf\n.*100 %/);
  });

  it.each(cliLocales)("speak in %s on each of their notes", (locale) => {
    for (const paper of papers)
      for (const page of referencePages(paper)) {
        const words = cardsWords(locale, "in");
        const texts = words.notes(page);
        expect(texts).toHaveLength(page.notes.length);
        for (const text of [...texts, words.markers(page), words.title])
          expect(isBracketed(text)).toBe(locale === "en-XA");
      }
  });
});

describe("pieces in a photo", () => {
  const piece = {
    kind: "square",
    width: 4.375,
    height: 4.5,
    measured: { width: 4.5, height: 4.6 },
    pixels: [],
    colours: [],
    busyness: 0,
    check: doubts,
  } as const;
  const measured = {
    cards: [0],
    residual: 0.1,
    warnings: photoWarnings,
    pieces: [piece, { ...piece, check: [] }],
  };

  it("are told one by one, with every reason to look again", () => {
    const words = photoWords("en-US");
    const [head, first, second] = words.found("a\u001b.jpg", measured).split("\n");
    expect(head).toBe("a\ufffd.jpg: 2 pieces");
    expect(first).toMatch(
      /^ {2}1\. square, 4⅜\s×\s4½\sin; please check: close to the floor's color, .*approximate$/,
    );
    expect(second).not.toContain("check");
    expect(words.table.check(piece).split("; ")).toHaveLength(doubts.length);
  });

  it.each(cliLocales)("are spoken of in %s", (locale) => {
    const words = photoWords(locale);
    const texts = [...doubts.map(words.doubt), ...photoWarnings.map(words.warning), words.table.fabric(3)];
    for (const text of [...texts, words.table.checkHeading, words.table.check(piece)])
      expect(isBracketed(text)).toBe(locale === "en-XA");
    for (const kind of photoKinds)
      expect(words.found("a.jpg", { ...measured, pieces: [{ ...piece, kind }] })).toContain("4⅜");
  });
});

describe("help", () => {
  it.each([null, ...commandNames])("for %s fits a terminal of 80 columns", (about) => {
    for (const line of american.help(about).split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("names every command and every style", () => {
    for (const name of commandNames) expect(american.help(null)).toContain(`verso ${name}`);
    for (const style of styles) expect(american.help("plan")).toContain(style);
  });
});

describe("progress", () => {
  const progress = { style: "cross", plan: 2, plans: 3, covered: 0.914, moves: 30, effort: 120 } as const;

  it("names plan, share and the time left, or the moves where they end it", () => {
    const timed = american.progress({ ...progress, secondsLeft: 2.2 });
    expect(timed).toContain(
      "plan 2 of 3, an off-center cross: 91% of the pieced part filled, about 3 s left",
    );
    expect(american.progress({ ...progress, plans: 1, secondsLeft: null })).toMatch(
      /^an off-center .*25% done/,
    );
  });
});

describe("the word sets", () => {
  const answer = {
    top: { width: centimetres(150), height: centimetres(200), method: "frame", extra: centimetres(10) },
    back: { width: centimetres(170), height: centimetres(220) },
    cutOff: { width: centimetres(10), height: centimetres(10) },
    clothWidth: centimetres(107),
    backings: [],
    wide: { width: inches(108), buy: centimetres(170) },
  } as const;

  it("sell cloth by the yard or the metre", () => {
    expect(american.size(answer)).toContain("buy 1⅞\u00a0yd");
    expect(cliWordsFor("en-GB", "cm").size(answer)).toContain("buy 1.7\u00a0m");
  });

  it("have brackets round every text of the one that is nobody's", () => {
    const pseudo = cliWordsFor("en-XA", "in");
    const texts = [
      ...[null, ...commandNames].map(pseudo.help),
      ...Object.values(problems).map(pseudo.problem),
      pseudo.size(answer),
      pseudo.moreNotes(2),
      pseudo.rowsSkipped,
      pseudo.plainCloth,
      pseudo.noPlans,
      pseudo.stepsDoNotFit,
      pseudo.ownFailure("so"),
    ];
    expect(texts.filter((text) => !isBracketed(text))).toEqual([]);
  });
});
