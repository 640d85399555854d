export { type FrameWords, frameWords, type NotSavedWhy } from "./appFrame.ts";
export * from "./cli.ts";
export { type Locale, locales } from "./locales.ts";
export { type Caution, cautions, type Measured, type Names, type Words } from "./types.ts";
export { wordsFor } from "./wordsFor.ts";
