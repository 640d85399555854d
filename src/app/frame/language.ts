import { isFetched, type Locale, putTables } from "../../words/index.ts";

/** English comes with the app; German is fetched where it is chosen. Resolves once `locale` can be spoken. */
export async function fetchLanguage(locale: Locale): Promise<void> {
  if (isFetched(locale)) return;
  putTables("de", (await import("../../german/index.ts")).german);
}
