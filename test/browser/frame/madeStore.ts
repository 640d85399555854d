import { newProject } from "../../../src/files/index.ts";
import type { ProjectHandle, ProjectState, Saving, Store, StoreState } from "../../../src/store/index.ts";

/** A store that does what a test says, so that the frame can be seen in every state; only what the frame asks for. */
export function madeStore(): {
  readonly store: Store;
  readonly say: (change: Partial<ProjectState>) => void;
} {
  const project = madeProject();
  const none: StoreState = { projects: [], removed: [], trouble: null, persisted: null, space: null };
  const unreadable: StoreState = { ...none, projects: null, trouble: "failed" };
  const listeners = new Set<() => void>();
  let state = none;
  const store: Partial<Store> = {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    // What is held is given out when it is asked for a second time.
    open: async (id) => {
      const isHeld = id === "held" && state === none;
      if (id === "held") state = isHeld ? unreadable : none;
      for (const listener of listeners) listener();
      return id === "there" || (id === "held" && !isHeld) ? project.handle : null;
    },
  };
  return { store: store as Store, say: project.say };
}

function madeProject() {
  const listeners = new Set<() => void>();
  const [past, future]: [string[], string[]] = [[], []];
  let state: ProjectState = {
    project: newProject({ title: "Garden room back", createdAt: 0 }),
    saving: { kind: "steady" },
    canUndo: false,
    canRedo: false,
    readOnly: false,
    gone: false,
    problems: [],
  };
  const say = (change: Partial<ProjectState>) => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  const show = (title: string) =>
    say({ project: { ...state.project, title }, canUndo: past.length > 0, canRedo: future.length > 0 });
  const step = (from: string[], to: string[]) => {
    const title = from.pop();
    if (title === undefined) return;
    to.push(state.project.title);
    show(title);
  };
  const handle: Partial<ProjectHandle> = {
    id: "there",
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    setTitle: (title) => {
      past.push(state.project.title);
      future.length = 0;
      show(title);
    },
    undo: () => step(past, future),
    redo: () => step(future, past),
    saveAgain: () => say({ saving: { kind: "steady" } satisfies Saving }),
    exportFile: () => new TextEncoder().encode("the project"),
  };
  return { handle: handle as ProjectHandle, say };
}
