export { type AdviceTexts, adviceTexts } from "./appAdvice.ts";
export { type HandTexts, handTexts } from "./appByHand.ts";
export { type ComparisonTexts, comparisonTexts } from "./appComparison.ts";
export { type DrawingTexts, drawingTexts, type PartPlace } from "./appDrawing.ts";
export { type FrameWords, frameWords, type NotSavedWhy } from "./appFrame.ts";
export {
  type HeapView,
  heapViews,
  type LeftoversTexts,
  leftoversTexts,
  type Reserved,
} from "./appLeftovers.ts";
export { type PhotoTexts, photoTexts } from "./appPhoto.ts";
export { type MendingPage, type PlanTexts, planTexts } from "./appPlan.ts";
export { type ProjectStage, type ProjectsTexts, projectsTexts, type ShownVersion } from "./appProjects.ts";
export {
  type CopiesOutside,
  type ReadyWithout,
  type SettingsTexts,
  type ShownLook,
  settingsTexts,
} from "./appSettings.ts";
export { type SewingPart, type SewTexts, sewTexts } from "./appSew.ts";
export { type HeapRemark, type ShelfTexts, shelfTexts } from "./appShelf.ts";
export { type SittingTexts, sittingTexts } from "./appSitting.ts";
export { type OneCloth, type SizeTexts, sizeTexts } from "./appSize.ts";
export { type TakeAway, type TakeAwayTexts, takeAways, takeAwayTexts } from "./appTakeAway.ts";
export { type TopPhotoTexts, topPhotoTexts } from "./appTopPhoto.ts";
export { type ViewTexts, viewTexts } from "./appViews.ts";
export { type CardsWords, cardsWords } from "./cards.ts";
export * from "./cli.ts";
// What a language is made with.
export type { SpokenPiece, TakenForGranted } from "./english/lines.ts";
export { isFetched, putTables } from "./fetched.ts";
export { type CliLocale, cliLocales, type Language, type Locale, languageNames, locales } from "./locales.ts";
export { boltText, bytesText, dayText, momentText, timeSpan } from "./measures.ts";
export { type PhotoWords, photoWords } from "./photo.ts";
export { isCutToMeasure, isPlainPart, seamless } from "./sewnHow.ts";
export { type SpokenColour, spokenColour, type Tone } from "./spokenColour.ts";
export type { Tables } from "./tables.ts";
export type { TradeWords } from "./trade.ts";
export { type Caution, cautions, type Measured, type Names, type Words } from "./types.ts";
export { quoted, sentence, type Voice } from "./voice.ts";
export { wordsFor } from "./wordsFor.ts";
