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

/** Chromium without windows: it starts and draws the same pages for a fraction of the work. */
const withoutWindows = "chromium-headless-shell";

/** The path of a browser; `undefined` where there is none. `VERSO_BROWSER` goes before everything else. */
export async function findBrowser() {
  const own = process.env.VERSO_BROWSER ?? "";
  if (isNamed()) return canRun(own) ? own : undefined;
  return onPath(names) ?? places.find(canRun) ?? (await ofPlaywright());
}

/** The one that the tests run in: hers, or one without windows where there is one. */
export async function findTestBrowser() {
  return (isNamed() ? undefined : onPath([withoutWindows])) ?? (await findBrowser());
}

/** The same, and where this is a machine without anyone at it, a browser is installed if there is none. */
export async function ensureBrowser() {
  const found = await findTestBrowser();
  if (isNamed() || !mayInstall() || found?.endsWith(withoutWindows)) return found;
  // Where there is a browser already, the tests need not wait for a network.
  if (found === undefined) apt("update", "-qq");
  for (const name of found === undefined ? [withoutWindows, "chromium"] : [withoutWindows]) {
    process.stderr.write(`Installing a browser for the tests (${name})…\n`);
    if (apt("install", "-y", "-qq", "--no-install-recommends", name)) break;
  }
  return findTestBrowser();
}

function apt(...args) {
  const quickly = ["-o", "Acquire::Retries=0", "-o", "Acquire::http::Timeout=20"];
  const options = { stdio: ["ignore", 2, 2], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  return spawnSync("apt-get", [...quickly, ...args], options).status === 0;
}

export const noBrowser =
  "There is no browser to run the browser tests in. Install Chromium or Chrome, " +
  "or name one: VERSO_BROWSER=/path/to/chrome npm test\n";

function isNamed() {
  return (process.env.VERSO_BROWSER ?? "") !== "";
}

function onPath(names) {
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(canRun);
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
