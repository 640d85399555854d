import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { root } from "./planted.ts";
import { start } from "./processes.ts";

const folder = mkdtempSync(join(tmpdir(), "verso-made-one-"));
const cli = join(folder, "src", "cli");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

mkdirSync(cli, { recursive: true });
for (const name of ["verso.mjs", "madeOne.mjs"])
  copyFileSync(join(root, "src", "cli", name), join(cli, name));
writeFileSync(join(folder, "package.json"), '{ "type": "module" }');

const says = (text: string) =>
  writeFileSync(join(cli, "main.ts"), `console.log(${JSON.stringify(text)} as string);`);
const run = () => start(process.execPath, [join(cli, "verso.mjs")], { cwd: folder }).end;
const good = (text: string) => ({ status: 0, stdout: `${text}\n`, stderr: "" });

it("says what to do where nothing is installed", async () => {
  says("first");
  const { status, stderr } = await run();
  expect({ status, stderr }).toEqual({
    status: 2,
    stderr: "Verso is not installed yet. Run `npm ci` in its folder, then try again.\n",
  });
});

it("is made one by whoever comes first, even where several come at once", async () => {
  symlinkSync(join(root, "node_modules"), join(folder, "node_modules"));
  const runs = await Promise.all(Array.from({ length: 8 }, run));
  expect(runs).toEqual(runs.map(() => good("first")));
  expect(readdirSync(join(folder, "out"))).toHaveLength(1);
});

it("is made anew when a source has changed, and the older one goes", async () => {
  says("second, and longer");
  expect(await run()).toEqual(good("second, and longer"));
  expect(readdirSync(join(folder, "out"))).toHaveLength(1);
});

it("says that the mistake is its own where a source is no program", async () => {
  writeFileSync(join(cli, "main.ts"), "const broken = ;");
  const { status, stderr } = await run();
  expect(status).toBe(1);
  expect(stderr).toMatch(/^Verso could not start, because of a mistake of its own: /);
});
