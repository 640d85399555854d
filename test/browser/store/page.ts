/** The store in a page of its own: writes numbered edits and says which of them are kept. */
import { readProject } from "../../../src/files/index.ts";
import { openStore, type ProjectHandle } from "../../../src/store/index.ts";

const store = openStore({
  clock: () => Date.now(),
  newId: () => crypto.randomUUID(),
  titleOfNew: "New back",
  storage: indexedDB,
  device: navigator.storage,
});

/** One edit is two rows, so that half of one would show. */
function rowsOf(tab: string, edit: number) {
  return ["left", "right"].map((half) => ({ line: `${tab} ${edit} ${half}`, cells: {}, others: {} }));
}

async function opened(id: string): Promise<ProjectHandle> {
  const handle = await store.open(id);
  if (handle === null) throw new Error(`there is no project ${id}`);
  return handle;
}

const page = {
  async create(title: string): Promise<string> {
    const project = await store.create({ title });
    if (!(await project.saved())) throw new Error("a new project was not kept");
    return project.id;
  },

  /**
   * Until it is killed: edit after edit, some upon others that are still on their way, each reported once it is kept;
   * at every tenth the rows of five edits before are taken away again.
   */
  async write(id: string, tab: string): Promise<void> {
    const project = await opened(id);
    for (let edit = 0; ; edit++) {
      project.addRows(rowsOf(tab, edit));
      const kept = tell(project, `kept ${tab} ${edit}`);
      if (edit % 3 !== 0) await kept;
      if (edit % 10 !== 9) continue;
      const start = `${tab} ${edit - 5} `;
      const { leftovers } = project.state().project;
      project.removeRows(leftovers.filter(({ line }) => line.startsWith(start)).map(({ id }) => id));
      void tell(project, `gone ${tab} ${edit - 5}`);
    }
  },

  async lines(
    id: string,
  ): Promise<{ readonly lines: readonly string[]; readonly problems: readonly string[] }> {
    const project = await opened(id);
    const { problems, project: value } = project.state();
    await project.close();
    return {
      lines: value.leftovers.map(({ line }) => line),
      problems: problems.map((problem) => JSON.stringify(problem)),
    };
  },

  /** Edits of some kilobytes until one is not kept; how long it took to say so, in milliseconds. */
  async fill(id: string): Promise<{ readonly kept: number; readonly why: string; readonly after: number }> {
    const project = await opened(id);
    for (let edit = 0; edit < 5_000; edit++) {
      const begun = performance.now();
      project.addRows([{ line: `filler ${edit}`, cells: {}, others: fillers() }]);
      const { saving } = await change(project);
      if (saving.kind !== "not-saved") continue;
      return { kept: edit, why: saving.why, after: performance.now() - begun };
    }
    throw new Error("there was always room");
  },

  /** The rows in the file she could save, or why it can't be read. */
  async exported(id: string): Promise<readonly string[]> {
    const read = readProject((await opened(id)).exportFile());
    return read.ok
      ? read.value.leftovers.map(({ line }) => line)
      : read.error.map((problem) => JSON.stringify(problem));
  },

  async saveAgain(id: string): Promise<boolean> {
    const project = await opened(id);
    project.saveAgain();
    return await project.saved();
  },
};

async function tell(project: ProjectHandle, what: string): Promise<void> {
  if (await project.saved()) console.info(`${project.id} ${what}`);
}

/** Nothing that packs well: the room is taken in bytes. */
function fillers(): Readonly<Record<string, string>> {
  const noise = () => btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(1_400))));
  return Object.fromEntries(Array.from({ length: 20 }, (_, index) => [`note ${index}`, noise()]));
}

/** The state when the last edit is kept or is not. */
async function change(project: ProjectHandle) {
  return await new Promise<ReturnType<ProjectHandle["state"]>>((resolve) => {
    const look = () => {
      const state = project.state();
      if (state.saving.kind === "saving") return;
      stop();
      resolve(state);
    };
    const stop = project.subscribe(look);
    look();
  });
}

declare global {
  interface Window {
    store: typeof page;
  }
}
window.store = page;
