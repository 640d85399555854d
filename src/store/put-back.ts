import * as v from "valibot";
import * as Y from "yjs";
import type { Copies, Copy } from "./copies.ts";
import type { Connection, StoredVersion } from "./database.ts";
import { writeEntry } from "./project-table.ts";
import { listProjects, summarySchema } from "./projects-table.ts";
import type { ProjectSummary } from "./types.ts";

/**
 * Puts back the projects that there are copies of and that the database has lost. Where it can't be read, nothing is
 * done: then nothing is known to be lost. Rejects in that case.
 */
export async function putBackLost(connection: Connection, copies: Copies): Promise<void> {
  const copied = await copies.projects();
  if (copied.size === 0) return;
  const there = new Set((await listProjects(connection)).map(({ id }) => id));
  for (const project of copied)
    if (!there.has(project)) await putBack(connection, await copies.read(project));
}

async function putBack(connection: Connection, copies: readonly Copy[]): Promise<void> {
  const ofTabs = copies.filter(({ version }) => version === null);
  const summary = lastChanged(ofTabs);
  if (summary === null) return;
  const bytes = Y.mergeUpdates(ofTabs.map((copy) => copy.bytes));
  await writeEntry(connection, { bytes, at: summary.changedAt, summary, isFirst: true });
  const versions = copies.flatMap((copy) => versionOf(copy) ?? []);
  if (versions.length === 0) return;
  await connection.write(["versions"], async (writing) => {
    for (const version of versions) await writing.objectStore("versions").put(version);
  });
}

function lastChanged(copies: readonly Copy[]): ProjectSummary | null {
  const summaries = copies.flatMap(({ about }) => {
    const read = v.safeParse(summarySchema, about);
    return read.success ? [read.output] : [];
  });
  const [last] = summaries.sort((a, b) => b.changedAt - a.changedAt);
  return last ?? null;
}

const versionSchema = v.object({
  name: v.nullable(v.string()),
  at: v.number(),
  leftovers: v.number(),
  planned: v.boolean(),
});

function versionOf({ project, version, about, bytes }: Copy): StoredVersion | null {
  const read = v.safeParse(versionSchema, about);
  return version === null || !read.success ? null : { ...read.output, project, id: version, bytes };
}
