// Dense heaps, one region, every leftover wanted: how much of it shows after so many seconds.
import { groupedBy, mean, percent } from "./figures.ts";
import { type DenseHeap, denseHeaps, denseTable, type Strips } from "./heaps.ts";
import { type Measured, measure } from "./measure.ts";
import { isAsked, mayWrite, type Options, readOptions, say } from "./options.ts";
import { isMeasured, writeRaw } from "./raw.ts";

export type DenseRow = Omit<DenseHeap, "back"> & Measured;

/** What is common to every job of dense cloth. */
export const denseOptions = ["--style", "all-over", "--time", "any", "--floor", "1.5", "--seed", "1"];

const options = readOptions({ seconds: "2" });
for (const strips of options.strips) for (const seconds of options.seconds) runSet(options, strips, seconds);

function runSet(options: Options, strips: Strips, seconds: number): void {
  const name = `dense-${options.set}-${strips}-${seconds}s`;
  const write = mayWrite(options, isMeasured(name));
  say(`\nDense heaps, seeds ${options.seeds.join(", ")}; strips ${strips}; ${seconds} s`);
  const heaps = denseHeaps(options.seeds).filter((heap) => isAsked(heap.name, options));
  const rows = heaps.map((heap) => runHeap(heap, strips, seconds));
  sayMeans(rows);
  if (!write) return;
  const which = options.set === "reporting" ? "--reporting" : `--seeds ${options.seeds.join()}`;
  const command = `npm run bench:dense -- ${which} --seconds ${seconds} --strips ${strips}`;
  const run = { name, bench: "dense", command, options: { set: options.set, strips, seconds } };
  writeRaw(run, rows, options.because);
}

function runHeap({ back, ...heap }: DenseHeap, strips: Strips, seconds: number): DenseRow {
  const table = denseTable(heap.name, strips);
  const found = measure(table, ["--back", back, ...denseOptions, "--seconds", String(seconds)]);
  const row = { ...heap, ...found };
  sayRow(row);
  return row;
}

function sayRow(row: DenseRow): void {
  const { name, covered, plainCells, trimWaste, unused, cpuSeconds, problems } = row;
  const facts = [
    `${percent(covered).padStart(5)} % covered`,
    `${String(plainCells).padStart(3)} plain cells`,
    `${percent(trimWaste)} % trimmed away`,
    `${String(unused).padStart(3)} unused`,
    `${cpuSeconds.toFixed(2)} CPU s`,
  ];
  say(`${name.padEnd(15)} ${facts.join("  ")}${problems.length > 0 ? `  NOT VALID: ${problems[0]}` : ""}`);
}

function sayMeans(rows: readonly DenseRow[]): void {
  for (const [key, group] of groupedBy(rows, ({ n, ratio }) => `n ${n}, ratio ${ratio}`)) {
    const covered = group.map((row) => row.covered);
    say(`${key.padEnd(18)} mean ${percent(mean(covered))} %, worst ${percent(Math.min(...covered))} %`);
  }
}
