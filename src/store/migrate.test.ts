import { expect, test } from "vitest";
import * as Y from "yjs";
import { type Migration, newProject, projectVersion } from "../files/index.ts";
import { writeWhole } from "./edits.ts";
import { migrateDocument } from "./migrate.ts";
import { ProjectReader } from "./reader.ts";
import { rootsOf } from "./roots.ts";

/** A document as this Verso writes it, told to be of another version. */
function documentOf(version: unknown) {
  const roots = rootsOf(new Y.Doc());
  const plan = { text: "{}", job: "j", style: "squares", seed: 1, effort: 1, keptAt: 9 } as const;
  writeWhole(roots, {
    ...newProject({ title: "Old", createdAt: 5 }),
    leftovers: [{ id: "r", line: "x", cells: { count: { text: "4", value: 4 } }, others: { shop: "a" } }],
    plan,
    ticked: new Set(["step-1"]),
  });
  roots.about.set("version", version);
  return roots;
}

const next = projectVersion + 1;
const steps: readonly Migration[] = [
  { from: projectVersion, migrate: (json) => ({ ...json, title: `${String(json.title)}, mended` }) },
];

test("a document of an earlier version goes through the same steps as a file, and loses nothing", () => {
  const roots = documentOf(projectVersion);
  expect(migrateDocument(roots, next, steps)).toBe(true);
  expect(roots.about.get("version")).toBe(next);
  expect(new ProjectReader(roots).project).toMatchObject({
    title: "Old, mended",
    createdAt: 5,
    leftovers: [{ id: "r", line: "x", cells: { count: { value: 4 } }, others: { shop: "a" } }],
    plan: { keptAt: 9 },
    ticked: new Set(["step-1"]),
  });
});

test("one that can't be brought over stays as it is", () => {
  const roots = documentOf(projectVersion);
  roots.facts.set("title", 5);
  const broken: readonly Migration[] = [{ from: projectVersion, migrate: (json) => json }];
  const before = Y.encodeStateAsUpdate(roots.doc);
  expect(migrateDocument(roots, next, broken)).toBe(false);
  expect(Y.encodeStateAsUpdate(roots.doc)).toEqual(before);
});

test.each([undefined, "1", 0, Number.NaN])("a version of %s is none", (version) => {
  expect(migrateDocument(documentOf(version))).toBe(false);
});
