import { ok, type Result } from "../engine/length/index.ts";
import {
  type Everything,
  type Leftover,
  type Project,
  type ProjectProblem,
  projectJson,
  readEverything,
  writeEverything,
} from "../files/index.ts";
import type { ProjectHandle, Store } from "./types.ts";

/** All her backs as one file, unsaved edits included; `projects`: those that are in it. */
export async function exportEverything(
  store: Store,
  writtenAt: number,
): Promise<{ readonly bytes: Uint8Array; readonly projects: readonly string[] }> {
  const files: Uint8Array[] = [];
  const projects: string[] = [];
  // The first made comes first, so that taking it in again brings back their order.
  const listed = [...(store.state().projects ?? [])].sort((a, b) => a.changedAt - b.changedAt);
  for (const { id } of listed) {
    const bytes = await store.exportFile(id);
    if (bytes === null) continue;
    files.push(bytes);
    projects.push(id);
  }
  const shelf = (await store.shelf()).exportFile();
  return { bytes: writeEverything(files, shelf, writtenAt), projects };
}

export type TakenIn = {
  /** Backs that came in. */
  readonly added: number;
  /** Those that are here just so. */
  readonly known: number;
  readonly damaged: number;
  /** Rows that came onto the shelf. */
  readonly shelf: number;
};

/** Takes in what `exportEverything` made. What is here stays; what is here just so does not come twice. */
export async function importEverything(
  store: Store,
  bytes: Uint8Array,
): Promise<Result<TakenIn, readonly ProjectProblem[]>> {
  const read = readEverything(bytes);
  if (!read.ok) return read;
  const here = new Set(await projectsHere(store));
  const coming = read.value.projects.filter(({ project }) => !here.has(textOf(project)));
  for (const { project, pictures } of coming) await (await store.create(project, pictures)).close();
  const known = read.value.projects.length - coming.length;
  const shelf = layOnShelf(await store.shelf(), read.value.shelf);
  return ok({ added: coming.length, known, damaged: read.value.damaged.length, shelf });
}

/** Lays on the shelf what doesn't lie there yet; of rows that are alike, as many as are missing. */
function layOnShelf(shelf: ProjectHandle, { leftovers: rows, pictures }: Everything["shelf"]): number {
  const lying = shelf.state().project.leftovers.map(rowText);
  const coming = rows.filter((row) => {
    const at = lying.indexOf(rowText(row));
    if (at >= 0) lying.splice(at, 1);
    return at < 0;
  });
  shelf.keepPictures(pictures);
  if (coming.length > 0) shelf.addRows(coming.map(({ id: _, ...row }) => row));
  return coming.length;
}

function rowText({ line, cells, others }: Leftover): string {
  return JSON.stringify([line, Object.entries(cells).sort(), Object.entries(others).sort()]);
}

async function projectsHere(store: Store): Promise<readonly string[]> {
  const texts: string[] = [];
  for (const { id } of store.state().projects ?? []) {
    const handle = await store.open(id);
    if (handle === null) continue;
    texts.push(textOf(handle.state().project));
    await handle.close();
  }
  return texts;
}

function textOf(project: Project): string {
  return JSON.stringify(projectJson(project));
}
