import { type Leftover, mostOf, type NewLeftover, type Project } from "../files/index.ts";
import type { ProjectHandle } from "./types.ts";

/*
 * Shelf and back are two documents, and undo belongs to the back. So the shelf follows: when an edit that moved cloth
 * is undone or redone in the back, the cloth moves too. Cloth is laid down before it is taken away, and taken away
 * only once it is kept where it was laid: whatever happens in between, none is lost.
 */

/** Rows join a back's heap and come off the shelf. How many; undoing it in the back lays them on the shelf again. */
export async function takeFromShelf(
  shelf: ProjectHandle,
  project: ProjectHandle,
  ids: readonly string[],
): Promise<number> {
  const wanted = shelf.state().project.leftovers.filter(({ id }) => ids.includes(id));
  const room = Math.max(0, mostOf.rows - project.state().project.leftovers.length);
  const rows = wanted.slice(0, room);
  if (rows.length === 0) return 0;
  bringPictures(shelf, project, rows);
  const joined = new Set(project.addRows(rows.map(withoutId)));
  const cloth = onShelf(
    shelf,
    rows.map(withoutId),
    rows.map(({ id }) => id),
  );
  const holds = ({ leftovers }: Project) => leftovers.some(({ id }) => joined.has(id));
  await movesWith(project, holds, { whenTrue: cloth.away, whenFalse: cloth.back });
  return rows.length;
}

/** Rows of a back's heap go on the shelf. How many. */
export async function moveToShelf(
  shelf: ProjectHandle,
  project: ProjectHandle,
  ids: readonly string[],
): Promise<number> {
  const { title, leftovers } = project.state().project;
  const rows = leftovers.filter(({ id }) => ids.includes(id));
  if (rows.length === 0) return 0;
  bringPictures(project, shelf, rows);
  const cloth = onShelf(
    shelf,
    rows.map((row) => shelved(withoutId(row), title)),
    [],
  );
  cloth.back();
  if (!(await shelf.saved())) {
    cloth.away();
    return 0;
  }
  const moved = new Set(rows.map(({ id }) => id));
  project.removeRows([...moved]);
  const holds = (now: Project) => now.leftovers.some(({ id }) => moved.has(id));
  void movesWith(project, holds, { whenTrue: cloth.away, whenFalse: cloth.back }, false);
  return rows.length;
}

/** What a kept plan left over goes on the shelf; the back's own list stays as the plan was made from it. */
export function shelveRemainders(
  shelf: ProjectHandle,
  project: ProjectHandle,
  rows: readonly NewLeftover[],
): void {
  const { title, plan } = project.state().project;
  if (plan === null) return;
  const cloth = onShelf(
    shelf,
    rows.map((row) => shelved(row, title)),
    [],
  );
  project.setHeap({ shelved: plan.keptAt });
  const holds = ({ heap }: Project) => heap.shelved === plan.keptAt;
  cloth.back();
  void movesWith(project, holds, { whenTrue: cloth.back, whenFalse: cloth.away }, true);
}

/** Cloth takes its picture along. */
function bringPictures(from: ProjectHandle, to: ProjectHandle, rows: readonly NewLeftover[]): void {
  const pictures = rows.flatMap(({ picture }) => {
    const bytes = picture === undefined ? null : from.picture(picture);
    return picture === undefined || bytes === null ? [] : [[picture, bytes] as const];
  });
  to.keepPictures(new Map(pictures));
}

type Cloth = { readonly back: () => void; readonly away: () => void };

/** Rows that are laid on the shelf and taken off it; each time they lie there under new names. */
function onShelf(shelf: ProjectHandle, rows: readonly NewLeftover[], ids: readonly string[]): Cloth {
  let lying = ids;
  return {
    back: () => {
      if (lying.length === 0) lying = shelf.addRows(rows);
    },
    away: () => {
      shelf.removeRows(lying);
      lying = [];
    },
  };
}

type Moves = { readonly whenTrue: () => void; readonly whenFalse: () => void };

/**
 * Moves cloth whenever what `holds` says of a project turns over. `was`: what has been done already; without it the
 * first move is made as soon as the project is kept.
 */
async function movesWith(
  project: ProjectHandle,
  holds: (now: Project) => boolean,
  { whenTrue, whenFalse }: Moves,
  was?: boolean,
): Promise<void> {
  let last = was ?? holds(project.state().project);
  project.subscribe(() => {
    const { project: now, gone } = project.state();
    if (gone || holds(now) === last) return;
    last = !last;
    if (last) whenTrue();
    else whenFalse();
  });
  if (was === undefined && (await project.saved()) && holds(project.state().project)) whenTrue();
}

function withoutId({ id: _, ...row }: Leftover): NewLeftover {
  return row;
}

/** A row as it lies on the shelf: marks were for that back alone, and it is noted which one it comes from. */
function shelved({ cells: { use: _, ...cells }, ...row }: NewLeftover, title: string): NewLeftover {
  const note = cells.name?.text.trim() ?? "";
  return { ...row, cells: note === "" ? { ...cells, name: { text: title, value: title } } : cells };
}
