import { spawn } from "node:child_process";
import { parseArgs } from "node:util";
import { built, ensureBuilt } from "./build.mjs";
import { ensureInstalled } from "./install.mjs";
import { serveOnFreePort, usualPort } from "./serve.mjs";

const { values } = parseArgs({ options: { port: { type: "string" }, quiet: { type: "boolean" } } });

ensureInstalled();
if (ensureBuilt()) {
  const { address } = await serveOnFreePort({ folder: built, port: Number(values.port ?? usualPort) });
  process.stdout.write(
    `Verso is at ${address}\nIt runs until you press Ctrl-C. Your projects stay in the browser.\n`,
  );
  if (!values.quiet && hasDesktop()) open(address);
} else {
  process.stderr.write("The app could not be built. What went wrong stands above.\n");
  process.exitCode = 1;
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
