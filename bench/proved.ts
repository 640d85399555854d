// Small heaps whose best is proved, nothing trimmed: is it reached?
import { eighths, type ProvedHeap, provedHeaps, provedTable } from "./heaps.ts";
import { type Measured, measure } from "./measure.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type ProvedRow = {
  readonly name: string;
  /** Square eighths of an inch, as the proof counts; the ruler's step is an eighth as well. */
  readonly optimal: number;
} & Measured;

const options = readOptions({ seconds: "2" });
for (const seconds of options.seconds) {
  const rows = provedHeaps()
    .filter(({ name }) => isAsked(name, options))
    .map((heap) => runHeap(heap, seconds));
  say(`${rows.filter(isReached).length} of ${rows.length} reached`);
  const command = `npm run bench:proved -- --seconds ${seconds}`;
  const run = { name: `proved-${seconds}s`, bench: "proved", command, options: { seconds } };
  if (options.only === null) writeRaw(run, rows, options.because);
}

function runHeap(heap: ProvedHeap, seconds: number): ProvedRow {
  const { name, W, H, optimal } = heap;
  // At a floor of 1 1/2 in the smallest cell is 1 in: as small as sewing allows.
  const size = ["--back", eighths(W, H), "--floor", "1.5", "--step", "1/8"];
  const rest = ["--style", "all-over", "--time", "any", "--seed", "1", "--seconds", String(seconds)];
  const row = { name, optimal, ...measure(provedTable(heap), [...size, ...rest]) };
  const valid = row.problems.length === 0 ? "" : "  NOT VALID";
  const verdict = isReached(row) ? "reached" : `${row.shownSteps} of ${optimal}`;
  say(`${name.padEnd(18)} ${verdict}${valid}`);
  return row;
}

function isReached({ shownSteps, optimal }: ProvedRow): boolean {
  return shownSteps === optimal;
}
