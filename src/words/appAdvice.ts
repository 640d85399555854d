/** What is worth knowing before one sews, on the page on which a plan is chosen. */
import type { Advice } from "../engine/advice/index.ts";
import type { DisplayUnit } from "../engine/length/index.ts";
import { adviceText, adviceTitle, adviceWhere } from "./english/advice.ts";
import type { Locale } from "./locales.ts";
import type { Names } from "./types.ts";
import type { Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type AdviceTexts = {
  readonly heading: string;
  readonly title: (advice: Advice) => string;
  readonly text: (advice: Advice, names: Names) => string;
  /** null: there is nothing to name. */
  readonly where: (advice: Advice, names: Names) => string | null;
  readonly show: string;
  /** The same for who does not see which hint it stands under. */
  readonly showOf: (advice: Advice) => string;
  /** Under the large drawing. */
  readonly marked: (advice: Advice) => string;
};

export function adviceTexts(locale: Locale, unit: DisplayUnit): AdviceTexts {
  return inWordSet(locale, unit, { name: "advice", english });
}

function english(voice: Voice): AdviceTexts {
  return {
    heading: "Before you sew",
    title: (advice) => adviceTitle(advice, voice),
    text: (advice, names) => adviceText(advice, names, voice),
    where: (advice, names) => adviceWhere(advice, names, voice),
    show: "Show where",
    showOf: (advice) => `Show where: ${adviceTitle(advice, voice)}`,
    marked: (advice) => `Marked: ${markedText(advice, voice)}.`,
  };
}

function markedText(advice: Advice, voice: Voice): string {
  if (advice.kind === "contrast")
    return advice.mend === null ? "fabrics that are hard to tell apart" : "where the new fabric would go";
  const title = adviceTitle(advice, voice);
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}`;
}
