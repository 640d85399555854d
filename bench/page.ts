// What the Plan page feels like while the solver works on a large heap: npm run bench:page
import { spawnSync } from "node:child_process";
import { chromium, type Page } from "@playwright/test";
import { findBrowser, noBrowser } from "../scripts/browser.mjs";
import { built, ensureBuilt } from "../scripts/build.mjs";
import { serveOnFreePort } from "../scripts/serve.mjs";
import { denseHeaps, denseTable } from "./heaps.ts";
import { say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type PageRow = {
  readonly heap: string;
  /** Tasks of the page's own thread over 50 ms while it searched, and the longest, in milliseconds. */
  readonly longTasks: number;
  readonly longest: number;
  /** From a press until what it does is on the screen, each. */
  readonly presses: readonly number[];
  /** From "Stop here" until the best so far is said to be it. */
  readonly stopped: number;
  /** Memory of the browser's page and its workers, before the search and at its most, bytes. */
  readonly idleBytes: number;
  readonly mostBytes: number;
};

declare global {
  interface Window {
    tasks: number[];
    presses: number[];
  }
}

const heaps = ["n150_r1_s1", "n300_r1_s1", "n1000_r1_s1"];
const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(noBrowser);
if (!ensureBuilt()) throw new Error("the app can't be built");
const { server, address } = await serveOnFreePort({ folder: built, port: 4790 });
const args = process.getuid?.() === 0 ? ["--no-sandbox", "--disable-gpu"] : ["--disable-gpu"];
const rows: PageRow[] = [];
for (const heap of heaps) rows.push(await measured(heap));
server.close();
writeRaw({ name: "page", bench: "page", command: "npm run bench:page", options: {} }, rows, null);

async function measured(heap: string): Promise<PageRow> {
  const started = await chromium.launchServer({ executablePath: executablePath ?? "", args });
  const browser = await chromium.connect(started.wsEndpoint());
  const memory = () => memoryUnder(started.process().pid ?? 0);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await entered(page, heap);
  const idleBytes = memory();
  let mostBytes = 0;
  const weighing = setInterval(() => {
    mostBytes = Math.max(mostBytes, memory());
  }, 250);
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await page.getByText("This is the best that was found.").waitFor({ timeout: 120_000 });
  await watch(page);
  await page.getByRole("button", { name: "Look longer" }).click();
  for (let press = 0; press < 8; press += 1) {
    await page.waitForTimeout(500);
    await page
      .getByRole("radio")
      .nth(press % 3)
      .focus();
    await page.keyboard.press("ArrowRight");
  }
  const again = page.getByRole("button", { name: "Look longer" });
  if (await again.isVisible()) await again.click();
  await page.waitForTimeout(1000);
  // Until there is a first plan there is nothing to stop for, and the button can't be pressed.
  await page.locator("button:enabled", { hasText: "Stop here" }).waitFor({ timeout: 60_000 });
  const stopped = await stop(page);
  if (stopped < 0) say(`${heap}: it was not said within 5 s that the search has stopped`);
  const { tasks, presses } = await page.evaluate(() => ({ tasks: window.tasks, presses: window.presses }));
  clearInterval(weighing);
  await started.close();
  const row = {
    heap,
    longTasks: tasks.length,
    longest: Math.max(0, ...tasks),
    presses,
    stopped,
    idleBytes,
    mostBytes,
  };
  say(
    `${heap}: ${row.longTasks} long tasks, ${row.longest} ms at most; presses ${presses.join(", ")} ms; stopped after ${stopped.toFixed(0)} ms; ${((mostBytes - idleBytes) / 2 ** 20).toFixed(0)} MB more`,
  );
  return row;
}

async function entered(page: Page, heap: string): Promise<void> {
  const { back = "" } = denseHeaps([1]).find(({ name }) => name === heap) ?? {};
  const [width = "", height = ""] = back.split("x");
  await page.goto(address);
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByRole("textbox", { name: "Width, middle" }).fill(width);
  await page.getByRole("textbox", { name: "Height, middle" }).fill(height);
  await page.getByRole("link", { name: "Leftovers", exact: true }).click();
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name: "left.csv", mimeType: "text/csv", buffer: Buffer.from(denseTable(heap, "cut")) });
  await page.waitForTimeout(3000);
}

async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.tasks = [];
    window.presses = [];
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.tasks.push(Math.round(duration));
    }).observe({ type: "longtask" });
    new PerformanceObserver((list) => {
      for (const { duration, name } of list.getEntries())
        if (name === "keydown") window.presses.push(duration);
    }).observe({ type: "event", durationThreshold: 16 } as PerformanceObserverInit);
  });
}

function stop(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const button = [...document.querySelectorAll("button")].find((one) => one.textContent === "Stop here");
    const begin = performance.now();
    button?.click();
    while (!document.body.textContent?.includes("Stopped. This is the best so far.")) {
      if (performance.now() - begin > 5000) return -1;
      await new Promise((next) => requestAnimationFrame(next));
    }
    return performance.now() - begin;
  });
}

/** What this browser's processes for pages and workers hold, all together. */
function memoryUnder(browser: number): number {
  const { stdout } = spawnSync("ps", ["-eo", "pid=,ppid=,rss=,args="], { encoding: "utf8" });
  const processes = stdout.split("\n").flatMap((line) => {
    const [pid = 0, parent = 0, kilobytes = 0] = line.trim().split(/\s+/, 3).map(Number);
    return line.includes("--type=") || pid === browser
      ? [{ pid, parent, kilobytes, isPage: line.includes("--type=renderer") }]
      : [];
  });
  const own = new Set([browser]);
  for (const _ of [1, 2, 3]) for (const { pid, parent } of processes) if (own.has(parent)) own.add(pid);
  return processes
    .filter(({ pid, isPage }) => isPage && own.has(pid))
    .reduce((sum, { kilobytes }) => sum + kilobytes * 1024, 0);
}
