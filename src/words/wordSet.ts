import type { DisplayUnit } from "../engine/length/index.ts";
import { type TableName, tablesOf } from "./fetched.ts";
import type { CliLocale, Locale } from "./locales.ts";
import { voiceOf } from "./measures.ts";
import { inBrackets } from "./pseudo.ts";
import { american, australian, british, type TradeWords } from "./trade.ts";
import type { Voice } from "./voice.ts";

const trades: { readonly [L in CliLocale]: TradeWords } = {
  "en-US": american,
  "en-GB": british,
  "en-AU": australian,
  "en-XA": american,
};

/** Which table it is, and how English says it. */
export type Table<T extends object> = {
  readonly name: TableName;
  readonly english: (voice: Voice) => T;
};

const made = new Map<string, object>();

/**
 * A page's table of texts in one word set and one unit; all of it in brackets where it is nobody's. Made once: a long
 * list asks for it in every row, and number formats are slow to make.
 */
export function inWordSet<T extends object>(locale: Locale, unit: DisplayUnit, table: Table<T>): T {
  const key = [locale, unit, table.name].join(" ");
  const said = made.get(key) ?? sayIn(locale, unit, table);
  made.set(key, said);
  return said as T;
}

function sayIn<T extends object>(locale: Locale, unit: DisplayUnit, { name, english }: Table<T>): T {
  // `Tables` holds that a language's table of this name is of this type.
  if (locale === "de") return tablesOf(locale)[name](voiceOf(tablesOf(locale).trade, unit)) as T;
  const said = english(voiceOf(trades[locale], unit));
  return locale === "en-XA" ? inBrackets(said) : said;
}
