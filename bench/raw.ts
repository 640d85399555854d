import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, release } from "node:os";
import { join } from "node:path";
import { benchFolder, canPin } from "./commandLine.ts";

/** What one run of a bench measured, as it lies in `raw/`. */
export type Raw<Row = unknown> = {
  readonly bench: string;
  /** Types this again. */
  readonly command: string;
  readonly date: string;
  /** The sources measured; `changed` where they were not as committed. */
  readonly commit: string | null;
  readonly changed: boolean;
  readonly machine: Machine;
  readonly options: Readonly<Record<string, string | number>>;
  /** Runs of the same thing before this one, and why it was run again. */
  readonly before: readonly Before[];
  readonly rows: readonly Row[];
};

export type Machine = {
  readonly model: string;
  readonly cores: number;
  readonly node: string;
  readonly system: string;
  readonly pinned: boolean;
};

export type Before = { readonly date: string; readonly commit: string | null; readonly because: string };

export const rawFolder = join(benchFolder, "raw");

export type Run = Pick<Raw, "bench" | "command" | "options"> & { readonly name: string };

/** A run in the making: rows are written when all are there, so that half a run is never kept. */
export function writeRaw<Row>({ name, ...run }: Run, rows: readonly Row[], because: string | null): void {
  const file = fileOf(name);
  const raw: Raw<Row> = {
    ...run,
    date: new Date().toISOString(),
    ...sources(),
    machine: machine(),
    before: because === null ? [] : beforeIn(file, because),
    rows,
  };
  mkdirSync(rawFolder, { recursive: true });
  writeFileSync(file, text(raw));
  process.stderr.write(`written: bench/raw/${name}.json\n`);
}

export function isMeasured(name: string): boolean {
  return existsSync(fileOf(name));
}

/** Every run in `raw/`, by name of its file. */
export function readRaws(): readonly { readonly name: string; readonly raw: Raw }[] {
  const files = existsSync(rawFolder) ? readdirSync(rawFolder) : [];
  return files
    .filter((file) => file.endsWith(".json"))
    .sort()
    .map((file) => ({
      name: file.replace(/\.json$/, ""),
      raw: JSON.parse(readFileSync(join(rawFolder, file), "utf8")),
    }));
}

function beforeIn(file: string, because: string): readonly Before[] {
  if (!existsSync(file)) return [];
  const { date, commit, before }: Raw = JSON.parse(readFileSync(file, "utf8"));
  return [...before, { date, commit, because }];
}

function fileOf(name: string): string {
  return join(rawFolder, `${name}.json`);
}

function machine(): Machine {
  const all = cpus();
  return {
    model: all[0]?.model.trim() ?? "unknown",
    cores: all.length,
    node: process.version,
    system: `${process.platform} ${release().split(".").slice(0, 2).join(".")} ${process.arch}`,
    pinned: canPin(),
  };
}

function sources(): Pick<Raw, "commit" | "changed"> {
  const git = (...args: string[]) => spawnSync("git", args, { cwd: benchFolder, encoding: "utf8" });
  const commit = git("rev-parse", "--short=12", "HEAD");
  if (commit.status !== 0) return { commit: null, changed: true };
  const changed = git("status", "--porcelain", "--", "../src", "../package-lock.json").stdout.trim() !== "";
  return { commit: commit.stdout.trim(), changed };
}

/** One row a line, so that a change of one shows as one. */
function text<Row>({ rows, ...head }: Raw<Row>): string {
  const lines = rows.map((row) => `  ${JSON.stringify(row)}`).join(",\n");
  return `${JSON.stringify(head, null, 1).replace(/\n}$/, "")},\n "rows": [\n${lines}\n ]\n}\n`;
}
