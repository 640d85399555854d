import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));
// Inside node_modules, so that it goes when they go.
const marker = join(root, "node_modules", ".verso-installed");

/** Installs what package-lock.json names, unless exactly that is installed already. Exits when it can't. */
export function ensureInstalled() {
  const wanted = fingerprint();
  if (existsSync(marker) && readFileSync(marker, "utf8") === wanted) return;
  process.stderr.write("Installing what Verso needs (npm ci)…\n");
  if (runNpm(["ci", "--include=dev", "--no-audit", "--no-fund"]) !== 0) {
    process.stderr.write("The installation did not finish. What npm said stands above.\n");
    process.exit(1);
  }
  writeFileSync(marker, wanted);
}

/** Changes with what is to be installed, and with the machine, since some packages carry programs made for one. */
export function fingerprint() {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  return createHash("sha256")
    .update(JSON.stringify({ dependencies, devDependencies }))
    .update(readFileSync(join(root, "package-lock.json")))
    .update(`${process.platform} ${process.arch} ${process.versions.modules}`)
    .digest("hex");
}

function runNpm(args) {
  // npm names its own program to the scripts it runs; without it the one on the path serves.
  const own = process.env.npm_execpath;
  const [command, start] = own?.endsWith(".js") ? [process.execPath, [own]] : ["npm", []];
  const shell = command === "npm" && process.platform === "win32";
  // npm's own words go to stderr: what is planned or tested has stdout to itself.
  return spawnSync(command, [...start, ...args], { cwd: root, stdio: ["ignore", 2, 2], shell }).status;
}
