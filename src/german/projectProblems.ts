import type { ProjectProblem } from "../files/index.ts";
import { quoted } from "./measures.ts";

/** Why a file is no project, and what to do. A fault deep inside names its place, so that it can be reported. */
export function projectProblem(problem: ProjectProblem): string {
  switch (problem.kind) {
    case "file-too-large":
      return "Sie ist größer als jede Rückseite. Such die richtige Datei.";
    case "not-a-zip":
      return "Sie bricht ab, oder sie ist keine Verso-Datei. Hol sie noch einmal von dort, wo sie aufgehoben war.";
    case "not-a-project":
      return "Sie ist keine Rückseite von Verso. Die enden auf .verso.";
    case "newer-version":
      return "Ein neueres Verso hat sie gemacht. Lade diese Seite neu, um es zu holen, dann öffne die Datei.";
    case "entry-missing":
    case "entry-damaged":
    case "not-json":
      return `Ihr Teil ${quoted(problem.entry)} ist beschädigt. Hol die Datei noch einmal von dort, wo sie aufgehoben war.`;
    case "entry-unknown":
    case "entry-too-large":
      return `Ihr Teil ${quoted(problem.entry)} stammt nicht von Verso. Öffne eine Kopie, die niemand verändert hat.`;
    case "plan":
      return "Der Plan darin lässt sich so nicht nähen. Öffne eine frühere Kopie.";
    case "more-problems":
      return "Vielleicht gibt es mehr davon.";
    case "missing":
    case "wrong-type":
    case "not-one-of":
    case "not-a-length":
    case "out-of-range":
    case "text-too-long":
    case "too-many":
    case "twice":
      return `Was bei ${quoted(problem.path)} steht, ist nicht zu gebrauchen. Öffne eine Kopie, die niemand verändert hat.`;
  }
}
