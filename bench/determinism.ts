// Same job, seed and effort: the same bytes, process after process.
import { createHash } from "node:crypto";
import { runPlan } from "./commandLine.ts";
import { denseHeaps, denseTable } from "./heaps.ts";
import { say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type DeterminismRow = { readonly sha256: string; readonly bytes: number; readonly cpuSeconds: number };

const processes = 40;
const effort = 3000;
const heap = denseHeaps([1]).find(({ name }) => name === "n150_r1_s1");
if (heap === undefined) throw new Error("the heap of 150 is missing");
const { back } = heap;
const table = denseTable(heap.name, "cut");
const job = ["--back", back, "--style", "all-over", "--time", "any", "--floor", "1.5"];
const rows = Array.from({ length: processes }, runOnce);
say(`${new Set(rows.map(({ sha256 }) => sha256)).size} different plans in ${rows.length} processes`);
const run = { name: "determinism", bench: "determinism", command: "npm run bench:determinism" };
writeRaw({ ...run, options: { heap: heap.name, effort, seed: 1 } }, rows, null);

function runOnce(): DeterminismRow {
  const { status, plan, complaints, told } = runPlan(table, [
    ...job,
    "--seed",
    "1",
    "--effort",
    String(effort),
  ]);
  if (status !== 0) throw new Error(`the command line ended with ${status}: ${complaints}`);
  const sha256 = createHash("sha256").update(plan).digest("hex");
  return { sha256, bytes: Buffer.byteLength(plan), cpuSeconds: told?.cpuSeconds ?? 0 };
}
