import type { Locale } from "./locales.ts";
import type { TradeWords } from "./trade.ts";
import type { Voice } from "./voice.ts";

/** The tables of texts of which the app is made; `tables.ts` says what is in each. */
export type TableName =
  | "advice"
  | "cards"
  | "comparison"
  | "drawing"
  | "hand"
  | "leftovers"
  | "photo"
  | "photoFound"
  | "plan"
  | "projects"
  | "settings"
  | "sew"
  | "shelf"
  | "sitting"
  | "size"
  | "takeAway"
  | "topPhoto"
  | "views";

/** What the frame says has no sizes in it. */
type OtherTables = { readonly [N in TableName]: (voice: Voice) => object } & {
  readonly frame: object;
  readonly trade: TradeWords;
};

/** English is always there; any other language once it was fetched. */
const fetched = new Map<Locale, OtherTables>();

export function isFetched(locale: Locale): boolean {
  return locale !== "de" || fetched.has(locale);
}

export function putTables(locale: Locale, tables: OtherTables): void {
  fetched.set(locale, tables);
}

export function tablesOf(locale: Locale): OtherTables {
  const tables = fetched.get(locale);
  if (tables === undefined) throw new Error(`${locale} was not fetched`);
  return tables;
}
