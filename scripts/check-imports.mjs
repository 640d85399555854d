// Holds the import rules of `.dependency-cruiser.mjs` over the folder it is run in.
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import swc from "@swc/core";
import config from "../.dependency-cruiser.mjs";

// dependency-cruiser 17 gives swc all but the word that a file has JSX in it. It takes the same parser as is imported
// here, so that word is put in before it begins.
const { parseFileSync } = swc;
swc.parseFileSync = (file, options) => parseFileSync(file, { ...options, tsx: file.endsWith(".tsx") });
const { cruise } = await import("dependency-cruiser");

const folders = ["src", "test", "gallery", "bench"].filter((folder) => existsSync(folder));
const { options, ...ruleSet } = config;
const { output } = await cruise(folders, { ...options, ruleSet, validate: true });

const problems = [
  ...output.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} imports ${to}`),
  ...filesNotRead(output.modules.map(({ source }) => source)),
];
for (const problem of problems) process.stderr.write(`${problem}\n`);
process.stdout.write(`Import rules: ${output.modules.length} modules read, ${problems.length} problems.\n`);
process.exitCode = problems.length > 0 ? 1 : 0;

// A parser that reads nothing finds no fault: each source on disk must have been read.
function filesNotRead(read) {
  const sources = folders
    .flatMap((folder) => readdirSync(folder, { recursive: true }).map((file) => join(folder, file)))
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => /\.tsx?$/.test(file) && !/\.d\.ts$/.test(file));
  if (sources.length === 0) return ["no sources found: nothing was checked"];
  return sources.filter((file) => !read.includes(file)).map((file) => `not read: ${file}`);
}
