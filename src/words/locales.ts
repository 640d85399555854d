/** The word sets. `en-XA` is no one's English: every text in it is bracketed, so that one left out is seen at once. */
export const locales = ["en-US", "en-GB", "en-AU", "en-XA"] as const;
export type Locale = (typeof locales)[number];
