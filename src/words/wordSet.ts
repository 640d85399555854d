import type { DisplayUnit } from "../engine/length/index.ts";
import type { Locale } from "./locales.ts";
import { voiceOf } from "./measures.ts";
import { inBrackets } from "./pseudo.ts";
import { american, australian, british, type TradeWords } from "./trade.ts";
import type { Voice } from "./voice.ts";

const trades: { readonly [L in Locale]: TradeWords } = {
  "en-US": american,
  "en-GB": british,
  "en-AU": australian,
  "en-XA": american,
};

/** A page's table of texts in one word set and one unit; all of it in brackets where it is nobody's. */
export function inWordSet<T extends object>(
  locale: Locale,
  unit: DisplayUnit,
  texts: (voice: Voice) => T,
): T {
  const said = texts(voiceOf(trades[locale], unit));
  return locale === "en-XA" ? inBrackets(said) : said;
}
