// Small heaps whose best is proved, nothing trimmed: is it reached? Once as they are, where no plain cloth may be
// narrower than 1 in; once with every eighth of an inch an inch, where that rule says nothing and the proofs hold. And by
// the exact search, where plain cloth may have any width. `--exact`: that alone.

import { type Exact, fillInChild } from "./exact.ts";
import { backAround, type ProvedHeap, provedHeaps, provedTable } from "./heaps.ts";
import { type Measured, measure } from "./measure.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type ProvedRow = {
  readonly name: string;
  /** Square eighths of an inch; where an inch stands for an eighth, square inches. */
  readonly shown: number;
  readonly optimal: number;
} & Measured;

export type ProvedExactRow = { readonly name: string; readonly optimal: number } & Exact;

export type Scale = "sewn" | "enlarged";

const scales: Readonly<
  Record<Scale, { readonly eighth: number; readonly step: string; readonly steps: number }>
> = {
  sewn: { eighth: 1 / 8, step: "1/8", steps: 1 },
  enlarged: { eighth: 1, step: "1/2", steps: 2 },
};

const options = readOptions({ seconds: "2" });
runExactly();
for (const seconds of options.exact ? [] : options.seconds)
  for (const scale of ["sewn", "enlarged"] as const) runAll(scale, seconds);

function runExactly(): void {
  say("\nSmall heaps, by the exact search");
  const heaps = provedHeaps().filter(({ name }) => isAsked(name, options));
  const rows = heaps.map((heap): ProvedExactRow => {
    const { name, optimal } = heap;
    const found = fillInChild(heap, true);
    say(`${name.padEnd(18)} ${found.value} of ${optimal}${found.proved ? ", proved" : ""}`);
    return { name, optimal, ...found };
  });
  const run = { name: "proved-exact", bench: "proved-exact", options: {} };
  const command = "npm run bench:proved -- --exact";
  if (options.only === null) writeRaw({ ...run, command }, rows, options.because);
}

function runAll(scale: Scale, seconds: number): void {
  say(`\nSmall heaps, ${scale}, ${seconds} s`);
  const heaps = provedHeaps().filter(({ name }) => isAsked(name, options));
  const rows = heaps.map((heap) => runHeap(heap, scale, seconds));
  say(`${rows.filter(({ shown, optimal }) => shown === optimal).length} of ${rows.length}`);
  const command = `npm run bench:proved -- --seconds ${seconds}`;
  const run = { name: `proved-${scale}-${seconds}s`, bench: "proved", command, options: { scale, seconds } };
  if (options.only === null) writeRaw(run, rows, options.because);
}

function runHeap(heap: ProvedHeap, scale: Scale, seconds: number): ProvedRow {
  const { name, W, H, optimal } = heap;
  const { eighth, step, steps } = scales[scale];
  // At a floor of 1 1/2 in the smallest cell is 1 in: as small as sewing allows.
  const size = ["--back", backAround(W, H, eighth), "--floor", "1.5", "--step", step];
  const rest = ["--style", "all-over", "--time", "any", "--seed", "1", "--seconds", String(seconds)];
  const found = measure(provedTable(heap, eighth), [...size, ...rest]);
  const shown = found.shownSteps / steps ** 2;
  const verdict = shown === optimal ? "the proved best" : `${shown} of ${optimal}`;
  say(`${name.padEnd(18)} ${verdict}${found.problems.length === 0 ? "" : "  NOT VALID"}`);
  return { name, shown, optimal, ...found };
}
