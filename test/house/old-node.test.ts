import { join } from "node:path";
import { expect, it } from "vitest";
import { root } from "./planted.ts";
import { start } from "./processes.ts";

const pretend = (version: string) =>
  `data:text/javascript,Object.defineProperty(process.versions,'node',{value:'${version}'})`;

it.each([
  ["scripts/start.mjs", "18.20.4"],
  ["scripts/test.mjs", "20.18.3"],
  ["src/cli/verso.mjs", "20.18.3"],
])("%s tells a Node that is too old so, and does nothing else", async (script, version) => {
  const args = ["--import", pretend(version), join(root, script)];
  const { status, stdout, stderr } = await start(process.execPath, args, { cwd: root }).end;
  const line = `Verso needs Node 20.19 or newer; this is Node ${version}. Install a newer Node, then try again.\n`;
  expect({ status, stdout, stderr }).toEqual({ status: 2, stdout: "", stderr: line });
});
