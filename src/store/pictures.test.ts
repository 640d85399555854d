import "fake-indexeddb/auto";
import { createHash } from "node:crypto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readProjectFile } from "../files/index.ts";
import { exportEverything, importEverything } from "./everything.ts";
import { openStore } from "./open-store.ts";
import { moveToShelf, takeFromShelf } from "./shelf.ts";
import type { Store } from "./types.ts";

let storage = new IDBFactory();
let now = 0;
let ids = 0;
const stores: Store[] = [];

beforeEach(() => {
  storage = new IDBFactory();
  now = Date.UTC(2031, 4, 1);
});
afterEach(async () => {
  await Promise.all(stores.splice(0).map((store) => store.close()));
});

function tab(from: IDBFactory | null = storage): Store {
  const store = openStore({
    clock: () => now,
    newId: () => {
      ids += 1;
      return `id-${ids}`;
    },
    titleOfNew: "New back",
    storage: from,
    device: null,
    databaseName: `pictures ${expect.getState().currentTestName}`,
  });
  stores.push(store);
  return store;
}

const jpeg = new Uint8Array([0xff, 0xd8, 1, 2, 3]);
const sum = createHash("sha256").update(jpeg).digest("hex");
const strip = { line: "4 strips 2 1/2 x 31", cells: {}, others: {} };

/** A project with one row that has a picture. */
async function withPicture(store: Store) {
  const project = await store.create();
  const [picture] = await project.addPictures([jpeg]);
  if (picture == null) throw new Error("it can be kept");
  project.addRows([{ ...strip, picture }]);
  return project;
}

describe("a picture of a leftover", () => {
  test("is known by what is in it, and there after the tab is gone", async () => {
    const project = await withPicture(tab());
    expect(project.state().project.leftovers[0]?.picture).toBe(sum);
    expect(await project.saved()).toBe(true);
    const again = await tab().open(project.id);
    expect(again?.picture(sum)).toEqual(jpeg);
    expect(again?.state().project.leftovers[0]?.picture).toBe(sum);
    expect(again?.picture("0".repeat(64))).toBeNull();
  });

  test("comes and goes with its row, by one undo", async () => {
    const project = await withPicture(tab());
    project.undo();
    expect(project.state().project.leftovers).toEqual([]);
    project.redo();
    expect(project.state().project.leftovers[0]?.picture).toBe(sum);
    const [row] = project.state().project.leftovers;
    project.changeRow(row?.id ?? "", { cells: { fabric: { text: "oat", value: "oat" } } });
    expect(project.state().project.leftovers[0]?.picture).toBe(sum);
  });

  test("of the top comes and goes in one step each, and goes into the file", async () => {
    const project = await tab().create();
    const [picture] = await project.addPictures([jpeg]);
    if (picture == null) throw new Error("it can be kept");
    const topPhoto = { picture, colours: [{ colour: "#7a1f2b", share: 1 }] };
    project.setTopPhoto(topPhoto);
    project.setTopPhoto(null);
    project.undo();
    expect(project.state().project.topPhoto).toEqual(topPhoto);
    project.setTitle("The back of Ida");
    expect(project.state().project.topPhoto).toEqual(topPhoto);
    expect(await project.saved()).toBe(true);
    expect((await tab().open(project.id))?.state().project.topPhoto).toEqual(topPhoto);
    const read = readProjectFile(project.exportFile());
    expect(read.ok && read.value.pictures.get(picture)).toEqual(jpeg);
    project.undo();
    project.undo();
    expect(project.state().project.topPhoto).toBeNull();
  });

  test("of what she laid out stays where she keeps it, one step each, and goes into the file", async () => {
    const project = await tab().create();
    const [picture] = await project.addPictures([jpeg]);
    if (picture == null) throw new Error("it can be kept");
    project.setPhotos([picture]);
    project.setPhotos([]);
    project.undo();
    expect(project.state().project.photos).toEqual([picture]);
    expect(await project.saved()).toBe(true);
    const again = await tab().open(project.id);
    expect(again?.state().project.photos).toEqual([picture]);
    expect(again?.picture(picture)).toEqual(jpeg);
    const read = readProjectFile(project.exportFile());
    expect(read.ok && read.value.pictures.get(picture)).toEqual(jpeg);
    expect(read.ok && read.value.project.photos).toEqual([picture]);
  });

  test("goes with the project into a copy, a file, the file of everything, and back", async () => {
    const store = tab();
    const project = await withPicture(store);
    const copy = await store.duplicate(project.id, "Again");
    expect(copy?.picture(sum)).toEqual(jpeg);
    const file = project.exportFile();
    const read = readProjectFile(file);
    expect(read.ok && read.value.pictures.get(sum)).toEqual(jpeg);
    const imported = await store.importFile(file);
    expect(imported.ok && imported.value.picture(sum)).toEqual(jpeg);

    const { bytes } = await exportEverything(store, now);
    const other = tab(new IDBFactory());
    expect(await importEverything(other, bytes)).toMatchObject({ ok: true, value: { damaged: 0 } });
    const [first] = other.state().projects ?? [];
    expect((await other.open(first?.id ?? ""))?.picture(sum)).toEqual(jpeg);
  });

  test("goes with its cloth onto the shelf and off it", async () => {
    const store = tab();
    const [project, next] = [await withPicture(store), await store.create()];
    const shelf = await store.shelf();
    const ids = (handle: typeof project) => handle.state().project.leftovers.map(({ id }) => id);
    await moveToShelf(shelf, project, ids(project));
    expect(shelf.picture(shelf.state().project.leftovers[0]?.picture ?? "")).toEqual(jpeg);
    await takeFromShelf(shelf, next, ids(shelf));
    await next.saved();
    expect((await tab().open(next.id))?.picture(sum)).toEqual(jpeg);
  });

  test("is heard of by another tab, works without storage, and is wiped with everything", async () => {
    const store = tab();
    const project = await store.create();
    const elsewhere = await tab().open(project.id);
    const [picture] = await project.addPictures([jpeg]);
    project.addRows([{ ...strip, ...(picture == null ? {} : { picture }) }]);
    await project.saved();
    await expect.poll(() => elsewhere?.picture(sum) ?? null).toEqual(jpeg);

    const memory = await withPicture(tab(null));
    expect(memory.picture(sum)).toEqual(jpeg);

    await store.wipeAll();
    const later = await store.importFile(memory.exportFile());
    expect(later.ok && later.value.picture(sum)).toEqual(jpeg);
  });

  test("of the tables before there were pictures nothing is lost", async () => {
    const name = `pictures ${expect.getState().currentTestName}`;
    await new Promise<void>((done, failed) => {
      const request = storage.open(name, 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore("projects", { keyPath: "id" });
        request.result.createObjectStore("records", { keyPath: ["project", "seq"] });
        request.result.createObjectStore("versions", { keyPath: ["project", "id"] });
      };
      request.onerror = () => failed(request.error);
      request.onsuccess = () => {
        const writing = request.result.transaction(["projects"], "readwrite");
        const about = { title: "Ida", sample: false, createdAt: 1, changedAt: 2, removedAt: null };
        writing.objectStore("projects").put({ id: "old", leftovers: 0, planned: false, ...about });
        writing.oncomplete = () => {
          request.result.close();
          done();
        };
      };
    });
    const store = tab();
    await expect.poll(() => store.state().projects?.map(({ title }) => title)).toEqual(["Ida"]);
    expect((await withPicture(store)).picture(sum)).toEqual(jpeg);
  });
});
