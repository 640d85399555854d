import { unzipSync, zipSync } from "fflate";
import { err, ok, type Result } from "../engine/length/index.ts";
import { crc32Text } from "./crc32.ts";
import { largestPlanFile, readPlan } from "./plan-read.ts";
import type { Json } from "./project-codecs.ts";
import { isObject, projectJson, readProjectJson } from "./project-json.ts";
import { projectFormat, projectVersion } from "./project-migrations.ts";
import type { ProjectProblem } from "./project-problems.ts";
import type { Project } from "./project-types.ts";

/** The parts of a `.verso` file, and the most bytes each may unpack to. */
const entries = {
  "manifest.json": 1_000_000,
  "project.json": 50_000_000,
  "plan.json": largestPlanFile * 3,
} as const;
type EntryName = keyof typeof entries;

export const largestProjectFile = 50_000_000;

/**
 * A project as a `.verso` file: a zip of `project.json`, `plan.json` where a plan is kept, and `manifest.json` with a
 * checksum of each. Law: `readProject` gives the project back. `writtenAt`: milliseconds since 1970.
 */
export function writeProject(project: Project, writtenAt: number): Uint8Array {
  const { plan, ...rest } = projectJson(project);
  const { text, ...made } = isObject(plan) ? plan : {};
  const files: Record<string, Uint8Array> = {
    "project.json": jsonBytes({ ...rest, plan: isObject(plan) ? { file: "plan.json", ...made } : null }),
    ...(typeof text === "string" ? { "plan.json": new TextEncoder().encode(text) } : {}),
  };
  const manifest = jsonBytes({
    format: projectFormat,
    version: projectVersion,
    entries: Object.entries(files).map(([name, bytes]) => ({
      name,
      bytes: bytes.length,
      crc32: crc32Text(bytes),
    })),
  });
  return zipSync({ "manifest.json": manifest, ...files }, { level: 6, mtime: zipTime(writtenAt) });
}

// A zip knows the years 1980 to 2107.
function zipTime(at: number): number {
  return Math.min(Math.max(at, Date.UTC(1980, 0, 2)), Date.UTC(2099, 0));
}

function jsonBytes(json: Json): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(json, null, 2)}\n`);
}

/**
 * Reads a `.verso` file of this or an earlier version: all of it, or every fault with its place. Whatever the bytes
 * are, it never throws and never unpacks more than a project can hold.
 */
export function readProject(bytes: Uint8Array): Result<Project, readonly ProjectProblem[]> {
  if (bytes.length > largestProjectFile) {
    return err([{ path: "", kind: "file-too-large", most: largestProjectFile }]);
  }
  const files = unpack(bytes);
  if (!files.ok) return files;
  const faults = manifestProblems(files.value);
  if (faults.length > 0) return err(faults);
  const json = jsonIn("project.json", files.value);
  if (!json.ok) return json;
  const whole = withPlanText(json.value, files.value);
  if (!whole.ok) return whole;
  const project = readProjectJson(whole.value);
  return project.ok ? withReadablePlan(project.value) : project;
}

type Files = ReadonlyMap<EntryName, Uint8Array>;
type Read<T> = Result<T, readonly ProjectProblem[]>;

function unpack(bytes: Uint8Array): Read<Files> {
  const problems: ProjectProblem[] = [];
  const seen = new Set<string>();
  try {
    const unzipped = unzipSync(bytes, {
      // What an entry says it unpacks to is all the room it is given, so nothing can grow beyond it.
      filter: ({ name, originalSize }) => {
        const problem = entryProblem(name, originalSize, seen.has(name));
        seen.add(name);
        if (problem !== null && problems.length < 20) problems.push(problem);
        return problem === null;
      },
    });
    if (!seen.has("manifest.json")) return err([{ path: "", kind: "not-a-project" }]);
    if (problems.length > 0) return err(problems);
    return ok(filesOf(unzipped));
  } catch {
    const broken: ProjectProblem =
      seen.size === 0
        ? { path: "", kind: "not-a-zip" }
        : { path: "", kind: "entry-damaged", entry: last(seen) };
    return err(problems.length > 0 ? problems : [broken]);
  }
}

function filesOf(unzipped: Readonly<Record<string, Uint8Array>>): Files {
  const files = new Map<EntryName, Uint8Array>();
  for (const [name, bytes] of Object.entries(unzipped)) if (isEntryName(name)) files.set(name, bytes);
  return files;
}

function last(names: ReadonlySet<string>): string {
  return [...names].at(-1) ?? "";
}

function isEntryName(name: string): name is EntryName {
  return Object.hasOwn(entries, name);
}

function entryProblem(name: string, size: number, isAgain: boolean): ProjectProblem | null {
  const entry = name.slice(0, 100);
  if (!isEntryName(name) || isAgain) return { path: "", kind: "entry-unknown", entry };
  const most = entries[name];
  // Written so that a size that is no number is caught as well.
  return size <= most ? null : { path: "", kind: "entry-too-large", entry, most };
}

function manifestProblems(files: Files): readonly ProjectProblem[] {
  const manifest = jsonIn("manifest.json", files);
  if (!manifest.ok) return manifest.error;
  const { value } = manifest;
  if (!isObject(value) || value.format !== projectFormat) return [{ path: "", kind: "not-a-project" }];
  const { version, entries: listed } = value;
  if (typeof version === "number" && version > projectVersion) {
    return [{ path: "", kind: "newer-version", version, known: projectVersion }];
  }
  const sums = sumsIn(listed);
  if (sums === null) return [{ path: "entries", kind: "wrong-type", expected: "list" }];
  const missing = [...sums.keys()].filter((name) => !isEntryName(name) || !files.has(name));
  return [
    ...missing.map((entry): ProjectProblem => ({ path: "", kind: "entry-missing", entry })),
    ...[...files].flatMap(([name, bytes]) =>
      name === "manifest.json" ? [] : sumProblems(name, bytes, sums),
    ),
  ];
}

/** Checksums by name; `null`: it is no list of entries. */
function sumsIn(listed: unknown): ReadonlyMap<string, string> | null {
  if (!Array.isArray(listed) || listed.length > 100) return null;
  const sums = new Map<string, string>();
  for (const entry of listed as readonly unknown[]) {
    if (!isObject(entry)) return null;
    const { name, crc32 } = entry;
    if (typeof name !== "string" || typeof crc32 !== "string") return null;
    sums.set(name.slice(0, 100), crc32);
  }
  return sums;
}

function sumProblems(
  entry: string,
  bytes: Uint8Array,
  sums: ReadonlyMap<string, string>,
): readonly ProjectProblem[] {
  const sum = sums.get(entry);
  if (sum === undefined) return [{ path: "", kind: "entry-unknown", entry }];
  return sum === crc32Text(bytes) ? [] : [{ path: "", kind: "entry-damaged", entry }];
}

function textIn(entry: EntryName, files: Files): Read<string> {
  const bytes = files.get(entry);
  if (bytes === undefined) return err([{ path: "", kind: "entry-missing", entry }]);
  try {
    return ok(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    return err([{ path: "", kind: "not-json", entry }]);
  }
}

function jsonIn(entry: EntryName, files: Files): Read<unknown> {
  const text = textIn(entry, files);
  if (!text.ok) return text;
  try {
    return ok(JSON.parse(text.value));
  } catch {
    return err([{ path: "", kind: "not-json", entry }]);
  }
}

/** In the file the plan lies beside the project, so that it can be used by itself. */
function withPlanText(json: unknown, files: Files): Read<unknown> {
  if (!isObject(json) || !isObject(json.plan)) return ok(json);
  const text = textIn("plan.json", files);
  return text.ok ? ok({ ...json, plan: { ...json.plan, text: text.value } }) : text;
}

function withReadablePlan(project: Project): Read<Project> {
  if (project.plan === null) return ok(project);
  const plan = readPlan(project.plan.text);
  if (plan.ok) return ok(project);
  return err(plan.error.map((problem) => ({ path: "plan", kind: "plan", problem })));
}
