/** What is said where plans lie side by side, and where one is kept under a name. */
import type { DisplayUnit } from "../engine/length/index.ts";
import type { Figures } from "../engine/plan/index.ts";
import { contrastName } from "./english/plan.ts";
import type { Locale } from "./locales.ts";
import { momentText } from "./measures.ts";
import { quoted, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** A plan that is kept under a name, and when that was. */
type Named = { readonly name: string; readonly at: number };

export type ComparisonTexts = {
  readonly sideBySide: string;
  readonly close: string;
  readonly which: string;
  /** There is no second one to lay beside the first. */
  readonly onlyOne: string;
  /** Heads of the rows. */
  readonly time: string;
  readonly toBuy: string;
  readonly covered: string;
  readonly seams: string;
  readonly plain: string;
  readonly contrast: string;
  readonly goOn: string;

  readonly coveredOf: (figures: Figures) => string;
  readonly seamsOf: (figures: Figures) => string;
  readonly plainOf: (figures: Figures) => string;
  readonly contrastOf: (figures: Figures) => string;

  readonly looksAt: string;
  readonly keeps: string;
  readonly keepsOld: string;
  readonly keptUnder: (named: Named) => string;
  readonly take: string;
  readonly takeOf: (name: string) => string;

  readonly underName: string;
  readonly underNameHow: string;
  readonly name: string;
  readonly keepUnder: string;
  readonly nameFirst: string;
  readonly noneNamed: string;
  readonly withoutPlan: string;
  readonly goBack: string;
  readonly goBackTo: (named: Named) => string;
  readonly remove: string;
  readonly removeNamed: (named: Named) => string;
  readonly wasRemoved: (named: Named) => string;
  readonly notRemoved: string;
  readonly putBack: string;
  readonly wasPutBack: (named: Named) => string;
  readonly wasKept: (name: string) => string;
  readonly wentBack: (named: Named) => string;
  readonly notKept: string;
  readonly notGoneBack: string;
};

export function comparisonTexts(locale: Locale, unit: DisplayUnit): ComparisonTexts {
  return inWordSet(locale, unit, { name: "comparison", english });
}

function english(voice: Voice): ComparisonTexts {
  return {
    sideBySide: "Plans side by side",
    close: "Close",
    which: "Which ones?",
    onlyOne: "There is only one plan so far. The others are still being drawn.",
    ...factTexts(voice),
    looksAt: "The one you look at",
    keeps: "The one you keep",
    keepsOld: "The one you keep, for what your leftovers or the size were then",
    keptUnder: ({ at }) => `Kept under this name ${momentText(at, voice)}`,
    goOn: "Go on with",
    take: "This one",
    takeOf: (name) => `Go on with ${name}`,
    ...nameTexts(voice),
  };
}

function factTexts({ area, count, percent, trade }: Voice) {
  return {
    time: "Time",
    toBuy: "Cloth",
    covered: "Leftovers",
    seams: "Sewing",
    plain: "Plain cloth",
    contrast: "Contrast",
    coveredOf: ({ covered }: Figures) =>
      covered === 0 ? "none with a size of its own" : `uses ${percent(covered)}`,
    seamsOf: ({ joins }: Figures) => count(joins, "seam", "seams"),
    plainOf: ({ plain, plainCells }: Figures) =>
      plainCells === 0 ? "none" : `${area(plain)}, in ${count(plainCells, "part", "parts")}`,
    contrastOf: ({ contrast }: Figures) =>
      contrast === null ? `not known without ${trade.colours}` : contrastName(contrast),
  };
}

function nameTexts(voice: Voice) {
  return {
    underName: "Kept under a name",
    underNameHow:
      "The plan you look at is kept under a name, with your leftovers and the size as they are now. Going back brings all of that back.",
    name: "Name for this plan",
    keepUnder: "Keep it under this name",
    nameFirst: "Give it a name first.",
    noneNamed: "None yet.",
    withoutPlan: "no plan in it",
    goBack: "Go back to it",
    goBackTo: ({ name, at }: Named) => `Go back to ${quoted(name)}, kept ${momentText(at, voice)}`,
    remove: "Remove",
    removeNamed: ({ name, at }: Named) => `Remove ${quoted(name)}, kept ${momentText(at, voice)}`,
    wasRemoved: ({ name }: Named) => `${quoted(name)} is removed.`,
    notRemoved: "It could not be removed. Nothing has changed.",
    putBack: "Put it back",
    wasPutBack: ({ name }: Named) => `${quoted(name)} is back.`,
    wasKept: (name: string) => `Kept as ${quoted(name)}.`,
    wentBack: ({ name }: Named) => `All is as it was: ${quoted(name)}. Undo brings back what was here.`,
    notKept: "It could not be kept. Save a file of this back instead.",
    notGoneBack: "It can't be read any more. Nothing has changed.",
  };
}
