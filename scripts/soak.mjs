// What takes too long for every `npm test`: the same tests, many more times.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { ensureBrowser, noBrowser } from "./browser.mjs";
import { root } from "./install.mjs";

const browser = await ensureBrowser();
if (browser === undefined) process.stderr.write(noBrowser);
const env = { ...process.env, VERSO_BROWSER: browser ?? "", VERSO_KILLS: "200", VERSO_RUNS: "20" };

const runs = [
  ["vitest/vitest.mjs", "run", "src/store", "src/files/project.test.ts"],
  ["@playwright/test/cli.js", "test", "store.browser"],
];
const failed = runs.filter(([program, ...args]) => run(program, args) !== 0);
process.exitCode = browser === undefined || failed.length > 0 ? 1 : 0;

function run(program, args) {
  const options = { cwd: root, stdio: "inherit", env };
  return spawnSync(process.execPath, [join(root, "node_modules", program), ...args], options).status;
}
