import { unzipSync, zipSync } from "fflate";
import { err, ok, type Result } from "../engine/length/index.ts";
import { crc32Text } from "./crc32.ts";
import { largestPlanFile, readPlan } from "./plan-read.ts";
import type { Json } from "./project-codecs.ts";
import { isObject, projectJson, readProjectJson } from "./project-json.ts";
import { projectFormat, projectVersion } from "./project-migrations.ts";
import { mostOf } from "./project-parts.ts";
import type { ProjectProblem } from "./project-problems.ts";
import type { Pictures, Project } from "./project-types.ts";

/** The parts of a `.verso` file, and the most bytes each may unpack to. */
const entries = {
  "manifest.json": 1_000_000,
  "project.json": 50_000_000,
  "plan.json": largestPlanFile * 3,
} as const;
type EntryName = keyof typeof entries;

export const largestProjectFile = 50_000_000;
/** In bytes: of one picture, and of all in a file. */
export const largestPicture = 1_000_000;
const largestPictures = 50_000_000;

const pictureEntry = /^pictures[/]([0-9a-f]{64})[.](?:jpg|png)$/;

/**
 * A project as a `.verso` file: a zip of `project.json`, `plan.json` where a plan is kept, and `manifest.json` with a
 * checksum of each; and those of the `pictures` that its rows, the photo of its top and the photos she keeps have. Law: `readProjectFile` gives both back.
 * `writtenAt`: milliseconds since 1970.
 */
export function writeProject(
  project: Project,
  writtenAt: number,
  pictures: Pictures = new Map(),
): Uint8Array {
  const { plan, ...rest } = projectJson(project);
  const { text, ...made } = isObject(plan) ? plan : {};
  const files: Record<string, Uint8Array> = {
    "project.json": jsonBytes({ ...rest, plan: isObject(plan) ? { file: "plan.json", ...made } : null }),
    ...(typeof text === "string" ? { "plan.json": new TextEncoder().encode(text) } : {}),
    ...pictureEntries(project, pictures),
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

function pictureEntries(
  { leftovers, topPhoto, photos }: Project,
  pictures: Pictures,
): Record<string, Uint8Array> {
  const named = [...leftovers.map(({ picture }) => picture), topPhoto?.picture, ...photos];
  const used = named.flatMap((picture) => {
    const bytes = picture === undefined ? undefined : pictures.get(picture);
    // A JPEG begins with these two bytes.
    const ending = bytes?.[0] === 0xff && bytes[1] === 0xd8 ? "jpg" : "png";
    return bytes === undefined ? [] : [[`pictures/${picture}.${ending}`, bytes] as const];
  });
  return Object.fromEntries(used);
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
export function readProject(bytes: Uint8Array): Read<Project> {
  const read = readProjectFile(bytes);
  return read.ok ? ok(read.value.project) : read;
}

export type ProjectFile = { readonly project: Project; readonly pictures: Pictures };

/** The same with the pictures that lie beside it. */
export function readProjectFile(bytes: Uint8Array): Read<ProjectFile> {
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
  const read = readProjectJson(whole.value);
  const project = read.ok ? withReadablePlan(read.value) : read;
  return project.ok ? ok({ project: project.value, pictures: picturesIn(files.value) }) : project;
}

function picturesIn(files: Files): Pictures {
  return new Map(
    [...files].flatMap(([name, bytes]) => {
      const id = pictureEntry.exec(name)?.[1];
      return id === undefined ? [] : [[id, bytes] as const];
    }),
  );
}

type Files = ReadonlyMap<string, Uint8Array>;
type Read<T> = Result<T, readonly ProjectProblem[]>;

function unpack(bytes: Uint8Array): Read<Files> {
  const problems: ProjectProblem[] = [];
  const seen = new Set<string>();
  let ofPictures = 0;
  try {
    const unzipped = unzipSync(bytes, {
      // What an entry says it unpacks to is all the room it is given, so nothing can grow beyond it.
      filter: ({ name, originalSize }) => {
        if (pictureEntry.test(name)) ofPictures += originalSize;
        const problem = entryProblem(name, originalSize, seen.has(name) || ofPictures > largestPictures);
        seen.add(name);
        if (problem !== null && problems.length < 20) problems.push(problem);
        return problem === null;
      },
    });
    if (!seen.has("manifest.json")) return err([{ path: "", kind: "not-a-project" }]);
    if (problems.length > 0) return err(problems);
    return ok(new Map(Object.entries(unzipped)));
  } catch {
    const broken: ProjectProblem =
      seen.size === 0
        ? { path: "", kind: "not-a-zip" }
        : { path: "", kind: "entry-damaged", entry: last(seen) };
    return err(problems.length > 0 ? problems : [broken]);
  }
}

function last(names: ReadonlySet<string>): string {
  return [...names].at(-1) ?? "";
}

function isEntryName(name: string): name is EntryName {
  return Object.hasOwn(entries, name);
}

function entryProblem(name: string, size: number, isAgain: boolean): ProjectProblem | null {
  const entry = name.slice(0, 100);
  const most = pictureEntry.test(name) ? largestPicture : isEntryName(name) ? entries[name] : null;
  if (most === null || isAgain) return { path: "", kind: "entry-unknown", entry };
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
  const missing = [...sums.keys()].filter((name) => !files.has(name));
  return [
    ...missing.map((entry): ProjectProblem => ({ path: "", kind: "entry-missing", entry })),
    ...[...files].flatMap(([name, bytes]) =>
      name === "manifest.json" ? [] : sumProblems(name, bytes, sums),
    ),
  ];
}

const mostListed = mostOf.rows + 100;

/** Checksums by name; `null`: it is no list of entries. */
function sumsIn(listed: unknown): ReadonlyMap<string, string> | null {
  if (!Array.isArray(listed) || listed.length > mostListed) return null;
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
