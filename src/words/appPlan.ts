/** What the page says on which a plan is found and kept. */
import type { Style } from "../engine/back/index.ts";
import type { ChoiceNote, Reason } from "../engine/choice/index.ts";
import type { Contrast, DraftProblem, Wish } from "../engine/cloth/index.ts";
import type { DisplayUnit } from "../engine/length/index.ts";
import type { Figures, Usable } from "../engine/plan/index.ts";
import type { BuyRow } from "../engine/supplies/index.ts";
import { choiceNoteText, reasonsText } from "./english/choice.ts";
import { draftProblem } from "./english/draftProblems.ts";
import { styleName, styleSentence } from "./english/names.ts";
import { buyText, figureLines, usableText } from "./english/plan.ts";
import type { Locale } from "./locales.ts";
import { boltText, shortTimeText, timeText } from "./measures.ts";
import type { Names } from "./types.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** How many rows there are, and how many of them wait to be mended. */
type Rows = { readonly all: number; readonly waiting: number };

/** Where something is mended. */
export type MendingPage = "size" | "leftovers";

export type PlanTexts = {
  readonly title: string;
  readonly bestStyles: string;
  readonly allStyles: string;
  readonly otherStyles: string;
  readonly style: (style: Style) => string;
  readonly styleIs: (style: Style) => string;
  /** "2–3½ hours"; under a small drawing. */
  readonly hours: (figures: Figures) => string;
  /** "buy 2⅞ yd"; under a small drawing. */
  readonly toBuy: (rows: readonly BuyRow[]) => string;
  readonly drawing: string;
  readonly wishes: string;
  readonly wish: { readonly [W in Wish]: string };
  readonly contrast: string;
  readonly contrasts: { readonly [C in Contrast]: string };
  /** What each of them means. */
  readonly contrastIs: { readonly [C in Contrast]: string };
  readonly choosing: string;
  readonly reasons: (reasons: readonly Reason[]) => string;
  readonly choiceNote: (note: ChoiceNote) => string;

  readonly change: string;
  readonly changeHow: string;
  readonly pieces: string;
  readonly stays: string;
  readonly mustBeIn: string;
  readonly leaveOut: string;
  readonly keepWhole: string;
  readonly anotherHere: string;
  readonly anotherHow: string;
  readonly noOther: string;
  /** A piece that this plan has in another place. */
  readonly elsewhere: string;
  /** How many cells stay when the plan is made again. */
  readonly staying: (count: number) => string;
  /** How many cells should have stayed and could not. */
  readonly couldNotStay: (count: number) => string;
  readonly again: string;
  readonly letAllGo: string;
  readonly done: string;

  readonly searching: string;
  readonly searchingShare: (covered: number) => string;
  readonly found: string;
  readonly stopped: string;
  readonly failed: string;
  readonly tryAgain: string;
  readonly stop: string;
  readonly searchOn: string;
  readonly another: string;

  readonly keep: string;
  readonly isKept: string;
  readonly sew: string;
  readonly keepingClears: (ticks: number) => string;
  readonly changedSinceKept: string;

  readonly inShort: string;
  readonly time: (figures: Figures) => string;
  readonly figures: (figures: Figures, usable: Usable) => readonly string[];
  readonly buy: string;
  readonly buyRow: (row: BuyRow, names: Names) => string;
  readonly nothingToBuy: string;
  readonly left: string;
  readonly nothingLeft: string;
  readonly notes: string;
  readonly note: (problem: DraftProblem) => string;
  /** Fabrics of which no colour is known. */
  readonly uncoloured: (fabrics: readonly string[]) => string;
  readonly waiting: (rows: number) => string;

  readonly notReady: string;
  /** `listed`: rows of her leftovers, those that wait to be mended among them. */
  readonly stops: (problem: DraftProblem, listed: Rows) => string;
  readonly mendOn: { readonly [P in MendingPage]: string };
};

export function planTexts(locale: Locale, unit: DisplayUnit): PlanTexts {
  return inWordSet(locale, unit, { name: "plan", english });
}

function english(voice: Voice): PlanTexts {
  return {
    title: "Plan",
    bestStyles: "These suit your leftovers best",
    allStyles: "All styles, those that suit your leftovers best first",
    otherStyles: "Other styles",
    style: (style) => sentence(styleName(style, voice)),
    styleIs: (style) => styleSentence(style, voice),
    hours: ({ minutes }) => shortTimeText(minutes, voice),
    toBuy: (rows) => toBuyText(rows, voice),
    drawing: "An empty place: this style is being drawn.",
    ...choiceTexts(voice),
    ...changeTexts(voice),

    searching: "Looking for a better one…",
    searchingShare: (covered) =>
      `Looking for a better one. So far ${voice.percent(covered)} of the pieced part is filled.`,
    found: "This is the best that was found.",
    stopped: "Stopped. This is the best so far.",
    failed: "The search broke off.",
    tryAgain: "Try again",
    stop: "Stop here",
    searchOn: "Look longer",
    another: "Another like this",

    keep: "Keep this plan",
    isKept: "You keep this plan.",
    sew: "Go on to sewing",
    keepingClears: (ticks) =>
      `You have ticked ${voice.count(ticks, "step", "steps")} of the plan you keep. Keeping this one instead begins anew. Undo brings everything back.`,
    changedSinceKept:
      "Your leftovers or the size changed since you kept a plan. It stays as it was until you keep another.",

    ...listTexts(voice),

    notReady: "Something is needed before a plan can be made",
    stops: (problem, listed) => stopText(problem, listed, voice),
    mendOn: { size: "Go to Size", leftovers: "Go to Leftovers" },
  };
}

function choiceTexts(voice: Voice) {
  return {
    wishes: "What would you like?",
    wish: {
      "sew-less": "Sew less",
      "use-small": "Use up small ones",
      "buy-nothing": "Buy nothing",
    },
    contrast: "How should fabrics meet?",
    contrasts: { blend: "Blend", mixed: "Mixed", strong: "Strong" },
    contrastIs: {
      blend: "Each fabric flows into the next. From across the room the pieces read as one.",
      mixed: "As they come, but no fabric beside its like where that can be helped.",
      strong: "Light beside dark wherever the pieces allow it, so that each one shows.",
    },
    choosing: "Looking for plans that differ…",
    reasons: (reasons: readonly Reason[]) => reasonsText(reasons, voice),
    choiceNote: (note: ChoiceNote) => choiceNoteText(note, voice),
  };
}

function changeTexts(voice: Voice) {
  return {
    change: "Change this plan",
    changeHow:
      "Tap a piece in the drawing, or choose it in the list. Once it is framed, you can also drag it onto another.",
    pieces: "Pieces of this plan",
    stays: "This stays",
    mustBeIn: "Must be in",
    leaveOut: "Leave out",
    keepWhole: "Keep whole",
    anotherHere: "Another piece here",
    anotherHow:
      "One that lies unused goes in at once. One that lies elsewhere stays here, and the rest is planned again round it.",
    noOther: "None of your other leftovers is of the size of this place.",
    elsewhere: "lies elsewhere in this plan",
    staying: (count: number) =>
      count === 1 ? "1 piece stays in its place." : `${voice.number(count)} pieces stay in their places.`,
    couldNotStay: (count: number) =>
      count === 1
        ? "1 piece could not stay: it is not there any more, or does not fit."
        : `${voice.number(count)} pieces could not stay: they are not there any more, or do not fit.`,
    again: "Plan again round what stays",
    letAllGo: "Let all go",
    done: "Done",
  };
}

function listTexts(voice: Voice) {
  return {
    inShort: "In short",
    time: ({ minutes }: Figures) => `${sentence(timeText(minutes, voice))}, cutting and pressing included.`,
    figures: (figures: Figures, usable: Usable) =>
      figureLines(figures, voice).toSpliced(1, 0, usableText(usable, voice)),
    buy: "To buy",
    buyRow: (row: BuyRow, names: Names) => buyText(row, names, voice),
    nothingToBuy: "Nothing.",
    left: "What stays over",
    nothingLeft: "Every leftover is used.",
    notes: "Worth knowing",
    note: (problem: DraftProblem) => draftProblem(problem, voice),
    uncoloured: (fabrics: readonly string[]) =>
      `No ${voice.trade.colour} is known yet of ${voice.list(fabrics)}. A plan can't part like from like there until each has one: give it under Leftovers, Fabrics.`,
    waiting: (rows: number) =>
      `${voice.count(rows, "row of your leftovers waits", "rows of your leftovers wait")} to be mended and ${rows === 1 ? "is" : "are"} not in this plan.`,
  };
}

/** What has not been said yet is no mistake. */
function stopText(problem: DraftProblem, { all, waiting }: Rows, voice: Voice): string {
  if (problem.kind === "back-zero")
    return "The size of the back is not known yet. Measure the top, or give the size of the back.";
  if (problem.kind !== "nothing-to-plan") return draftProblem(problem, voice);
  if (all === 0) return "No leftovers are listed yet. List what the top left over.";
  return waiting === all
    ? "Every row of your leftovers waits to be mended. Mend one, and a plan can be made."
    : draftProblem(problem, voice);
}

function toBuyText(rows: readonly BuyRow[], voice: Voice): string {
  if (rows.length === 0) return "nothing to buy";
  return `buy ${voice.list(rows.map(({ length }) => boltText(length, voice)))}`;
}
