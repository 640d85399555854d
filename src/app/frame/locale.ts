import { newProject, type ProjectSettings } from "../../files/index.ts";
import type { NewBackSettings } from "../../store/index.ts";
import { type Locale, locales } from "../../words/index.ts";

/** The word set for what the browser says she reads; `?words=en-GB` in the address goes before it. */
export function localeFor(languages: readonly string[], search: string): Locale {
  const asked = new URLSearchParams(search).get("words");
  const known = locales.find((locale) => locale === asked);
  return known ?? languages.map(localeOf).find((locale) => locale !== null) ?? "en-US";
}

function localeOf(language: string): Locale | null {
  const [main, ...rest] = language.split("-");
  if (main === "de") return "de";
  if (main !== "en") return null;
  const region = rest.find((part) => /^[A-Z]{2}$/.test(part));
  if (region === "AU" || region === "NZ") return "en-AU";
  return region === undefined || ["US", "CA", "PH"].includes(region) ? "en-US" : "en-GB";
}

/** What a new back begins with; where she set no unit, with the one that is usual where her language is spoken. */
export function newBackSettings(begins: NewBackSettings, locale: Locale): ProjectSettings {
  const { settings } = newProject({ title: "", createdAt: 0 });
  return { ...settings, ...begins, unit: begins.unit ?? (locale === "de" ? "cm" : settings.unit) };
}
