import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { openStore } from "./open-store.ts";
import type { ProjectHandle, Store } from "./types.ts";

const stores: Store[] = [];
let storage = new IDBFactory();
let files = new Map<string, Uint8Array<ArrayBuffer>>();
let ids = 0;
let isBroken = false;

beforeEach(() => {
  storage = new IDBFactory();
  files = new Map();
  isBroken = false;
});
afterEach(closeAll);

/** Locks that are held by name until their holder lets go. */
function locks() {
  const held = new Set<string>();
  return {
    request: async (name: string, hold: () => Promise<void>) => {
      held.add(name);
      await hold();
      held.delete(name);
    },
    query: async () => ({ held: [...held].map((name) => ({ name })) }),
  };
}
vi.stubGlobal("navigator", { locks: locks() });

async function closeAll() {
  await Promise.all(stores.splice(0).map((store) => store.close()));
}

/** As much of a browser's file system as copies need. */
function folder(): FileSystemDirectoryHandle {
  const handle = {
    getDirectoryHandle: async () => handle,
    getFileHandle: async (name: string) => ({
      getFile: async () => new Blob([files.get(name) ?? new Uint8Array()]),
      createWritable: async () => {
        if (isBroken) throw new DOMException("", "QuotaExceededError");
        let written = new Uint8Array();
        return {
          write: async (bytes: Uint8Array<ArrayBuffer>) => {
            written = bytes;
          },
          close: async () => void files.set(name, written),
        };
      },
    }),
    removeEntry: async (name: string) => void files.delete(name),
    keys: async function* () {
      yield* [...files.keys()];
    },
  };
  return handle as unknown as FileSystemDirectoryHandle;
}

function tab(): Store {
  const store = openStore({
    clock: () => 1_000_000,
    newId: () => `id-${ids++}`,
    titleOfNew: "New back",
    storage,
    device: {
      persist: async () => true,
      persisted: async () => true,
      estimate: async () => ({}),
      getDirectory: async () => folder(),
    },
    databaseName: `copies ${expect.getState().currentTestName}`,
  });
  stores.push(store);
  return store;
}

/** What a browser does that finds its database damaged. */
async function loseDatabase() {
  await closeAll();
  storage = new IDBFactory();
}

async function opened(store: Store, id: string): Promise<ProjectHandle> {
  const handle = await store.open(id);
  if (handle === null) throw new Error("no such project");
  return handle;
}

function copiesOf(project: string): readonly string[] {
  return [...files.keys()].filter((name) => name.startsWith(`${project}~`));
}

const strip = { line: "4 strips", cells: {}, others: {} };

test("where the browser lost its database, every project and version is put back", async () => {
  const store = tab();
  const a = await store.create({ title: "A" });
  a.addRows([strip, strip]);
  await a.saveNamedVersion("the good one");
  a.setTitle("A again");
  const b = await store.create({ title: "B" });
  await Promise.all([a.saved(), b.saved()]);
  const before = a.state().project;
  await loseDatabase();

  const later = tab();
  const again = await opened(later, a.id);
  expect(again.state()).toMatchObject({ project: before, problems: [] });
  expect((await again.versions()).map(({ name }) => name)).toContain("the good one");
  await vi.waitFor(() => expect(later.state().projects).toHaveLength(2));
  again.setTitle("goes on");
  expect(await again.saved()).toBe(true);
});

test("edits of two tabs are in the copies; those of closed tabs go when an open one has all that is in them", async () => {
  const one = await tab().create();
  const other = await opened(tab(), one.id);
  one.setTitle("Mine");
  other.setTime("any");
  await Promise.all([one.saved(), other.saved()]);
  expect(copiesOf(one.id)).toHaveLength(2);
  await loseDatabase();
  const again = await opened(tab(), one.id);
  expect(again.state().project).toMatchObject({ title: "Mine", time: "any" });
  await vi.waitFor(() => expect(copiesOf(one.id)).toHaveLength(1));
});

test("what a damaged record held is taken from the copy, and kept anew", async () => {
  const project = await tab().create({ title: "A" });
  project.setTitle("B");
  await project.saved();
  await closeAll();
  const request = storage.open(`copies ${expect.getState().currentTestName}`);
  const db = await new Promise<IDBDatabase>((resolve) => {
    request.onsuccess = () => resolve(request.result);
  });
  const writing = db.transaction("records", "readwrite");
  writing
    .objectStore("records")
    .put({ project: project.id, seq: 2, at: 0, bytes: new Uint8Array(3), sum: 0 });
  await new Promise<void>((resolve) => {
    writing.oncomplete = () => resolve();
  });
  db.close();
  const again = await opened(tab(), project.id);
  expect(again.state()).toMatchObject({ project: { title: "B" }, problems: [{ kind: "damaged-record" }] });
  await again.saved();
  await closeAll();
  files.clear();
  expect((await opened(tab(), project.id)).state().project.title).toBe("B");
});

test("wiped is wiped: nothing comes back from a copy", async () => {
  const store = tab();
  const project = await store.create();
  const other = await opened(tab(), project.id);
  other.setTitle("On its way");
  expect(await store.wipeAll()).toBe(true);
  await vi.waitFor(() => expect(other.state().gone).toBe(true));
  await vi.waitFor(() => expect(copiesOf(project.id)).toEqual([]));
  expect(await store.wipeAll()).toBe(true);
  const later = tab();
  await vi.waitFor(() => expect(later.state().projects).toEqual([]));
});

test("a spoilt copy is none", async () => {
  const project = await tab().create({ title: "A" });
  await project.saved();
  for (const [name, bytes] of files)
    files.set(
      name,
      bytes.map((byte, index) => (index === 40 ? byte ^ 1 : byte)),
    );
  await loseDatabase();
  const later = tab();
  await vi.waitFor(() => expect(later.state().projects).toEqual([]));
});

test("a file system that takes nothing keeps no edit from being kept", async () => {
  isBroken = true;
  const project = await tab().create({ title: "A" });
  project.setTitle("B");
  expect(await project.saved()).toBe(true);
  await closeAll();
  expect((await opened(tab(), project.id)).state().project.title).toBe("B");
});
