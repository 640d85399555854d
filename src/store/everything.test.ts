import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { expect, test } from "vitest";
import { exportEverything, importEverything } from "./everything.ts";
import { openStore } from "./open-store.ts";
import type { Store } from "./types.ts";

let ids = 0;
const strip = { line: "4 strips 2 1/2 x 31", cells: {}, others: {} };

function device(): Store {
  return openStore({
    clock: () => 1_900_000_000_000 + ids,
    newId: () => `id-${ids++}`,
    titleOfNew: "New back",
    storage: new IDBFactory(),
    device: null,
    databaseName: `device ${ids++}`,
  });
}

const titlesOn = (store: Store) => (store.state().projects ?? []).map(({ title }) => title).sort();

test("all backs go to another device, and none comes twice", async () => {
  const [old, young] = [device(), device()];
  for (const title of ["Ida", "Oak"]) {
    const project = await old.create({ title });
    project.addRows([strip]);
    await project.saved();
  }
  await young.create({ title: "Fern" });
  (await old.shelf()).addRows([strip, strip]);
  (await young.shelf()).addRows([strip]);
  const { bytes, projects } = await exportEverything(old, 1_900_000_000_000);
  expect(projects).toHaveLength(2);

  expect(await importEverything(young, bytes)).toEqual({
    ok: true,
    value: { added: 2, known: 0, damaged: 0, shelf: 1 },
  });
  expect(titlesOn(young)).toEqual(["Fern", "Ida", "Oak"]);
  expect(await importEverything(young, bytes)).toMatchObject({ value: { added: 0, known: 2, shelf: 0 } });
  expect(titlesOn(young)).toHaveLength(3);
  await Promise.all([old.close(), young.close()]);
});

test("what is no such file changes nothing", async () => {
  const store = device();
  expect((await importEverything(store, new Uint8Array([1, 2, 3]))).ok).toBe(false);
  await store.close();
});
