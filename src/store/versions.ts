import { type Project, readProject, writeProject } from "../files/index.ts";
import type { Copies } from "./copies.ts";
import type { Connection, StoredVersion } from "./database.ts";
import type { ProjectVersion } from "./types.ts";

const tenMinutes = 600_000;
const day = 86_400_000;

/** How long she edits before another version is kept by itself. */
export const versionEvery = tenMinutes;
/** The last ones are kept all; of those before, the last of each day; and no more than these in all. */
const mostRecent = 12;
const mostByThemselves = 36;
const mostNamed = 200;

export type NewVersion = {
  readonly project: string;
  readonly id: string;
  readonly name: string | null;
  readonly at: number;
  readonly value: Project;
};

/** Keeps a version and gives up those that are one too many. False: it could not be kept. */
export async function keepVersion(kept: Kept, { value, ...about }: NewVersion): Promise<boolean> {
  const bytes = writeProject(value, about.at);
  return await putVersion(kept, {
    ...about,
    bytes,
    leftovers: value.leftovers.length,
    planned: value.plan !== null,
  });
}

/** The same for one that is packed already. */
export async function putVersion({ connection, copies }: Kept, stored: StoredVersion): Promise<boolean> {
  const dropped = await writeVersion(connection, stored);
  if (dropped === null) return false;
  const { project, id, name, at, leftovers, planned, bytes } = stored;
  await copies.write({ project, version: id, about: { name, at, leftovers, planned }, bytes });
  await copies.removeVersions(project, dropped);
  return true;
}

/** Ids of the versions that were given up; `null`: there is no such project. */
async function writeVersion(
  connection: Connection,
  version: StoredVersion,
): Promise<readonly string[] | null> {
  return await connection.write(["projects", "versions"], async (writing) => {
    if ((await writing.objectStore("projects").get(version.project)) === undefined) return null;
    const versions = writing.objectStore("versions");
    await versions.put(version);
    const dropped = versionsToDrop(await versions.getAll(versionsOf(version.project)));
    for (const { project, id } of dropped) await versions.delete([project, id]);
    return dropped.map(({ id }) => id);
  });
}

export function versionsOf(project: string): IDBKeyRange {
  return IDBKeyRange.bound([project, ""], [project, "\uffff"]);
}

type Dated = Pick<StoredVersion, "project" | "id" | "name" | "at">;

/** Which versions are one too many. Those she named go last, and only the oldest. */
export function versionsToDrop(versions: readonly Dated[]): readonly Dated[] {
  const newestFirst = [...versions].sort((a, b) => b.at - a.at);
  const named = newestFirst.filter(({ name }) => name !== null);
  const byThemselves = newestFirst.filter(({ name }) => name === null);
  const kept = [...byThemselves.slice(0, mostRecent), ...lastOfEachDay(byThemselves.slice(mostRecent))];
  const staying = new Set([...kept.slice(0, mostByThemselves), ...named.slice(0, mostNamed)]);
  return versions.filter((version) => !staying.has(version));
}

function lastOfEachDay(newestFirst: readonly Dated[]): readonly Dated[] {
  const dayOf = ({ at }: Dated) => Math.floor(at / day);
  return newestFirst.filter((version, index) => {
    const before = newestFirst[index - 1];
    return before === undefined || dayOf(before) !== dayOf(version);
  });
}

/** The newest first. */
export async function listVersions(
  connection: Connection,
  project: string,
): Promise<readonly ProjectVersion[]> {
  const all = await connection.read(["versions"], (reading) => {
    return reading.objectStore("versions").getAll(versionsOf(project));
  });
  return all
    .map(({ id, name, at, leftovers, planned }) => ({ id, name, at, leftovers, planned }))
    .sort((a, b) => b.at - a.at);
}

/** What a version holds; `null`: there is none, or it is damaged. */
export async function readVersion(
  connection: Connection,
  project: string,
  id: string,
): Promise<Project | null> {
  const version = await connection.read(["versions"], (reading) => {
    return reading.objectStore("versions").get([project, id]);
  });
  if (version === undefined || !(version.bytes instanceof Uint8Array)) return null;
  const read = readProject(version.bytes);
  return read.ok ? read.value : null;
}

/** What was removed, to be put back; `null`: there was none. */
export async function removeVersion(
  { connection, copies }: Kept,
  project: string,
  id: string,
): Promise<StoredVersion | null> {
  const removed = await connection.write(["versions"], async (writing) => {
    const versions = writing.objectStore("versions");
    const found = await versions.get([project, id]);
    await versions.delete([project, id]);
    return found ?? null;
  });
  await copies.removeVersions(project, [id]);
  return removed;
}

type Kept = { readonly connection: Connection; readonly copies: Copies };

/** The last version that can be read: what is left where the project itself can't be. */
export async function lastReadable(connection: Connection, project: string): Promise<Project | null> {
  for (const { id } of await listVersions(connection, project)) {
    const read = await readVersion(connection, project, id);
    if (read !== null) return read;
  }
  return null;
}
