import { type Locale, locales } from "../../words/index.ts";

/** The word set for what the browser says she reads; `?words=en-GB` in the address goes before it. */
export function localeFor(languages: readonly string[], search: string): Locale {
  const asked = new URLSearchParams(search).get("words");
  const known = locales.find((locale) => locale === asked);
  return known ?? languages.map(localeOf).find((locale) => locale !== null) ?? "en-US";
}

function localeOf(language: string): Locale | null {
  const [main, ...rest] = language.split("-");
  if (main !== "en") return null;
  const region = rest.find((part) => /^[A-Z]{2}$/.test(part));
  if (region === "AU" || region === "NZ") return "en-AU";
  return region === undefined || ["US", "CA", "PH"].includes(region) ? "en-US" : "en-GB";
}
