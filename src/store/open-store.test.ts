import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { type KeptPlan, newProject, readProject, writePlan, writeProject } from "../files/index.ts";
import type { Tables } from "./database.ts";
import { openStore } from "./open-store.ts";
import type { ProjectHandle, Store, StoredProblem } from "./types.ts";

let storage = new IDBFactory();
let now = 1_000;
let ids = 0;
const stores: Store[] = [];

beforeEach(() => {
  storage = new IDBFactory();
  now = Date.UTC(2031, 4, 1);
  ids = 0;
});
afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(stores.splice(0).map((store) => store.close()));
});

/** A tab of the app. Tabs of one test share storage and hear each other. */
function tab(from: IDBFactory | null = storage): Store {
  const store = openStore({
    clock: () => now,
    newId: () => `id-${ids++}`,
    titleOfNew: "New back",
    storage: from,
    device: null,
    databaseName: `test ${expect.getState().currentTestName}`,
  });
  stores.push(store);
  return store;
}

async function opened(store: Store, id: string): Promise<ProjectHandle> {
  const handle = await store.open(id);
  if (handle === null) throw new Error("no such project");
  return handle;
}

async function until(holds: () => boolean): Promise<void> {
  await vi.waitFor(() => expect(holds()).toBe(true), { timeout: 5_000, interval: 5 });
}

const strip = { line: "4 strips 2 1/2 x 31", cells: {}, others: {} };

describe("kept", () => {
  test("what was said to be kept is there after the tab is gone", async () => {
    const project = await tab().create();
    project.setTitle("Cabin");
    const [row = ""] = project.addRows([strip, strip]);
    project.changeRow(row, { cells: { fabric: { text: "oat", value: "oat" } } });
    expect(project.state().saving).toEqual({ kind: "saving" });
    expect(await project.saved()).toBe(true);
    expect(project.state().saving).toEqual({ kind: "steady" });
    const again = await opened(tab(), project.id);
    expect(again.state().project).toEqual(project.state().project);
  });

  test("five hundred edits are compacted and all there", async () => {
    const project = await tab().create();
    for (let edit = 0; edit < 500; edit++) {
      project.setTitle(`Title ${edit}`);
      project.addRows([{ ...strip, line: `${edit}` }]);
      await project.saved();
    }
    const again = await opened(tab(), project.id);
    expect(again.state().project.title).toBe("Title 499");
    expect(again.state().project.leftovers.map(({ line }) => line)).toEqual(
      Array.from({ length: 500 }, (_, edit) => `${edit}`),
    );
    expect((await records(project.id)).length).toBeLessThan(350);
  });

  test("an unchanged state is the same object; a change tells the listeners", async () => {
    const project = await tab().create();
    await project.saved();
    const before = project.state();
    expect(project.state()).toBe(before);
    const heard = vi.fn();
    const stop = project.subscribe(heard);
    project.setTitle("Cabin");
    expect(heard).toHaveBeenCalled();
    expect(project.state()).not.toBe(before);
    stop();
    heard.mockClear();
    project.setTitle("Cabin 2");
    expect(heard).not.toHaveBeenCalled();
  });
});

describe("no room", () => {
  /** Writing fails as a full disk lets it fail, until it is freed. */
  function fullDisk() {
    const add = vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(() => {
      throw new DOMException("no room", "QuotaExceededError");
    });
    return { free: () => add.mockRestore() };
  }

  test("says not saved, loses nothing, exports, and keeps all once there is room again", async () => {
    const project = await tab().create();
    project.setTitle("Kept");
    await project.saved();
    const disk = fullDisk();
    project.setTitle("Not kept");
    expect(await project.saved()).toBe(false);
    expect(project.state().saving).toEqual({ kind: "not-saved", why: "full" });
    project.addRows([strip]);
    const file = readProject(project.exportFile());
    expect(file.ok && file.value.title).toBe("Not kept");
    const other = await opened(tab(), project.id);
    expect(other.state().project.title).toBe("Kept");
    disk.free();
    await until(() => project.state().saving.kind === "steady");
    await until(() => other.state().project.title === "Not kept");
    expect(other.state().project.leftovers).toHaveLength(1);
  });

  test("saves again when asked", async () => {
    const project = await tab().create();
    const disk = fullDisk();
    project.setTitle("Cabin");
    await project.saved();
    disk.free();
    project.saveAgain();
    expect(await project.saved()).toBe(true);
  });

  test("a failed write leaves neither half of itself behind", async () => {
    const store = tab();
    const project = await store.create();
    const disk = fullDisk();
    project.setTitle("Cabin");
    await project.saved();
    const seen = tab();
    await until(() => seen.state().projects !== null);
    expect(seen.state().projects?.map(({ title }) => title)).toEqual(["New back"]);
    disk.free();
  });

  test("without storage it works in memory and says so", async () => {
    const store = tab(null);
    const project = await store.create();
    project.setTitle("Cabin");
    await project.saved();
    expect(project.state()).toMatchObject({ saving: { kind: "not-saved", why: "no-storage" } });
    expect(store.state()).toMatchObject({ trouble: "no-storage", projects: [{ title: "Cabin" }] });
    const file = await store.exportFile(project.id);
    expect(file && readProject(file)).toMatchObject({ ok: true, value: { title: "Cabin" } });
  });
});

describe("damage", () => {
  async function damagedProject(spoil: (all: readonly Tables["records"]["value"][]) => void) {
    const project = await tab().create({ title: "Good" });
    for (const title of ["One", "Two", "Three"]) {
      project.setTitle(title);
      await project.saved();
    }
    await changeRecords(project.id, spoil);
    return { project, problems: async () => (await opened(tab(), project.id)).state().problems };
  }

  const damage: StoredProblem = { kind: "damaged-record", at: Date.UTC(2031, 4, 1) };

  test.each<[string, (last: Tables["records"]["value"] | undefined) => void]>([
    ["one bit", (last) => last?.bytes.set([(last.bytes[3] ?? 0) ^ 4], 3)],
    ["its time", (last) => last && Object.assign(last, { at: last.at + 1 })],
    ["its length", (last) => last && Object.assign(last, { bytes: last.bytes.slice(0, -1) })],
    ["its sum", (last) => last && Object.assign(last, { sum: 1 })],
    ["what it is", (last) => last && Object.assign(last, { bytes: "text" })],
  ])("the last record, spoilt in %s: everything before is there and it is reported", async (_, spoil) => {
    const { project } = await damagedProject((all) => spoil(all.at(-1)));
    const again = await opened(tab(), project.id);
    expect(again.state().project.title).toBe("Two");
    expect(again.state().problems.map(({ kind }) => kind)).toEqual(["damaged-record"]);
    again.setTitle("Goes on");
    expect(await again.saved()).toBe(true);
    expect((await opened(tab(), project.id)).state().project.title).toBe("Goes on");
  });

  test("one in the middle: those that follow upon it are reported as missing", async () => {
    const { project, problems } = await damagedProject((all) => all[1]?.bytes.fill(7));
    expect(await problems()).toEqual([damage, { kind: "edits-missing" }]);
    expect((await opened(tab(), project.id)).state().project.title).toBe("Good");
  });

  test("a damaged log is never compacted", async () => {
    const { project } = await damagedProject((all) => all[1]?.bytes.fill(7));
    const again = await opened(tab(), project.id);
    for (let edit = 0; edit < 230; edit++) {
      again.setTitle(`Title ${edit}`);
      await again.saved();
    }
    expect((await records(project.id)).length).toBe(4 + 230);
  });

  test("nothing readable: the last version that can be read stands in, and a version stays", async () => {
    const project = await tab().create({ title: "Good" });
    project.addRows([strip]);
    await project.saveNamedVersion("before");
    await changeRecords(project.id, (all) => {
      for (const record of all) record.bytes.fill(7);
    });
    const again = await opened(tab(), project.id);
    expect(again.state().project).toMatchObject({ title: "Good", leftovers: [{ line: strip.line }] });
    expect(again.state().problems.map(({ kind }) => kind)).toContain("damaged-record");
    expect(again.state().readOnly).toBe(false);
    again.setTitle("Goes on");
    await again.saved();
    expect((await opened(tab(), project.id)).state().project.title).toBe("Goes on");
  });

  test("nothing readable and no version: it is shown as such and takes no edits", async () => {
    const { project } = await damagedProject((all) => {
      for (const record of all) record.bytes.fill(7);
    });
    expect((await opened(tab(), project.id)).state()).toMatchObject({ readOnly: true });
  });
});

describe("two tabs", () => {
  test("editing at once they end the same, and so does a third", async () => {
    const one = await tab().create();
    const other = await opened(tab(), one.id);
    for (let edit = 0; edit < 20; edit++) {
      one.addRows([{ ...strip, line: `one ${edit}` }]);
      other.addRows([{ ...strip, line: `other ${edit}` }]);
      other.setTitle(`Title ${edit}`);
      if (edit % 3 === 0) await one.saved();
    }
    await Promise.all([one.saved(), other.saved()]);
    await until(() => one.state().project.leftovers.length === 40);
    await until(() => other.state().project.leftovers.length === 40);
    expect(one.state().project).toEqual(other.state().project);
    expect((await opened(tab(), one.id)).state().project).toEqual(one.state().project);
  });

  test("undo takes back one's own edits only", async () => {
    const one = await tab().create();
    const other = await opened(tab(), one.id);
    one.setTitle("Mine");
    await one.saved();
    await until(() => other.state().project.title === "Mine");
    expect(other.state().canUndo).toBe(false);
    other.setTime("any");
    await other.saved();
    await until(() => one.state().project.time === "any");
    one.undo();
    expect(one.state().project).toMatchObject({ title: "New back", time: "any" });
    one.redo();
    expect(one.state().project.title).toBe("Mine");
  });

  test("a project removed in one is gone in the other, and its edits do nothing", async () => {
    const first = tab();
    const one = await first.create();
    const other = await opened(tab(), one.id);
    await first.remove(one.id);
    await until(() => other.state().gone);
    other.setTitle("Late");
    expect(other.state().project.title).toBe("New back");
    expect(await other.saved()).toBe(true);
    expect(await first.restore(one.id)).toBe(true);
    expect((await opened(first, one.id)).state()).toMatchObject({
      gone: false,
      project: { title: "New back" },
    });
  });

  test("an edit on its way to a project that another tab wiped brings nothing back", async () => {
    const one = await tab().create();
    const second = tab();
    const other = await opened(second, one.id);
    other.setTitle("On its way");
    await tabWipes();
    await until(() => one.state().gone && other.state().gone);
    const third = tab();
    await until(() => third.state().projects !== null);
    expect(third.state().projects).toEqual([]);
  });

  test("an edit that comes after a wiping it did not hear of is not said to be kept", async () => {
    const project = await tab().create();
    const db = await database();
    const wiping = db.transaction(["projects", "records"], "readwrite");
    wiping.objectStore("projects").clear();
    wiping.objectStore("records").clear();
    await new Promise<void>((resolve) => {
      wiping.oncomplete = () => resolve();
    });
    db.close();
    project.setTitle("Too late");
    expect(await project.saved()).toBe(false);
    expect(project.state().gone).toBe(true);
    expect(await records(project.id)).toEqual([]);
  });

  async function tabWipes() {
    expect(await tab().wipeAll()).toBe(true);
  }
});

describe("projects", () => {
  test("the list follows titles, order of change, removal and undo of it", async () => {
    const store = tab();
    const a = await store.create({ title: "A" });
    now += 1;
    const b = await store.create({ title: "B" });
    now += 1;
    a.setTitle("A again");
    await a.saved();
    expect(titles(store)).toEqual(["A again", "B"]);
    await store.remove(a.id);
    expect(titles(store)).toEqual(["B"]);
    expect(store.state().removed).toMatchObject([{ title: "A again", removedAt: now }]);
    await store.restore(a.id);
    await b.close();
    expect(titles(store)).toEqual(["A again", "B"]);
  });

  test("what was removed a month ago is let go for good", async () => {
    const store = tab();
    const a = await store.create();
    await a.saveNamedVersion("v");
    await store.remove(a.id);
    now += 29 * 86_400_000;
    const soon = tab();
    await until(() => soon.state().projects !== null);
    expect(soon.state().removed).toHaveLength(1);
    now += 2 * 86_400_000;
    const later = tab();
    await until(() => later.state().projects !== null);
    expect(later.state().removed).toEqual([]);
    expect(await records(a.id)).toEqual([]);
  });

  test("a copy has everything under a new title and its own life", async () => {
    const store = tab();
    const a = await store.create({ title: "A", sample: true });
    a.addRows([strip]);
    const copy = await store.duplicate(a.id, "Copy of A");
    copy?.addRows([strip]);
    expect(copy?.state().project).toMatchObject({ title: "Copy of A", sample: false });
    expect(copy?.state().project.leftovers).toHaveLength(2);
    expect(a.state().project.leftovers).toHaveLength(1);
    expect(await store.duplicate("none", "x")).toBeNull();
  });

  test("a file comes in as a new project; a bad one changes nothing", async () => {
    const store = tab();
    const file = writeProject({ ...newProject({ title: "From a file", createdAt: 5 }), sample: true }, 9);
    const read = await store.importFile(file);
    expect(read.ok && read.value.state().project.title).toBe("From a file");
    const bad = await store.importFile(file.slice(0, 100));
    expect(bad).toMatchObject({ ok: false, error: [{ kind: "not-a-zip" }] });
    expect(titles(store)).toEqual(["From a file"]);
  });

  test("opened twice it is one; it stays open until both have closed it", async () => {
    const store = tab();
    const a = await store.create();
    const [again, third] = await Promise.all([store.open(a.id), store.open(a.id)]);
    expect(again).toBe(a);
    expect(third).toBe(a);
    await a.close();
    a.setTitle("Still open");
    expect(await a.saved()).toBe(true);
    expect(await store.open("none")).toBeNull();
  });
});

describe("versions", () => {
  test("going back is an edit: what was there is kept first, and undo leads back to it", async () => {
    const project = await tab().create({ title: "Old" });
    project.addRows([strip]);
    await project.saveNamedVersion("the good one");
    project.setTitle("New");
    project.removeRows(project.state().project.leftovers.map(({ id }) => id));
    const named = (await project.versions()).find(({ name }) => name === "the good one");
    expect(await project.goBackTo(named?.id ?? "")).toBe(true);
    expect(project.state().project).toMatchObject({ title: "Old", leftovers: [{ line: strip.line }] });
    expect(await project.versions()).toHaveLength(2);
    project.undo();
    expect(project.state().project).toMatchObject({ title: "New", leftovers: [] });
    expect(await project.goBackTo("none")).toBe(false);
  });

  test("a plan kept under a name is in that version alone, and there again after going back", async () => {
    const { style, seed, effort } = handMadePlan();
    const text = writePlan(handMadePlan());
    const plan: KeptPlan = { text, job: "j", style, seed, effort, keptAt: 77 };
    const project = await tab().create({ title: "Old" });
    project.addRows([strip]);
    project.keepPlan(plan);
    project.tick("u1", true);
    const other = { ...plan, keptAt: plan.keptAt + 1 };
    expect(await project.saveNamedVersion("the other", other)).toBe(true);
    expect(project.state().project.plan?.keptAt).toBe(plan.keptAt);
    const named = (await project.versions()).find(({ name }) => name === "the other");
    expect(await project.goBackTo(named?.id ?? "")).toBe(true);
    expect(project.state().project).toMatchObject({ plan: other, ticked: new Set() });
    project.undo();
    expect(project.state().project).toMatchObject({ plan, ticked: new Set(["u1"]) });
  });

  test("one that is removed is put back as it was", async () => {
    const store = tab();
    const project = await store.create();
    project.addRows([strip]);
    expect(await project.saveNamedVersion("the good one")).toBe(true);
    const before = await project.versions();
    const [one] = before;
    const back = await project.removeVersion(one?.id ?? "");
    expect(await project.versions()).toEqual([]);
    expect(await project.removeVersion(one?.id ?? "")).toBeNull();
    expect(await back?.()).toBe(true);
    expect(await project.versions()).toEqual(before);
    expect((await project.readVersion(one?.id ?? ""))?.leftovers).toHaveLength(1);
  });

  test("one is kept by itself before the first edit and every ten minutes of editing", async () => {
    const project = await tab().create({ title: "0", leftovers: [{ ...strip, id: "r" }] });
    for (let minute = 1; minute <= 25; minute++) {
      now += 60_000;
      project.setTitle(String(minute));
      await project.saved();
    }
    await vi.waitFor(async () => expect(await project.versions()).toHaveLength(3));
    const versions = await project.versions();
    const held = await Promise.all(versions.map(({ id }) => project.readVersion(id)));
    expect(held.map((version) => version?.title)).toEqual(["20", "10", "0"]);
  });
});

describe("around it", () => {
  test("storage that can't be read for a moment is read as soon as it can, and is no empty list", async () => {
    const project = await tab().create({ title: "Here" });
    await project.saved();
    const real = storage.open.bind(storage);
    const open = vi.spyOn(storage, "open").mockImplementation(() => {
      throw new DOMException("held by another", "UnknownError");
    });
    const later = tab();
    await until(() => later.state().trouble === "failed");
    expect(later.state().projects).toBeNull();
    const opening = later.open(project.id);
    await new Promise((resolve) => setTimeout(resolve, 300));
    open.mockImplementation(real);
    expect((await opening)?.state().project.title).toBe("Here");
    await until(() => later.state().projects?.length === 1);
    expect(later.state().trouble).toBeNull();
  });

  test("a later Verso that changes the tables is let in; this tab says that it must be loaded anew", async () => {
    const project = await tab().create();
    const name = `test ${expect.getState().currentTestName}`;
    const request = storage.open(name, 99);
    const later = await new Promise<IDBDatabase>((resolve) => {
      request.onsuccess = () => resolve(request.result);
    });
    later.close();
    project.setTitle("Too old");
    expect(await project.saved()).toBe(false);
    expect(project.state().saving).toEqual({ kind: "not-saved", why: "newer-tab" });
  });

  test("spoilt files, a hundred of them, bring nothing in and change nothing", async () => {
    const store = tab();
    const project = await store.create({ title: "Mine" });
    const file = project.exportFile();
    for (let at = 0; at < file.length; at += Math.ceil(file.length / 100)) {
      const read = await store.importFile(file.map((byte, index) => (index === at ? byte ^ 0x55 : byte)));
      // What is not protected by a checksum, such as a date within the zip, may be anything.
      if (read.ok) await store.remove(read.value.id);
    }
    expect(titles(store)).toEqual(["Mine"]);
    expect(project.exportFile()).toEqual(file);
  });

  test("what the browser says of the room it gives", async () => {
    let isPersisted = false;
    const store = openStore({
      clock: () => now,
      newId: () => `id-${ids++}`,
      titleOfNew: "New back",
      storage,
      device: {
        persist: async () => {
          isPersisted = true;
          return true;
        },
        persisted: async () => isPersisted,
        estimate: async () => ({ usage: 5, quota: 100 }),
      },
    });
    stores.push(store);
    await until(() => store.state().space !== null);
    expect(store.state()).toMatchObject({ persisted: false, space: { used: 5, quota: 100 } });
    expect(await store.askToPersist()).toBe(true);
    expect(store.state().persisted).toBe(true);
  });
});

function titles(store: Store) {
  return store.state().projects?.map(({ title }) => title);
}

// ---- Storage seen from outside

async function database(): Promise<IDBDatabase> {
  const request = storage.open(`test ${expect.getState().currentTestName}`);
  return await new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function records(project: string): Promise<readonly Tables["records"]["value"][]> {
  const db = await database();
  const request = db.transaction("records").objectStore("records").getAll();
  const all = await new Promise<Tables["records"]["value"][]>((resolve) => {
    request.onsuccess = () => resolve(request.result);
  });
  db.close();
  return all.filter((record) => record.project === project);
}

async function changeRecords(
  project: string,
  change: (all: readonly Tables["records"]["value"][]) => void,
): Promise<void> {
  const all = await records(project);
  change(all);
  const db = await database();
  const writing = db.transaction("records", "readwrite");
  for (const record of all) writing.objectStore("records").put(record);
  await new Promise<void>((resolve) => {
    writing.oncomplete = () => resolve();
  });
  db.close();
}
