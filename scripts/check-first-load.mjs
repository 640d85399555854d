// What must be fetched before the start page can be drawn, packed as servers pack it.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

// Never over 200 kB. The second number is a ratchet: lower it when the app has become lighter, and think twice
// before raising it.
const most = { allowed: 200_000, now: 185_000 };
// The browser keeps every file of the app for use without a network, on a tablet with little room too.
const mostOfOne = 2 * 1024 * 1024;

const folder = "dist";
const manifestPath = join(folder, ".vite", "manifest.json");
const problems = existsSync(manifestPath)
  ? checkBuild(JSON.parse(readFileSync(manifestPath, "utf8")))
  : ["the app is not built"];

for (const problem of problems) process.stderr.write(`${problem}\n`);
process.exitCode = problems.length > 0 ? 1 : 0;

function checkBuild(manifest) {
  const entry = manifest["index.html"];
  if (entry === undefined) return ["the app has no first file"];
  const chunks = withImports(manifest, "index.html");
  const files = [...chunks].map((name) => manifest[name].file);
  const scripts = files.filter((file) => file.endsWith(".js"));
  const packed = scripts.reduce((sum, file) => sum + gzipSync(readFileSync(join(folder, file))).length, 0);
  const limit = Math.min(most.allowed, most.now);
  process.stdout.write(
    `First load: ${kilobytes(packed)} of script, packed, in ${scripts.length} files; ${kilobytes(limit)} allowed.\n`,
  );
  return [
    ...(packed > limit ? [`the first load is over ${kilobytes(limit)} of script`] : []),
    ...pagesInFirstLoad(manifest),
    ...tooLarge(manifest),
  ];
}

/** The chunk and all it imports before it can run. */
function withImports(manifest, name, seen = new Set()) {
  if (seen.has(name)) return seen;
  seen.add(name);
  for (const other of manifest[name].imports ?? []) withImports(manifest, other, seen);
  return seen;
}

// Each page is a chunk of its own, fetched when it is opened.
function pagesInFirstLoad(manifest) {
  const first = withImports(manifest, "index.html");
  return Object.keys(manifest)
    .filter((name) => name.startsWith("src/app/screens/") && first.has(name))
    .map((name) => `${name} is fetched before anyone asks for it`);
}

function tooLarge(manifest) {
  return Object.values(manifest)
    .filter(({ file }) => readFileSync(join(folder, file)).length > mostOfOne)
    .map(({ file }) => `${file} is too large to be kept on the device`);
}

function kilobytes(bytes) {
  return `${(bytes / 1000).toFixed(1)} kB`;
}
