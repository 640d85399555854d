import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const benchFolder = fileURLToPath(new URL(".", import.meta.url));
const verso = join(benchFolder, "..", "src", "cli", "verso.mjs");

export type Told = {
  /** From the moment the heap is read until the plan is written, all threads. */
  readonly cpuSeconds: number;
  /** With loading and compiling the program. */
  readonly wholeCpuSeconds: number;
  /** The most memory the process had, over what it had when the search began. */
  readonly grownBytes: number;
};

export type Outcome = {
  readonly status: number | null;
  readonly plan: string;
  readonly complaints: string;
  readonly told: Told | null;
};

/** Plans one table in a fresh process, as a user does; on one core where the machine can hold it there. */
export function runPlan(table: string, options: readonly string[]): Outcome {
  const folder = mkdtempSync(join(tmpdir(), "verso-bench-"));
  writeFileSync(join(folder, "heap.csv"), table);
  const probe = ["--import", new URL("./probe.mjs", import.meta.url).href];
  const args = [...probe, verso, "plan", "heap.csv", ...options, "--json", "-"];
  const { status, stdout, stderr, told } = runNode(args, folder);
  rmSync(folder, { recursive: true, force: true });
  return { status, plan: stdout, complaints: stderr, told: told === "" ? null : JSON.parse(told) };
}

/** A fresh Node process; `told` is what it wrote on file descriptor 3. */
export function runNode(args: readonly string[], cwd: string) {
  const [program, ...all] = [...pinning(), process.execPath, ...args];
  const run = spawnSync(program ?? process.execPath, all, {
    cwd,
    encoding: "utf8",
    maxBuffer: 2 ** 28,
    stdio: ["ignore", "pipe", "pipe", "pipe"],
  });
  return { status: run.status, stdout: run.stdout, stderr: run.stderr, told: run.output[3] ?? "" };
}

/** The last core: what else runs tends to begin at the first. */
function pinning(): string[] {
  return canPin() ? ["taskset", "-c", String(cpus().length - 1)] : [];
}

let pins: boolean | null = null;
export function canPin(): boolean {
  pins ??= spawnSync("taskset", ["-c", String(cpus().length - 1), "true"]).status === 0;
  return pins;
}
