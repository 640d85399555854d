/** What is said of the files a kept plan leaves Verso as. */
import type { DisplayUnit, Length } from "../engine/length/index.ts";
import type { DrawingWords, PlanDocument } from "../files/index.ts";
import { styleName, styleSentence } from "./english/names.ts";
import { pictureWords } from "./english/picture.ts";
import { figureLines } from "./english/plan.ts";
import type { Locale } from "./locales.ts";
import type { Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** The forms in which it leaves. */
export const takeAways = ["png", "svg", "json", "table"] as const;
export type TakeAway = (typeof takeAways)[number];

export type TakeAwayTexts = {
  readonly heading: string;
  readonly what: string;
  readonly form: { readonly [T in TakeAway]: string };
  readonly share: { readonly [T in TakeAway]: string };
  readonly tableName: (title: string) => string;
  readonly picture: (plan: PlanDocument, ruler: Length) => DrawingWords;
  readonly notMade: string;
};

export function takeAwayTexts(locale: Locale, unit: DisplayUnit): TakeAwayTexts {
  return inWordSet(locale, unit, { name: "takeAway", english });
}

function english(voice: Voice): TakeAwayTexts {
  const words = {
    ...voice,
    style: (style: PlanDocument["style"]) => styleName(style, voice),
    styleIs: (style: PlanDocument["style"]) => styleSentence(style, voice),
    figures: (figures: PlanDocument["figures"]) => figureLines(figures, voice),
  };
  return {
    heading: "Take it with you",
    what: "The plan as a picture to look at or print, as a file that other programs read, and your leftovers as a table.",
    form: {
      png: "Picture (PNG)",
      svg: "Drawing to scale (SVG)",
      json: "The plan (JSON)",
      table: "Leftovers (CSV)",
    },
    share: {
      png: "Share the picture (PNG)",
      svg: "Share the drawing to scale (SVG)",
      json: "Share the plan (JSON)",
      table: "Share the leftovers (CSV)",
    },
    tableName: (title) => `${title}, leftovers`,
    picture: (plan, ruler) => pictureWords(plan, ruler, words),
    notMade: "This browser could not make the file. Take the drawing to scale instead.",
  };
}
