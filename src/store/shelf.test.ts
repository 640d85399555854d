import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { inches } from "../engine/length/index.ts";
import { type KeptPlan, leftoverOf } from "../files/index.ts";
import { openStore } from "./open-store.ts";
import { moveToShelf, shelveRemainders, takeFromShelf } from "./shelf.ts";
import type { ProjectHandle, Store } from "./types.ts";

let storage = new IDBFactory();
let ids = 0;
const stores: Store[] = [];

beforeEach(() => {
  storage = new IDBFactory();
  ids = 0;
});
afterEach(async () => {
  await Promise.all(stores.splice(0).map((store) => store.close()));
});

function tab(): Store {
  const store = openStore({
    clock: () => 1_900_000_000_000,
    newId: () => `id-${ids++}`,
    titleOfNew: "New back",
    storage,
    device: null,
    databaseName: `test ${expect.getState().currentTestName}`,
  });
  stores.push(store);
  return store;
}

const square = (fabric: string) =>
  leftoverOf({ kind: "square", width: inches(5), height: inches(5), count: 6, fabric, use: "first" }, "in");
const fabricsOf = (handle: ProjectHandle) =>
  handle.state().project.leftovers.map(({ cells }) => cells.fabric?.value);
const soon = (holds: () => void) => vi.waitFor(holds, { timeout: 5_000, interval: 5 });

async function shelfWith(store: Store, ...fabrics: string[]): Promise<ProjectHandle> {
  const shelf = await store.shelf();
  shelf.addRows(fabrics.map(square));
  await shelf.saved();
  return shelf;
}

const plan: KeptPlan = { text: "{}", job: "j", style: "chunks", seed: 1, effort: 1, keptAt: 77 };

describe("the shelf", () => {
  test("is no back, is the same in every tab, and is there tomorrow", async () => {
    const store = tab();
    const shelf = await shelfWith(store, "moss");
    expect(await store.shelf()).toBe(shelf);
    await soon(() => expect(store.state().projects).toEqual([]));
    expect(fabricsOf(await tab().shelf())).toEqual(["moss"]);
  });

  test("two tabs that first need it at the same time have one", async () => {
    const [one, other] = [tab(), tab()];
    const [shelf, same] = await Promise.all([one.shelf(), other.shelf()]);
    shelf.addRows([square("moss")]);
    same.addRows([square("ink")]);
    await Promise.all([shelf.saved(), same.saved()]);
    await soon(() => {
      for (const handle of [shelf, same]) expect(fabricsOf(handle).sort()).toEqual(["ink", "moss"]);
    });
  });

  test("what joins a heap comes off it; undone it lies there again, redone it doesn't", async () => {
    const store = tab();
    const shelf = await shelfWith(store, "moss", "ink", "oat");
    const project = await store.create();
    const [moss, , oat] = shelf.state().project.leftovers.map(({ id }) => id);
    expect(await takeFromShelf(shelf, project, [moss ?? "", oat ?? "", "not there"])).toBe(2);
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([["moss", "oat"], ["ink"]]);
    project.undo();
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([[], ["ink", "moss", "oat"]]);
    project.redo();
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([["moss", "oat"], ["ink"]]);
    await shelf.saved();
    expect(fabricsOf(await tab().shelf())).toEqual(["ink"]);
  });

  test("rows of a heap go on it without their marks, with the back they come from; undone they come off", async () => {
    const store = tab();
    const shelf = await store.shelf();
    const project = await store.create({ title: "Ida" });
    const [moss = ""] = project.addRows([square("moss"), square("ink")]);
    expect(await moveToShelf(shelf, project, [moss])).toBe(1);
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([["ink"], ["moss"]]);
    const [lying] = shelf.state().project.leftovers;
    expect([lying?.cells.name?.value, lying?.cells.use]).toEqual(["Ida", undefined]);
    project.undo();
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([["moss", "ink"], []]);
  });

  test("what a kept plan left over goes there once; the back keeps its list", async () => {
    const store = tab();
    const shelf = await store.shelf();
    const project = await store.create({ title: "Ida" });
    project.addRows([square("moss")]);
    project.keepPlan(plan);
    shelveRemainders(shelf, project, [square("moss")]);
    expect(project.state().project.heap.shelved).toBe(plan.keptAt);
    expect([fabricsOf(project), fabricsOf(shelf)]).toEqual([["moss"], ["moss"]]);
    project.undo();
    expect([project.state().project.heap.shelved, fabricsOf(shelf)]).toEqual([null, []]);
    project.redo();
    expect(fabricsOf(shelf)).toEqual(["moss"]);
  });

  test("is empty after everything was deleted", async () => {
    const store = tab();
    await shelfWith(store, "moss");
    expect(await store.wipeAll()).toBe(true);
    const shelf = await store.shelf();
    expect(fabricsOf(shelf)).toEqual([]);
    shelf.addRows([square("ink")]);
    expect(await shelf.saved()).toBe(true);
  });
});
