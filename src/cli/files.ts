import {
  accessSync,
  constants,
  createReadStream,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join, parse, resolve } from "node:path";
import type { Readable } from "node:stream";
import { err, ok, type Result } from "../engine/length/index.ts";
import type { CommandProblem } from "../words/index.ts";
import { standardStream } from "./commands.ts";

/** A document that is ready, and the file it goes to. */
export type Output = { readonly file: string; readonly content: string | Uint8Array };

// A table of 5,000 rows is a few hundred kilobytes; what is much larger is no table and no plan.
const mostBytes = 64 * 2 ** 20;

/** Reads a file, or standard input for `-`. `folder`: where the user stands. */
export async function readInput(file: string, folder: string): Promise<Result<Uint8Array, CommandProblem>> {
  try {
    const path = resolve(folder, file);
    if (file !== standardStream && kindOfPath(path) === "folder") return err({ kind: "is-a-folder", file });
    const bytes = await readAll(file === standardStream ? process.stdin : createReadStream(path));
    return bytes === null ? err({ kind: "too-large-to-read", file }) : ok(bytes);
  } catch (error) {
    const code = codeOf(error);
    return err(code === "ENOENT" ? { kind: "no-such-file", file } : { kind: "not-readable", file, code });
  }
}

async function readAll(stream: Readable): Promise<Uint8Array | null> {
  const chunks: Uint8Array[] = [];
  let total = 0;
  for await (const chunk of stream) {
    total += chunk.length;
    if (total > mostBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

/** What would keep these files from being written, found before any work is done. */
export function outputProblems(files: readonly string[], input: string, folder: string): CommandProblem[] {
  return files
    .filter((file) => file !== standardStream)
    .map((file) => outputProblem(file, input, folder))
    .filter((problem) => problem !== null);
}

function outputProblem(file: string, input: string, folder: string): CommandProblem | null {
  const path = resolve(folder, file);
  const kind = kindOfPath(path);
  if (kind === "folder") return { kind: "is-a-folder", file };
  if (kindOfPath(dirname(path)) !== "folder") return { kind: "no-such-folder", file, folder: dirname(path) };
  const isInput =
    input !== standardStream && kind !== null && realpathSync(path) === realPath(resolve(folder, input));
  if (isInput) return { kind: "would-overwrite-leftovers", file };
  return isWritable(kind === "other" ? path : dirname(path))
    ? null
    : { kind: "not-writable", file, code: "EACCES" };
}

function realPath(path: string): string | null {
  return kindOfPath(path) === null ? null : realpathSync(path);
}

function kindOfPath(path: string): "file" | "folder" | "other" | null {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return null;
  if (found.isDirectory()) return "folder";
  return found.isFile() ? "file" : "other";
}

function isWritable(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Writes all files or none: each is written beside its place first, and takes it once all of them are there.
 * A device or a pipe is written to as it is.
 */
export function writeOutputs(outputs: readonly Output[], folder: string): readonly CommandProblem[] {
  const places = outputs.map(({ file, content }) => ({ file, content, ...placeOf(resolve(folder, file)) }));
  const begun: string[] = [];
  let at = "";
  try {
    for (const { file, content, beside } of places) {
      at = file;
      if (beside === null) continue;
      begun.push(beside);
      writeFileSync(beside, content, { flush: true });
    }
    for (const { file, content, path, beside } of places) {
      at = file;
      if (beside === null) writeFileSync(path, content);
      else renameSync(beside, path);
    }
    return [];
  } catch (error) {
    for (const path of begun) rmSync(path, { force: true });
    return [{ kind: "not-writable", file: at, code: codeOf(error) }];
  }
}

function placeOf(path: string): { readonly path: string; readonly beside: string | null } {
  const kind = kindOfPath(path);
  if (kind === "other") return { path, beside: null };
  // Behind a link stands the file that is meant.
  const real = kind === null ? path : realpathSync(path);
  const { dir, base } = parse(real);
  return { path: real, beside: join(dir, `.${base.slice(0, 100)}.${process.pid}.part`) };
}

/** `back.svg` becomes `back-1.svg` … where there are several; one keeps its name. */
export function numberedFiles(file: string, count: number): string[] {
  if (count === 1 || file === standardStream) return [file];
  const { dir, name, ext } = parse(file);
  return Array.from({ length: count }, (_, index) => join(dir, `${name}-${index + 1}${ext}`));
}

export function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "unknown";
}
