import { unzipSync, zipSync } from "fflate";
import { err, ok, type Result } from "../engine/length/index.ts";
import { crc32Text } from "./crc32.ts";
import { largestProjectFile, type ProjectFile, readProjectFile } from "./project.ts";
import { isObject } from "./project-json.ts";
import type { ProjectProblem } from "./project-problems.ts";
import type { Leftover, Pictures } from "./project-types.ts";

export const everythingFormat = "verso-everything";
const everythingVersion = 1;

/** All backs of one device; each entry is a `.verso` file that opens by itself too. */
export type Everything = {
  readonly projects: readonly ProjectFile[];
  /** What lies on the shelf. */
  readonly shelf: { readonly leftovers: readonly Leftover[]; readonly pictures: Pictures };
  /** The entries that could not be read, by their names in the zip. */
  readonly damaged: readonly { readonly entry: string; readonly problems: readonly ProjectProblem[] }[];
};

const mostProjects = 2_000;
const largestManifest = 1_000_000;
export const largestEverything = 500_000_000;

const shelfEntry = "shelf.verso";

/**
 * Project files (`writeProject`) as one file: a zip of them and of the shelf, which is written in the same form, with
 * a manifest that has a checksum of each. `writtenAt`: milliseconds since 1970.
 */
export function writeEverything(
  projects: readonly Uint8Array[],
  shelf: Uint8Array,
  writtenAt: number,
): Uint8Array {
  const backs = projects.map((bytes, index) => [nameOf(index), bytes] as const);
  const files = [...backs, [shelfEntry, shelf] as const];
  const manifest = {
    format: everythingFormat,
    version: everythingVersion,
    entries: files.map(([name, bytes]) => ({ name, bytes: bytes.length, crc32: crc32Text(bytes) })),
  };
  const text = new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`);
  // Each of them is packed already.
  return zipSync({ "manifest.json": text, ...Object.fromEntries(files) }, { level: 0, mtime: writtenAt });
}

function nameOf(index: number): string {
  return `back-${String(index + 1).padStart(4, "0")}.verso`;
}

/** Whether these bytes say of themselves that they are such a file; nothing but its manifest is unpacked for that. */
export function isEverything(bytes: Uint8Array): boolean {
  return manifestIn(bytes)?.format === everythingFormat;
}

/** Everything that can be read of it: one damaged back takes no other with it. Never throws. */
export function readEverything(bytes: Uint8Array): Result<Everything, readonly ProjectProblem[]> {
  if (bytes.length > largestEverything) {
    return err([{ path: "", kind: "file-too-large", most: largestEverything }]);
  }
  const manifest = manifestIn(bytes);
  if (manifest?.format !== everythingFormat) return err([{ path: "", kind: "not-a-project" }]);
  const { version } = manifest;
  if (typeof version !== "number" || version > everythingVersion) {
    return err([
      { path: "", kind: "newer-version", version: Number(version) || 0, known: everythingVersion },
    ]);
  }
  const files = unpacked(bytes, (name) => /^(back-\d{4,5}|shelf)[.]verso$/.test(name), largestProjectFile);
  if (files === null) return err([{ path: "", kind: "not-a-zip" }]);
  return ok(readAll(sumsIn(manifest.entries), files));
}

function readAll(sums: ReadonlyMap<string, string>, files: ReadonlyMap<string, Uint8Array>): Everything {
  const projects: ProjectFile[] = [];
  let shelf: Everything["shelf"] = { leftovers: [], pictures: new Map() };
  const damaged: Everything["damaged"][number][] = [];
  for (const [entry, sum] of sums) {
    const bytes = files.get(entry);
    const read =
      bytes === undefined || crc32Text(bytes) !== sum ? err([damage(entry, bytes)]) : readProjectFile(bytes);
    if (!read.ok) damaged.push({ entry, problems: read.error });
    else if (entry === shelfEntry)
      shelf = { leftovers: read.value.project.leftovers, pictures: read.value.pictures };
    else projects.push(read.value);
  }
  return { projects, shelf, damaged };
}

function damage(entry: string, bytes: Uint8Array | undefined): ProjectProblem {
  return { path: "", kind: bytes === undefined ? "entry-missing" : "entry-damaged", entry };
}

function manifestIn(bytes: Uint8Array): Readonly<Record<string, unknown>> | null {
  const text = unpacked(bytes, (name) => name === "manifest.json", largestManifest)?.get("manifest.json");
  if (text === undefined) return null;
  try {
    const manifest: unknown = JSON.parse(new TextDecoder().decode(text));
    return isObject(manifest) ? manifest : null;
  } catch {
    return null;
  }
}

/** What is wanted of a zip and unpacks to no more than `most`; `null`: it is none. */
function unpacked(
  bytes: Uint8Array,
  isWanted: (name: string) => boolean,
  most: number,
): ReadonlyMap<string, Uint8Array> | null {
  let count = 0;
  const filter = ({ name, originalSize }: { readonly name: string; readonly originalSize: number }) =>
    isWanted(name) && originalSize <= most && count++ < mostProjects;
  try {
    return new Map(Object.entries(unzipSync(bytes, { filter })));
  } catch {
    return null;
  }
}

function sumsIn(listed: unknown): ReadonlyMap<string, string> {
  const sums = new Map<string, string>();
  if (!Array.isArray(listed)) return sums;
  for (const entry of listed.slice(0, mostProjects) as readonly unknown[]) {
    if (!isObject(entry)) continue;
    const { name, crc32 } = entry;
    if (typeof name === "string" && typeof crc32 === "string") sums.set(name.slice(0, 100), crc32);
  }
  return sums;
}
