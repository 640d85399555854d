import {
  factNames,
  type Migration,
  migrated,
  migrations,
  projectFormat,
  projectVersion,
  readProjectJson,
  sectionsOf,
} from "../files/index.ts";
import { writeWhole } from "./edits.ts";
import { idsInOrder, partsOf, type Roots } from "./roots.ts";

/**
 * Brings a document of an earlier Verso to this one's schema, by the same steps as a file. False: it stays as it is
 * and can only be looked at. Inside a transaction that is no edit of hers.
 */
export function migrateDocument(
  roots: Roots,
  to: number = projectVersion,
  steps: readonly Migration[] = migrations,
): boolean {
  const from = roots.about.get("version");
  if (typeof from !== "number" || !(from >= 1)) return false;
  if (from >= to) return true;
  const read = readProjectJson({
    ...migrated(jsonOf(roots, from), from, to, steps),
    version: projectVersion,
  });
  if (!read.ok) return false;
  writeWhole(roots, read.value);
  roots.about.set("version", to);
  return true;
}

/** The document as `project.json` would have it; whatever a fact was called then, it is there under that name. */
function jsonOf(roots: Roots, version: number) {
  const names = new Set<string>([...factNames, ...roots.facts.keys()]);
  const facts = [...names].flatMap((name) => {
    return roots.facts.has(name) ? [[name, roots.facts.get(name)] as const] : [];
  });
  const json: unknown = JSON.parse(
    JSON.stringify({
      ...sectionsOf(new Map(facts)),
      leftovers: rowsOf(roots),
      rough: idsInOrder(roots.roughOrder, roots.rough).map((id) => roots.rough.get(id)),
      ticked: [...roots.ticked.keys()].map((key) => key.slice(key.indexOf("/") + 1)),
    }),
  );
  return { ...(typeof json === "object" ? json : {}), format: projectFormat, version };
}

function rowsOf(roots: Roots): readonly unknown[] {
  return idsInOrder(roots.order, roots.leftovers).flatMap((id) => {
    const parts = partsOf(roots.leftovers.get(id));
    return parts === null ? [] : [{ id, ...sectionsOf(parts), cells: cellsOf(parts) }];
  });
}

function cellsOf(parts: ReadonlyMap<string, unknown>): object {
  const start = "cells.";
  const cells = [...parts].filter(([name]) => name.startsWith(start));
  return Object.fromEntries(cells.map(([name, cell]) => [name.slice(start.length), cell]));
}
