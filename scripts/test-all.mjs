// Everything `npm test` holds, one after the other, and one last line that counts it all.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureInstalled, root } from "./install.mjs";

ensureInstalled();
const script = (name) => import(pathToFileURL(join(root, "scripts", name)).href);
const { browserResultsOf, resultsOf } = await script("test-results.mjs");
const { ensureBrowser, noBrowser } = await script("browser.mjs");

const checks = [
  {
    name: "Types of the engine (no DOM, no Node)",
    program: "typescript/bin/tsc",
    args: ["-p", "src/engine"],
  },
  { name: "Types", program: "typescript/bin/tsc", args: ["-p", "."] },
  {
    name: "Types of the service worker (no page)",
    program: "typescript/bin/tsc",
    args: ["-p", "src/app/serviceWorker"],
  },
  { name: "Import rules", script: "check-imports.mjs" },
  {
    name: "Lint and format",
    program: "@biomejs/biome/bin/biome",
    args: ["check", "--error-on-warnings", "."],
  },
  { name: "Code shape", script: "check-shape.mjs" },
  { name: "The app is built", program: "vite/bin/vite.js", args: ["build", "--logLevel", "warn"] },
  { name: "First load", script: "check-first-load.mjs" },
];

const outcomes = [...checks.map(runCheck), runTests(), await runBrowserTests()];
const passed = outcomes.reduce((total, outcome) => total + outcome.passed, 0);
const failed = outcomes.reduce((total, outcome) => total + outcome.failed, 0);
process.exitCode = failed > 0 ? 1 : 0;
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);

function runCheck({ name, program, script, args = [] }) {
  process.stdout.write(`\n${name}\n`);
  const path = script ? join(root, "scripts", script) : join(root, "node_modules", program);
  const good = runNode([path, ...args]) === 0;
  process.stdout.write(`${name}: ${good ? "good" : "failed"}\n`);
  return good ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

function runTests() {
  process.stdout.write("\nTests\n");
  const folder = mkdtempSync(join(tmpdir(), "verso-test-"));
  const report = join(folder, "vitest.json");
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const status = runNode([vitest, "run", "--config", join(root, "vitest.config.ts"), ...reporters]);
  const results = resultsOf(readReport(report), status);
  rmSync(folder, { recursive: true, force: true });
  return results;
}

/** In the app as it was built above. Without a browser they fail: what was not looked at is not known to be good. */
async function runBrowserTests() {
  process.stdout.write("\nBrowser tests\n");
  const browser = await ensureBrowser();
  if (browser === undefined) {
    process.stderr.write(noBrowser);
    return { passed: 0, failed: 1 };
  }
  const folder = mkdtempSync(join(tmpdir(), "verso-browser-"));
  const report = join(folder, "playwright.json");
  const playwright = join(root, "node_modules", "@playwright", "test", "cli.js");
  const env = { ...process.env, VERSO_BROWSER: browser, PLAYWRIGHT_JSON_OUTPUT_NAME: report };
  const status = runNode([playwright, "test", "--reporter=list,json"], env);
  const results = browserResultsOf(readReport(report), status);
  rmSync(folder, { recursive: true, force: true });
  return results;
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return null;
  }
}

function runNode(args, env = process.env) {
  return spawnSync(process.execPath, args, { cwd: root, stdio: "inherit", env }).status ?? 1;
}
