import { checkDraft, type DraftProblem, defaultSettings } from "../../../engine/cloth/index.ts";
import { type DisplayUnit, inches, type Length } from "../../../engine/length/index.ts";
import { draftOfProject, newProject, type ProjectSettings } from "../../../files/index.ts";

export const seams = ["seam", "plainSeam"] as const;
type Seam = (typeof seams)[number];

const finerMarks: Readonly<Record<DisplayUnit, readonly Length[]>> = { in: [inches(1, 16)], cm: [] };

/** The marks of a ruler in this unit, the usual one first; one that was chosen in another unit last. */
export function marksFor({ unit, step }: ProjectSettings): readonly Length[] {
  const chosen = step?.value ?? null;
  const marks = [defaultSettings[unit].step, ...finerMarks[unit]];
  return chosen === null || marks.includes(chosen) ? marks : [...marks, chosen];
}

// A throw of any size: only what is wrong with the settings themselves is looked for.
const throwSize = { width: inches(68), height: inches(88) };

/** What is wrong with each seam allowance, before anything is planned with it. */
export function troublesIn(settings: ProjectSettings): { readonly [S in Seam]?: DraftProblem } {
  const blank = newProject({ title: "", createdAt: 0 });
  const check = checkDraft({ ...draftOfProject({ ...blank, settings }), back: throwSize, pieces: [] });
  const problems = check.ok ? [] : check.error;
  const found = seams.flatMap((seam) => {
    const problem = problems.find((one) => one.kind === "out-of-range" && one.field === seam);
    return problem === undefined ? [] : [[seam, problem] as const];
  });
  return Object.fromEntries(found);
}
