import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../..", import.meta.url));

/** Runs one of the house's checks over a folder that holds just these files, then takes the folder away. */
export function checkPlanted(script: string, files: Readonly<Record<string, string>>) {
  const folder = mkdtempSync(join(tmpdir(), "verso-planted-"));
  try {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    const run = spawnSync(process.execPath, [join(root, "scripts", script)], {
      cwd: folder,
      encoding: "utf8",
    });
    return { status: run.status, problems: run.stderr.split("\n").filter((line) => line !== "") };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
