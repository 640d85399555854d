import type { ProjectProblem } from "../../files/index.ts";
import { quoted } from "../voice.ts";

/** Why a file is no project, and what to do. A fault deep inside names its place, so that it can be reported. */
export function projectProblem(problem: ProjectProblem): string {
  switch (problem.kind) {
    case "file-too-large":
      return "It is larger than any project. Look for the right file.";
    case "not-a-zip":
      return "It breaks off, or it is no Verso file. Fetch it again from where it was kept.";
    case "not-a-project":
      return "It is no Verso project. Those end in .verso.";
    case "newer-version":
      return "A later Verso made it. Load this page again to get the newer one, then open the file.";
    case "entry-missing":
    case "entry-damaged":
    case "not-json":
      return `Its part ${quoted(problem.entry)} is damaged. Fetch the file again from where it was kept.`;
    case "entry-unknown":
    case "entry-too-large":
      return `Its part ${quoted(problem.entry)} was not put there by Verso. Open a copy that no one has changed.`;
    case "plan":
      return "The plan in it can't be sewn as it stands. Open an earlier copy.";
    case "more-problems":
      return "There may be more like these.";
    case "missing":
    case "wrong-type":
    case "not-one-of":
    case "not-a-length":
    case "out-of-range":
    case "text-too-long":
    case "too-many":
    case "twice":
      return `What stands at ${quoted(problem.path)} can't be used. Open a copy that no one has changed.`;
  }
}
