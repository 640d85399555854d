import type { Connection, StoredRecord, Writing } from "./database.ts";
import { merged, sealed } from "./records.ts";
import type { ProjectSummary } from "./types.ts";

const mostRecords = 200;

function recordsAfter(project: string, seq: number): IDBKeyRange {
  return IDBKeyRange.bound([project, seq], [project, Number.POSITIVE_INFINITY], true, false);
}

/** Records as they lie there, which may be damaged; `null`: no such project. */
export type ReadRecords = {
  readonly records: readonly unknown[];
  readonly last: number;
  readonly changedAt: number;
} | null;

/** What was written since `seq`, by whichever tab. */
export async function readRecords(
  connection: Connection,
  project: string,
  seq: number,
): Promise<ReadRecords> {
  return await connection.read(["projects", "records"], async (reading) => {
    const [summary, records, keys] = await Promise.all([
      reading.objectStore("projects").get(project),
      reading.objectStore("records").getAll(recordsAfter(project, seq)),
      reading.objectStore("records").getAllKeys(recordsAfter(project, seq)),
    ]);
    if (summary === undefined || summary.removedAt !== null) return null;
    return { records, last: keys.at(-1)?.[1] ?? seq, changedAt: summary.changedAt };
  });
}

/** Whether it is there, be it removed from the list. */
export async function hasProject(connection: Connection, project: string): Promise<boolean> {
  const summary = await connection.read(["projects"], (reading) => {
    return reading.objectStore("projects").get(project);
  });
  return summary !== undefined;
}

/** What a tab writes: an edit or several, and how the project shows in the list. */
export type Entry = {
  readonly bytes: Uint8Array;
  readonly at: number;
  readonly summary: ProjectSummary;
  /** The project's first write, which makes it. */
  readonly isFirst: boolean;
};

/** The number of the write, or `null` where the project is there no more: then nothing is written. */
export async function writeEntry(connection: Connection, entry: Entry): Promise<number | null> {
  return await connection.write(["projects", "records"], async (writing) => {
    const projects = writing.objectStore("projects");
    const { id } = entry.summary;
    const there = await projects.get(id);
    if (!entry.isFirst && (there === undefined || there.removedAt !== null)) return null;
    const seq = (await lastSeq(writing, id)) + 1;
    await projects.put(entry.summary);
    await writing.objectStore("records").add(sealed({ project: id, seq, at: entry.at, bytes: entry.bytes }));
    return seq;
  });
}

async function lastSeq(writing: Writing, project: string): Promise<number> {
  const cursor = await writing.objectStore("records").openKeyCursor(recordsAfter(project, 0), "prev");
  return cursor?.primaryKey[1] ?? 0;
}

/** Makes one record of many, in one transaction. Where a record is damaged, all stay as they are. */
export async function compact(connection: Connection, project: string, at: number): Promise<void> {
  await connection.write(["records"], async (writing) => {
    const records = writing.objectStore("records");
    const range = recordsAfter(project, 0);
    if ((await records.count(range)) <= mostRecords) return;
    const all: readonly StoredRecord[] = await records.getAll(range);
    const bytes = merged(all);
    const seq = await lastSeq(writing, project);
    if (bytes === null) return;
    await records.delete(range);
    await records.put(sealed({ project, seq, at, bytes }));
  });
}
