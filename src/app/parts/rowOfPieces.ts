import type { DraftProblem, Job } from "../../engine/cloth/index.ts";
import { draftOfProject, type Project } from "../../files/index.ts";

/** The row of the list that each piece of the job is, by their ids. Pieces stand in the job as rows do in the draft, those that wait left out. Rough stock has no row of its own. */
export function rowOfPieces(
  project: Project,
  job: Job,
  stops: readonly DraftProblem[],
): ReadonlyMap<string, string> {
  const bad = new Set(stops.map(({ row }) => row));
  const good = draftOfProject(project).pieces.filter(({ row }) => !bad.has(row));
  return new Map(
    job.pieces.flatMap(({ id }, index) => {
      const leftover = project.leftovers[(good[index]?.row ?? 0) - 1];
      return leftover === undefined ? [] : [[id, leftover.id] as const];
    }),
  );
}

/** The picture of each piece whose row has one. */
export function pictureOfPieces(
  rowOf: ReadonlyMap<string, string>,
  { leftovers }: Pick<Project, "leftovers">,
): ReadonlyMap<string, string> {
  const pictures = new Map(leftovers.map(({ id, picture }) => [id, picture]));
  return new Map(
    [...rowOf].flatMap(([piece, row]) => {
      const picture = pictures.get(row);
      return picture === undefined ? [] : [[piece, picture] as const];
    }),
  );
}
