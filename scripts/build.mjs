import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fingerprint, root } from "./install.mjs";

export const built = join(root, "dist");
// Its name begins with a point, so that it is not served.
const marker = join(built, ".made-from");

/** Builds the app, unless it was built from exactly these sources already. Gives whether it is there. */
export function ensureBuilt() {
  const wanted = sources();
  if (existsSync(marker) && readFileSync(marker, "utf8") === wanted) return true;
  process.stderr.write("Building the app…\n");
  const vite = join(root, "node_modules", "vite", "bin", "vite.js");
  const { status } = spawnSync(process.execPath, [vite, "build", "--logLevel", "warn"], {
    cwd: root,
    stdio: ["ignore", 2, 2],
  });
  if (status !== 0) return false;
  writeFileSync(marker, wanted);
  return true;
}

function sources() {
  const hash = createHash("sha256").update(fingerprint());
  for (const name of ["index.html", "vite.config.ts", ...filesOf("src")])
    hash.update(name).update(readFileSync(join(root, name)));
  return hash.digest("hex");
}

function filesOf(folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(test|typetest)\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length))
    .sort();
}
