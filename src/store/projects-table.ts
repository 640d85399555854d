import * as v from "valibot";
import { type Connection, tableNames, type Writing } from "./database.ts";
import type { ProjectSummary } from "./types.ts";
import { versionsOf } from "./versions.ts";

export const summarySchema = v.object({
  id: v.string(),
  title: v.string(),
  sample: v.boolean(),
  createdAt: v.number(),
  changedAt: v.number(),
  removedAt: v.nullable(v.number()),
  leftovers: v.number(),
  planned: v.boolean(),
});

/** All projects, the removed ones too. What another program put among them is passed over. */
export async function listProjects(connection: Connection): Promise<readonly ProjectSummary[]> {
  const all = await connection.read(["projects"], (reading) => reading.objectStore("projects").getAll());
  return all.flatMap((summary: unknown) => {
    const read = v.safeParse(summarySchema, summary);
    return read.success ? [read.output] : [];
  });
}

/** The ids that changed: none where there is no such project. `null`: it is back. */
export async function setRemoved(
  connection: Connection,
  id: string,
  removedAt: number | null,
): Promise<readonly string[]> {
  return await connection.write(["projects"], async (writing) => {
    const projects = writing.objectStore("projects");
    const summary = await projects.get(id);
    if (summary === undefined) return [];
    await projects.put({ ...summary, removedAt });
    return [id];
  });
}

/** Lets go for good of what was removed before `longAgo`; `letGo` is told first. */
export async function purge(
  connection: Connection,
  longAgo: number,
  letGo: (project: string) => Promise<void>,
): Promise<void> {
  const projects = await listProjects(connection);
  const old = projects.filter(({ removedAt }) => removedAt !== null && removedAt < longAgo);
  if (old.length === 0) return;
  for (const { id } of old) await letGo(id);
  await connection.write(tableNames, async (writing) => {
    for (const { id } of old) await deleteProject(writing, id);
  });
}

async function deleteProject(writing: Writing, id: string): Promise<void> {
  await writing.objectStore("projects").delete(id);
  await writing.objectStore("records").delete(IDBKeyRange.bound([id, 0], [id, Number.POSITIVE_INFINITY]));
  await writing.objectStore("versions").delete(versionsOf(id));
  await writing.objectStore("pictures").delete(versionsOf(id));
}

/** Everything. Gives the ids of all that was there. */
export async function wipe(connection: Connection): Promise<readonly string[]> {
  return await connection.write(tableNames, async (writing) => {
    const ids = await writing.objectStore("projects").getAllKeys();
    for (const name of tableNames) await writing.objectStore(name).clear();
    return ids;
  });
}
