// How soon a first plan is there: a fresh process, the heap read, nothing warmed up; then start and first plan.
import { fileURLToPath } from "node:url";
import { runNode } from "./commandLine.ts";
import { median } from "./figures.ts";
import { type DenseHeap, denseHeaps, denseTable } from "./heaps.ts";
import { isAsked, mayWrite, readOptions, say } from "./options.ts";
import { isMeasured, writeRaw } from "./raw.ts";

export type FirstRow = Omit<DenseHeap, "back"> & { readonly tries: readonly FirstPlan[] };
export type FirstPlan = {
  readonly milliseconds: number;
  readonly cpuMilliseconds: number;
  /** Of processor time, once the same process has made a few plans before. */
  readonly warmMilliseconds: number;
};

const triesOfEach = 3;

const options = readOptions({ seconds: "2" });
const name = `first-${options.set}`;
const write = mayWrite(options, isMeasured(name));
const rows = denseHeaps(options.seeds)
  .filter((heap) => isAsked(heap.name, options))
  .map(runHeap);
const which = options.set === "reporting" ? "--reporting" : `--seeds ${options.seeds.join()}`;
const run = {
  name,
  bench: "first",
  command: `npm run bench:first -- ${which}`,
  options: { set: options.set, tries: triesOfEach },
};
if (write) writeRaw(run, rows, options.because);

function runHeap({ back, ...heap }: DenseHeap): FirstRow {
  const tries = Array.from({ length: triesOfEach }, () => firstPlan(heap.name, back));
  const of = (value: (one: FirstPlan) => number) => median(tries.map(value)).toFixed(0);
  const [wall, cpu] = [of(({ milliseconds }) => milliseconds), of(({ cpuMilliseconds }) => cpuMilliseconds)];
  const warm = of(({ warmMilliseconds }) => warmMilliseconds);
  say(`${heap.name.padEnd(15)} first plan after ${wall} ms (${cpu} ms of CPU; warm ${warm} ms)`);
  return { ...heap, tries };
}

function firstPlan(heap: string, back: string): FirstPlan {
  const child = fileURLToPath(new URL("./firstPlan.ts", import.meta.url));
  const folder = fileURLToPath(new URL("..", import.meta.url));
  const args = ["--import", "tsx", child, back, denseTable(heap, "cut")];
  const { status, stderr, told } = runNode(args, folder);
  if (status !== 0) throw new Error(`no first plan of ${heap}: ${stderr}`);
  return JSON.parse(told);
}
