// Thirty published problems of guillotine cutting whose optima are proved: does the exact search reach them, and prove it?
// Once as published, once with items that may be turned.
import { type Exact, fillInChild } from "./exact.ts";
import { type PublishedProblem, publishedProblems } from "./heaps.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type KnapsackRow = {
  readonly name: string;
  readonly source: string;
  /** null: not known before. */
  readonly optimal: number | null;
} & Exact;

const options = readOptions({ seconds: "0" });
for (const turning of [false, true]) runAll(turning);

function runAll(turning: boolean): void {
  say(turning ? "\nPublished problems, items turned" : "\nPublished problems");
  const problems = publishedProblems().filter(({ name }) => isAsked(name, options));
  const rows = problems.map((problem) => runProblem(problem, turning));
  const name = turning ? "knapsack-turned" : "knapsack";
  const run = {
    name,
    bench: "knapsack",
    command: "npm run bench:knapsack",
    options: { turning: `${turning}` },
  };
  if (options.only === null) writeRaw(run, rows, options.because);
}

function runProblem(problem: PublishedProblem, turning: boolean): KnapsackRow {
  const { name, source } = problem;
  const optimal = turning ? problem.optimalWithRotation : problem.optimal;
  const found = fillInChild(problem, turning);
  const held = optimal === null ? "" : ` of ${optimal}`;
  const invalid = found.problems.length === 0 ? "" : "  NOT VALID";
  const seconds = found.cpuSeconds.toFixed(2);
  say(`${name.padEnd(8)} ${found.value}${held}, at most ${found.bound}, ${seconds} s${invalid}`);
  return { name, source, optimal, ...found };
}
