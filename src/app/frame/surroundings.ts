/** What every page finds around it: the words, the store, the open project. */
import { createContext, useContext, useSyncExternalStore } from "react";
import type { Project } from "../../files/index.ts";
import type {
  Preferences,
  PreferencesStore,
  ProjectHandle,
  ProjectState,
  Store,
  StoreState,
} from "../../store/index.ts";
import { type FrameWords, frameWords, type Locale } from "../../words/index.ts";
import { fileNameFor, saveFile } from "./saveFile.ts";

export type Surroundings = {
  readonly locale: Locale;
  readonly store: Store;
  readonly preferences: PreferencesStore;
};

export const SurroundingsContext = createContext<Surroundings | null>(null);
export const ProjectContext = createContext<ProjectHandle | null>(null);

/** The word set she reads. */
export function useLocale(): Locale {
  return useSurroundings().locale;
}

export function useStore(): Store {
  return useSurroundings().store;
}

/** The projects on this device, as they are now. */
export function useStoreState(): StoreState {
  const store = useStore();
  return useSyncExternalStore(store.subscribe, store.state);
}

/** What belongs to this device and to no back: as it is now, and what changes it. */
export function usePreferences(): readonly [now: Preferences, preferences: PreferencesStore] {
  const { preferences } = useSurroundings();
  return [useSyncExternalStore(preferences.subscribe, preferences.state), preferences];
}

/** The open project, where the page belongs to one. */
export function useProjectIfAny(): ProjectHandle | null {
  return useContext(ProjectContext);
}

/** The open project, to be edited. Only on pages that belong to a project. */
export function useProject(): ProjectHandle {
  const project = useContext(ProjectContext);
  if (project === null) throw new Error("no project round it");
  return project;
}

/** The open project, as it is now. */
export function useProjectState(): ProjectState {
  const project = useProject();
  return useSyncExternalStore(project.subscribe, project.state);
}

/** What is in the open project. Drawn anew when that changes, and not when it has been kept. */
export function useProjectContent(): Project {
  const project = useProject();
  return useSyncExternalStore(project.subscribe, () => project.state().project);
}

/**
 * A part of the open project, which is the same object while nothing in it changes. Drawn anew when that changes, and
 * not at every edit: a large back has much that an edit is no concern of.
 */
export function useProjectPart<T>(part: (project: Project) => T): T {
  const project = useProject();
  return useSyncExternalStore(project.subscribe, () => part(project.state().project));
}

/** The frame's own words. */
export function useFrameWords(): FrameWords {
  return frameWordsOf(useLocale());
}

/** Gives her a project as a file of her own, unsaved edits included, and knows from then on that there is one. */
export function useSaveProject(): (project: ProjectHandle) => void {
  const { preferences } = useSurroundings();
  return (project) => {
    saveFile(project.exportFile(), fileNameFor(project.state().project.title));
    preferences.copied([project.id], Date.now());
  };
}

function useSurroundings(): Surroundings {
  const surroundings = useContext(SurroundingsContext);
  if (surroundings === null) throw new Error("no app round it");
  return surroundings;
}

const framesMade = new Map<Locale, FrameWords>();

// The same word set is the same object, so that what depends on it is not drawn anew.
function frameWordsOf(locale: Locale): FrameWords {
  const words = framesMade.get(locale) ?? frameWords(locale);
  framesMade.set(locale, words);
  return words;
}
