export { type AdviceTexts, adviceTexts } from "./appAdvice.ts";
export { type DrawingTexts, drawingTexts, type PartPlace } from "./appDrawing.ts";
export { type FrameWords, frameWords, type NotSavedWhy } from "./appFrame.ts";
export {
  type HeapView,
  heapViews,
  type LeftoversTexts,
  leftoversTexts,
  type Reserved,
} from "./appLeftovers.ts";
export { type MendingPage, type PlanTexts, planTexts } from "./appPlan.ts";
export { type ProjectStage, type ProjectsTexts, projectsTexts } from "./appProjects.ts";
export { type SewingPart, type SewTexts, sewTexts } from "./appSew.ts";
export { type OneCloth, type SizeTexts, sizeTexts } from "./appSize.ts";
export { type CardsWords, cardsWords } from "./cards.ts";
export * from "./cli.ts";
export { type Locale, locales } from "./locales.ts";
export { type PhotoWords, photoWords } from "./photo.ts";
export { type Caution, cautions, type Measured, type Names, type Words } from "./types.ts";
export { wordsFor } from "./wordsFor.ts";
