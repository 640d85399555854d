export { canShare, giveFile } from "./giveFile.ts";
export { hand, useOpenHanded } from "./handedFile.ts";
export { newBackSettings } from "./locale.ts";
export { Notice } from "./notice.tsx";
export {
  go,
  hrefOf,
  type Route,
  type ScreenName,
  type StepName,
  screenNames,
  useRoute,
} from "./route.ts";
export { fileNameFor, saveFile } from "./saveFile.ts";
export {
  useFrameWords,
  useLocale,
  usePreferences,
  useProject,
  useProjectContent,
  useProjectIfAny,
  useProjectPart,
  useProjectState,
  useSaveProject,
  useStore,
  useStoreState,
} from "./surroundings.ts";
