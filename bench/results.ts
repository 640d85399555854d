// Writes RESULTS.md from what lies in `raw/`.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { benchFolder } from "./commandLine.ts";
import { readRaws } from "./raw.ts";
import { resultsText } from "./report/results.ts";

writeFileSync(join(benchFolder, "RESULTS.md"), resultsText(readRaws().map(({ raw }) => raw)));
