// The command line made one from its sources: read one by one, they take three times as long to start.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const out = join(root, "out");

/** The address of the command line, made anew when a source has changed. */
export async function madeOne() {
  const name = `cli-${stamp()}`;
  const folder = join(out, name);
  if (!existsSync(folder)) await make(folder);
  return pathToFileURL(join(folder, "main.js")).href;
}

async function make(folder) {
  const { build } = await import("esbuild");
  mkdirSync(out, { recursive: true });
  const older = readdirSync(out).filter((name) => /^cli-[0-9a-f]+$/.test(name) && join(out, name) !== folder);
  // In a folder of its own first: another process may be making the same, and none may find the half of it.
  const own = `${folder}-${process.pid}`;
  await build({
    absWorkingDir: root,
    entryPoints: [join(root, "src", "cli", "main.ts")],
    outdir: own,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    // A tsconfig.json above this folder has no say here.
    tsconfigRaw: {},
    logLevel: "silent",
  });
  try {
    renameSync(own, folder);
  } catch (error) {
    rmSync(own, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  for (const name of older) rmSync(join(out, name), { recursive: true, force: true });
}

/** Changes with any source. By when it was written, since reading them all would take as long as what is saved. */
function stamp() {
  const hash = createHash("sha256");
  for (const path of [join(root, "package-lock.json"), ...sources()]) {
    const { mtimeMs, size } = statSync(path, { throwIfNoEntry: false }) ?? {};
    hash.update(`${path} ${mtimeMs} ${size}\n`);
  }
  return hash.digest("hex").slice(0, 16);
}

function sources() {
  return readdirSync(join(root, "src"), { recursive: true, withFileTypes: true })
    .filter(
      (entry) => entry.isFile() && /\.ts$/.test(entry.name) && !/\.(test|typetest)\.ts$/.test(entry.name),
    )
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}
