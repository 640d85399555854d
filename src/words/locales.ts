/** The word sets. `en-XA` is no one's English: every text in it is bracketed, so that one left out is seen at once. */
export const locales = ["en-US", "en-GB", "en-AU", "de", "en-XA"] as const;
export type Locale = (typeof locales)[number];

/** Those she may choose. */
export type Language = Exclude<Locale, "en-XA">;

/** Each in its own words. */
export const languageNames: { readonly [L in Language]: string } = {
  "en-US": "English, American",
  "en-GB": "English, British",
  "en-AU": "English, Australian",
  de: "Deutsch",
};

/** The command line speaks English. */
export type CliLocale = Exclude<Locale, "de">;
export const cliLocales = locales.filter((locale): locale is CliLocale => locale !== "de");
