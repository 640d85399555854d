import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { built, ensureBuilt } from "./build.mjs";
import { ensureInstalled } from "./install.mjs";
import { serveOnFreePort, usualPort } from "./serve.mjs";

const { values } = parseArgs({ options: { port: { type: "string" }, quiet: { type: "boolean" } } });

ensureInstalled();
if (ensureBuilt()) {
  await start(Number(values.port ?? usualPort));
} else {
  process.stderr.write("The app could not be built. What went wrong stands above.\n");
  process.exitCode = 1;
}

async function start(port) {
  const running = `http://127.0.0.1:${port}/`;
  if (await isVerso(running)) {
    process.stdout.write(`Verso is running already, at ${running}\n`);
    show(running);
    return;
  }
  const { address } = await serveOnFreePort({ folder: built, port });
  process.stdout.write(
    `Verso is at ${address}\nIt runs until you press Ctrl-C. Your projects stay in the browser.\n`,
  );
  if (address !== running)
    process.stdout.write(
      `Another program uses port ${port}. Projects belong to the address they were made under, ` +
        `so those made at ${running} are not shown here.\n`,
    );
  show(address);
}

/** Whether what answers there is Verso, served from this very folder. */
async function isVerso(address) {
  try {
    const answer = await fetch(new URL("sw.js", address), { signal: AbortSignal.timeout(2000) });
    return answer.ok && (await answer.text()) === readFileSync(join(built, "sw.js"), "utf8");
  } catch {
    return false;
  }
}

function show(address) {
  if (!values.quiet && hasDesktop()) open(address);
}

function hasDesktop() {
  if (process.env.CI) return false;
  if (process.platform === "darwin" || process.platform === "win32") return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

// Where it can't be opened, the address above is enough.
function open(address) {
  const [program, ...before] = { darwin: ["open"], win32: ["cmd", "/c", "start", ""] }[process.platform] ?? [
    "xdg-open",
  ];
  const opening = spawn(program, [...before, address], { stdio: "ignore", detached: true });
  opening.on("error", () => {});
  opening.unref();
}
