export { exportEverything, importEverything, type TakenIn } from "./everything.ts";
export { openStore } from "./open-store.ts";
export {
  type Look,
  looks,
  type NewBackSettings,
  type OwnCopy,
  openPreferences,
  type Preferences,
  type PreferencesStore,
  usualPreferences,
} from "./preferences.ts";
export { moveToShelf, shelveRemainders, takeFromShelf } from "./shelf.ts";
export * from "./types.ts";
