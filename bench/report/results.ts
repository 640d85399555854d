import type { Raw } from "../raw.ts";
import { appText } from "./app.ts";
import { chessboardsText } from "./chessboards.ts";
import { denseText } from "./dense.ts";
import { determinismText } from "./determinism.ts";
import { firstText } from "./first.ts";
import { knapsackText } from "./knapsack.ts";
import { paceText } from "./pace.ts";
import { pageText } from "./page.ts";
import { photoText } from "./photo.ts";
import { photoMemoryText } from "./photoMemory.ts";
import { provedText } from "./proved.ts";
import { realText } from "./real.ts";
import { referenceText } from "./reference.ts";

/** The whole of RESULTS.md, from what lies in `raw/` and nothing else. */
export function resultsText(raws: readonly Raw[]): string {
  const of = <Row>(bench: string): Raw<Row>[] => raws.filter((raw): raw is Raw<Row> => raw.bench === bench);
  const sections = [
    denseText(of("dense")),
    firstText(of("first")),
    referenceText(of("reference")),
    provedText(of("proved"), of("sewable"), of("proved-exact")),
    knapsackText(of("knapsack")),
    realText(of("real")),
    determinismText(of("determinism")),
    paceText(of("pace")),
    pageText(of("page")),
    appText(of("app")),
    photoText(of("photo-rendered"), of("photo-folder")),
    photoMemoryText(of("photo-memory")),
    chessboardsText(of("chessboards")),
  ];
  return `${[opening, ...sections.filter((section) => section !== "")].join("\n\n")}\n`;
}

const opening = `# What the solver does, measured

Written by \`npm run bench:results\` from the measurements in \`raw/\`; nothing here is typed by hand. Above each table stands what
measures it again.

- Every plan is made by the command line in a fresh process, as a user starts it. A budget is processor seconds of all threads, asked
  for with \`--seconds\`; "CPU s" is what was used from the moment the heap was read until the plan was written. Loading and compiling
  the program (about a second) comes before that.
- **Covered**: finished area of the cells of leftovers ÷ the smaller of the finished area of all leftovers and the area to fill. Per
  cent.
- **Plain cells**: cells of plain cloth. **Trimmed away**: of the finished area of the pieces used, what falls off and is too small to
  keep. **Unused**: leftovers that found no place.
- **Not valid**: plans that the checker, which shares no code with the solver, has anything against, or whose figures it counts
  otherwise.
- Two numbers with a stroke between them are the mean and the worst.`;
