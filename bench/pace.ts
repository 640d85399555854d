// What a move and an improvement cost, as heaps grow.
import { fileURLToPath } from "node:url";
import { runNode } from "./commandLine.ts";
import { type DenseHeap, denseHeaps, denseTable } from "./heaps.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type PaceRow = Omit<DenseHeap, "back"> & Pace;

export type Pace = {
  readonly effort: number;
  readonly moves: number;
  /** Processor seconds of the search alone. */
  readonly cpuSeconds: number;
  /** Moves after which more of the best layout was covered than before. */
  readonly improvements: number;
  /** What was covered of the region after so many processor seconds: about one point for every twentieth of the time. */
  readonly curve: readonly { readonly cpuSeconds: number; readonly covered: number }[];
};

const options = readOptions({ seconds: "10" });
const [seconds = 10] = options.seconds;
const rows = denseHeaps([1])
  .filter(({ name, ratio }) => ratio === 1 && isAsked(name, options))
  .map(runHeap);
const run = { name: "pace", bench: "pace", command: `npm run bench:pace -- --seconds ${seconds}` };
if (options.only === null) writeRaw({ ...run, options: { seconds } }, rows, null);

function runHeap({ back, ...heap }: DenseHeap): PaceRow {
  const child = fileURLToPath(new URL("./paceOfOne.ts", import.meta.url));
  const folder = fileURLToPath(new URL("..", import.meta.url));
  const args = ["--import", "tsx", child, back, denseTable(heap.name, "cut"), String(seconds)];
  const { status, stderr, told } = runNode(args, folder);
  if (status !== 0) throw new Error(`no pace of ${heap.name}: ${stderr}`);
  const pace: Pace = JSON.parse(told);
  const { moves, improvements, cpuSeconds } = pace;
  const each = (count: number) => `${((1000 * cpuSeconds) / count).toFixed(2)} ms`;
  say(`${heap.name.padEnd(12)} ${each(moves)} a move, ${each(improvements)} an improvement`);
  return { ...heap, ...pace };
}
