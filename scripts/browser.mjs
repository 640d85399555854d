// The browser that the browser tests run in: her own, the system's, or the one Playwright brings.
import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome"];
const places = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

/** The path of a browser; `undefined` where there is none. `VERSO_BROWSER` goes before everything else. */
export async function findBrowser() {
  const own = process.env.VERSO_BROWSER;
  if (own !== undefined && own !== "") return canRun(own) ? own : undefined;
  return findInSystem() ?? (await ofPlaywright());
}

/** The same, and where this is a machine without anyone at it, a browser is installed if there is none. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found !== undefined || !mayInstall()) return found;
  process.stderr.write("Installing a browser for the tests (chromium)…\n");
  const options = { stdio: ["ignore", 2, 2], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  spawnSync("apt-get", ["update", "-qq"], options);
  spawnSync("apt-get", ["install", "-y", "--no-install-recommends", "chromium"], options);
  return findBrowser();
}

export const noBrowser =
  "There is no browser to run the browser tests in. Install Chromium or Chrome, " +
  "or name one: VERSO_BROWSER=/path/to/chrome npm test\n";

function findInSystem() {
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return [...names.flatMap((name) => folders.map((folder) => join(folder, name))), ...places].find(canRun);
}

async function ofPlaywright() {
  const { chromium } = await import("@playwright/test");
  const path = chromium.executablePath();
  return canRun(path) ? path : undefined;
}

// On someone's own machine nothing is installed beside node_modules.
function mayInstall() {
  const unattended = Boolean(process.env.CI) || existsSync("/.dockerenv") || existsSync("/run/.containerenv");
  return unattended && process.platform === "linux" && process.getuid?.() === 0;
}

function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
