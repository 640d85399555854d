import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { root } from "./planted.ts";
import { start } from "./processes.ts";

const folder = mkdtempSync(join(tmpdir(), "verso-browser-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** Something that can be run, under this name. */
function program(name: string): string {
  const path = join(folder, name);
  writeFileSync(path, "#!/bin/sh\n");
  chmodSync(path, 0o755);
  return path;
}

/** What is found in a process with these variables, by `findBrowser` or the other. */
async function found(env: Readonly<Record<string, string>>, by = "findBrowser"): Promise<string> {
  const module = JSON.stringify(join(root, "scripts", "browser.mjs"));
  const ask = `import(${module}).then((m) => m.${by}()).then((path) => process.stdout.write(String(path)))`;
  const { stdout } = await start(process.execPath, ["-e", ask], { cwd: root, env }).end;
  return stdout;
}

describe("the browser of the tests", () => {
  it("is her own, before any other", async () => {
    const [own] = [program("own"), program("chromium")];
    expect(await found({ VERSO_BROWSER: own, PATH: folder })).toBe(own);
  });

  it("is the system's, where she named none", async () => {
    expect(await found({ VERSO_BROWSER: "", PATH: folder })).toBe(program("chromium"));
  });

  it("is one without windows, where there is one and she named none", async () => {
    const chromium = program("chromium");
    const other = mkdtempSync(join(folder, "other-"));
    const light = program(join(basename(other), "chromium-headless-shell"));
    const both = { VERSO_BROWSER: "", PATH: `${folder}:${other}` };
    expect(await found(both, "findTestBrowser")).toBe(light);
    expect(await found(both)).toBe(chromium);
    expect(await found({ ...both, PATH: folder }, "findTestBrowser")).toBe(chromium);
    expect(await found({ ...both, VERSO_BROWSER: chromium }, "findTestBrowser")).toBe(chromium);
  });

  it("is no other than hers, where hers isn't there", async () => {
    program("chromium");
    expect(await found({ VERSO_BROWSER: join(folder, "none"), PATH: folder })).toBe("undefined");
  });
});

it("browser tests without a browser fail, and say what is missing", async () => {
  const playwright = join(root, "node_modules", "@playwright", "test", "cli.js");
  const env = { VERSO_BROWSER: join(folder, "none") };
  const run = await start(process.execPath, [playwright, "test", "--list"], { cwd: root, env }).end;
  expect(run.status).not.toBe(0);
  expect(run.stdout + run.stderr).toContain("There is no browser to run the browser tests in.");
});
