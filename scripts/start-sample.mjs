import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join, relative } from "node:path";
import { ensureInstalled, root } from "./install.mjs";

ensureInstalled();

const heap = join("samples", "garden-room.csv");
const picture = join("out", "garden-room.svg");
mkdirSync(join(root, "out"), { recursive: true });
process.stdout.write(`Planning a back for a 60 × 80 in top from ${heap}, for a quilting frame…\n\n`);

const { status } = spawnSync(
  process.execPath,
  [join("src", "cli", "verso.mjs"), "plan", heap, "--top", "60x80", "--method", "frame", "--svg", picture],
  { cwd: root, stdio: "inherit" },
);
if (status === 0)
  process.stdout.write(`\nOpen ${relative(process.cwd(), join(root, picture))} in a browser to see it.\n`);
process.exitCode = status ?? 1;
