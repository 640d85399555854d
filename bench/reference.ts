// The same finished sizes that a general guillotine solver was given, in the same regions.
import { percent } from "./figures.ts";
import { backAround, leftoverCounts, leftoversOf, leftoversTable, type Strips } from "./heaps.ts";
import { type Measured, measure } from "./measure.ts";
import { isAsked, type Options, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type ReferenceRow = { readonly n: number; readonly ratio: number } & Measured;

const options = readOptions({ seconds: "2,10", strips: "both" });
for (const strips of options.strips) for (const seconds of options.seconds) runAll(options, strips, seconds);

function runAll({ only, because }: Options, strips: Strips, seconds: number): void {
  say(`\nReference heaps; strips ${strips}; ${seconds} s`);
  const rows = leftoverCounts
    .filter((n) => isAsked(`n${n}`, { only }))
    .flatMap((n) => runBands(n, strips, seconds));
  const command = `npm run bench:reference -- --seconds ${seconds} --strips ${strips}`;
  const name = `reference-${strips}-${seconds}s`;
  if (only === null)
    writeRaw({ name, bench: "reference", command, options: { strips, seconds } }, rows, because);
}

function runBands(n: number, strips: Strips, seconds: number): ReferenceRow[] {
  const leftovers = leftoversOf(n);
  const table = leftoversTable(leftovers, strips);
  return leftovers.bands.map(({ ratio, w, h }) => {
    const size = ["--back", backAround(w, h), "--floor", "1.5"];
    const rest = ["--style", "all-over", "--time", "any", "--seed", "1", "--seconds", String(seconds)];
    const found = measure(table, [...size, ...rest]);
    const valid = found.problems.length === 0 ? "" : "  NOT VALID";
    say(`n ${n}, ratio ${ratio}: ${percent(found.covered)} % covered, ${found.unused} unused${valid}`);
    return { n, ratio, ...found };
  });
}
