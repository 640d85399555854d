export { Notice } from "./notice.tsx";
export { go, hrefOf, type Route, type ScreenName, type StepName, screenNames, useRoute } from "./route.ts";
export { fileNameFor, saveFile } from "./saveFile.ts";
export { saveProject } from "./savingNotice.tsx";
export {
  useFrameWords,
  useLocale,
  useProject,
  useProjectState,
  useStore,
  useStoreState,
} from "./surroundings.ts";
