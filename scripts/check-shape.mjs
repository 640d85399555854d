// Holds the shape of the code that the linter can't measure. The hard limits (80 lines a function, 500 a file,
// 4 parameters, no `any`, no `!`) are the linter's, in biome.json.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseSync } from "@swc/core";

// As in the code bases we learn from: most functions fit in a glance.
const medianLines = 8;
const ninetiethLines = 25;

const isTest = (file) => /\.(test|typetest|browser)\.tsx?$/.test(file);

/** Patterns that are kept out, where, and why. Matched in code, not in comments. */
const keptOut = [
  {
    pattern:
      /\b(describe|it|test|suite)\s*\.\s*(skip|only|todo|skipIf|runIf|fails)\b|\b[xf](describe|it|test)\s*\(/,
    why: "a test that is skipped, alone or meant to fail",
    where: isTest,
  },
  {
    pattern: /\bimport\s*\(/,
    why: "an import inside the code, which the import rules can't see",
    where: (file) => /^src\/(engine|files|words|german)\//.test(file),
  },
  {
    pattern: /\bMath\s*\.\s*random\b/,
    why: "unseeded chance: same job, seed and effort give the same plan",
    where: (file) => /^src\/(engine|files|words)\//.test(file) && !isTest(file),
  },
  {
    pattern: /\bMath\s*\.\s*(exp|expm1|log\w*|pow|cbrt|a?(sin|cos|tan)h?|atan2)\b/,
    why: "browsers and Node round it differently in the last place: the same job would give two plans",
    // Neither a drawing nor a proof decides what comes into a plan.
    where: (file) => /^src\/engine\/(?!drawing\/|layout\/checker)/.test(file) && !isTest(file),
  },
  {
    pattern: /\bas\s+(Length|Cut|Finished|Area)\b/,
    why: "a unit is made by length/ alone",
    where: (file) => file.startsWith("src/") && !file.startsWith("src/engine/length/"),
  },
  {
    pattern:
      /^(import|export)\s+(?!type\b).*["'](\.\.\/)+(files|photo)\/|^\} from ["'](\.\.\/)+(files|photo)\//,
    why: "words take types from files and photo, nothing else",
    where: (file) => /^src\/(words|german)\//.test(file) && !isTest(file),
  },
  {
    pattern: /\bas\s+(any|unknown|never)\b/,
    why: "a cast that hides a type",
    where: (file) => file.startsWith("src/") && !isTest(file),
  },
];
const keptOutComments = [
  { pattern: /@ts-(ignore|nocheck)\b/, why: "a type error that is hidden", where: () => true },
  {
    pattern: /@ts-expect-error\b/,
    why: "a type error that is hidden (type tests stand in *.typetest.ts)",
    where: (file) => !file.endsWith(".typetest.ts"),
  },
  {
    pattern: /biome-ignore\b(?!.*:\s*\S)/,
    why: "a lint exception without its reason",
    where: () => true,
  },
];

const files = ["src", "test", "gallery", "bench"].flatMap(sourcesIn);
const problems = files.flatMap(problemsIn);
const lines = files
  .filter((file) => file.startsWith("src/engine/") && !isTest(file))
  .flatMap(functionLengths)
  .sort((a, b) => a - b);
const [median, ninetieth] = [atShare(lines, 0.5), atShare(lines, 0.9)];
if (median > medianLines) problems.push(`src/engine: half of the functions are over ${medianLines} lines`);
if (ninetieth > ninetiethLines)
  problems.push(`src/engine: one function in ten is over ${ninetiethLines} lines`);
if (files.length === 0) problems.push("no sources found: nothing was checked");

for (const problem of problems) process.stderr.write(`${problem}\n`);
process.stdout.write(
  `Code shape: ${files.length} files; ${lines.length} functions in src/engine, ` +
    `median ${median} lines, 90 % ≤ ${ninetieth}; ${problems.length} problems.\n`,
);
process.exitCode = problems.length > 0 ? 1 : 0;

function sourcesIn(folder) {
  let names = [];
  try {
    names = readdirSync(folder, { recursive: true });
  } catch {
    // A folder that isn't there has no sources.
  }
  return names.map((name) => join(folder, name).replaceAll("\\", "/")).filter((name) => /\.tsx?$/.test(name));
}

function problemsIn(file) {
  const text = readFileSync(file, "utf8");
  const code = withoutComments(text);
  return [
    ...keptOut.flatMap((rule) => found(rule, file, code)),
    ...keptOutComments.flatMap((rule) => found(rule, file, text)),
  ];
}

function found({ pattern, why, where }, file, text) {
  if (!where(file)) return [];
  return text.split("\n").flatMap((line, at) => (pattern.test(line) ? [`${file}:${at + 1}: ${why}`] : []));
}

/** Comments become blanks of the same lines; strings and templates stay. */
function withoutComments(text) {
  const token = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`/g;
  return text.replace(token, (found) => (found.startsWith("/") ? found.replace(/[^\n]/g, " ") : found));
}

/** Code lines (no blanks, no comments) of every function in the file, those inside others counted with both. */
function functionLengths(file) {
  // The parser counts bytes from where it left off; the semicolon in front says where this file begins.
  const bytes = Buffer.from(`;${readFileSync(file, "utf8")}`);
  const module = parseSync(bytes.toString(), { syntax: "typescript", target: "es2022" });
  const begin = module.body[0].span.start;
  return functionsIn(module).map(({ span }) => {
    const text = bytes.subarray(span.start - begin, span.end - begin).toString();
    return withoutComments(text)
      .split("\n")
      .filter((line) => line.trim() !== "").length;
  });
}

function functionsIn(node) {
  if (node === null || typeof node !== "object") return [];
  const inner = (Array.isArray(node) ? node : Object.values(node)).flatMap(functionsIn);
  const isFunction =
    ["FunctionDeclaration", "FunctionExpression", "ClassMethod", "MethodProperty"].includes(node.type) ||
    // An arrow that is one expression is a phrase, not a function to be read.
    (node.type === "ArrowFunctionExpression" && node.body.type === "BlockStatement");
  return isFunction ? [node, ...inner] : inner;
}

function atShare(sorted, share) {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}
