// How quick the app is, its processor slowed to a quarter: npm run bench:app
// With `-- --once` everything is done once and shown, and nothing is kept.
import { spawnSync } from "node:child_process";
import { createServer, type Server } from "node:http";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import { type Browser, type BrowserContext, type CDPSession, chromium, type Page } from "@playwright/test";
import { findBrowser, noBrowser } from "../scripts/browser.mjs";
import { built, ensureBuilt } from "../scripts/build.mjs";
import { serveOnFreePort } from "../scripts/serve.mjs";
import { largeBack } from "./largeBack.ts";
import { say } from "./options.ts";
import { writeRaw } from "./raw.ts";

/** One figure; `values`: every one that was taken, `most` what it is held to. */
export type AppRow = {
  readonly name: AppFigure;
  readonly values: readonly number[];
  readonly share: number;
  readonly most: number;
};

export const appFigures = [
  "first-script",
  "cold-start",
  "warm-start",
  "shift",
  "open",
  "interaction",
  "interaction-solving",
  "drag",
  "heap",
] as const;
export type AppFigure = (typeof appFigures)[number];

declare global {
  interface Window {
    /** When what was waited for was drawn, in milliseconds since the page was asked for; 0: not yet. */
    drawnAt: number;
    shifts: number[];
    pressed: Map<number, number>;
    dragFrames: number[];
  }
}

/** 1.6 Mbit/s and 150 ms there and back, as a slow telephone network is usually taken. */
const slowNetwork = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 94_000 };
const slowness = 4;
const { once } = parseArgs({ options: { once: { type: "boolean", default: false } } }).values;
const starts = once ? 1 : 3;
const tablet = { width: 820, height: 1180 };

const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(noBrowser);
if (!ensureBuilt()) throw new Error("the app can't be built");
const { server, address } = await serveOnFreePort({ folder: built, port: 4820 });
const packing = await packed(address);
const args = ["--disable-gpu", ...(process.getuid?.() === 0 ? ["--no-sandbox"] : [])];
const browser = await chromium.launch({ executablePath, args });
const rows = await measuredIn(browser, packing.address);
await browser.close();
for (const one of [server, packing.server]) one.close();
if (!once) writeRaw({ name: "app", bench: "app", command: "npm run bench:app", options: {} }, rows, null);

async function measuredIn(chrome: Browser, place: string): Promise<AppRow[]> {
  const cold = [];
  for (let start = 0; start < starts; start += 1) cold.push(await coldStart(chrome, place));
  told(
    "cold-start",
    cold.map(({ ready }) => ready),
  );
  const context = await chrome.newContext({ viewport: tablet });
  const page = await context.newPage();
  // Taking in so large a file may keep a slow page busy for longer than is usually waited for.
  page.setDefaultTimeout(120_000);
  await watchFrom(page);
  const session = await slowed(context, page);
  const warm = told("warm-start", await warmStarts(context, page, place));
  const opened = told("open", await openings(page, place));
  const idle = told("interaction", await pressedThrough(page, pressLeftovers));
  const solving = told("interaction-solving", await pressedThrough(page, pressPlan));
  const drag = told("drag", await dragged(page));
  const heap = await heapOf(session);
  const shifts = [...cold.map(({ shift }) => shift), await shiftOf(page)];
  await context.close();
  return [
    row("first-script", [firstScript()], 200_000),
    row(
      "cold-start",
      cold.map(({ ready }) => ready),
      2500,
    ),
    row("warm-start", warm, 1000),
    row("shift", shifts, 0.05),
    row("open", opened, 2000),
    row("interaction", idle, 100, 0.98),
    row("interaction-solving", solving, 100, 0.98),
    row("drag", drag, 33, 0.95),
    row("heap", [heap], 400 * 2 ** 20),
  ];
}

function told(name: AppFigure, values: readonly number[]): readonly number[] {
  say(`${name}: ${values.map((value) => value.toFixed(0)).join(", ")}`);
  return values;
}

function row(name: AppFigure, values: readonly number[], most: number, share = 1): AppRow {
  return { name, values: values.map((value) => Math.round(value * 1000) / 1000), share, most };
}

/** The same files, packed on their way, as any server of pages packs them. */
function packed(from: string): Promise<{ readonly server: Server; readonly address: string }> {
  const known = new Map<string, { readonly headers: Record<string, string>; readonly body: Buffer }>();
  const fetched = async (path: string) => {
    const answer = await fetch(new URL(path, from));
    const headers = Object.fromEntries(answer.headers);
    const body = gzipSync(Buffer.from(await answer.arrayBuffer()));
    return {
      headers: { ...headers, "content-encoding": "gzip", "content-length": String(body.length) },
      body,
    };
  };
  const proxy = createServer(async ({ url = "/" }, response) => {
    const answer = known.get(url) ?? (await fetched(url));
    known.set(url, answer);
    response.writeHead(200, answer.headers).end(answer.body);
  });
  return new Promise((done) => {
    proxy.listen(0, "127.0.0.1", () => {
      const place = proxy.address();
      const port = typeof place === "object" && place !== null ? place.port : 0;
      done({ server: proxy, address: `http://127.0.0.1:${port}/` });
    });
  });
}

async function slowed(context: BrowserContext, page: Page): Promise<CDPSession> {
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowness });
  return session;
}

/** What the start page needs of script, as the check of the build counts it. */
function firstScript(): number {
  const { stdout } = spawnSync("node", ["scripts/check-first-load.mjs"], { encoding: "utf8" });
  return 1000 * Number(/First load: ([\d.]+) kB/.exec(stdout)?.[1] ?? Number.NaN);
}

/** Nothing is kept yet: until the start page can be used. */
async function coldStart(chrome: Browser, place: string) {
  const context = await chrome.newContext({ viewport: tablet });
  const page = await context.newPage();
  await watchFrom(page);
  const session = await slowed(context, page);
  await session.send("Network.enable");
  await session.send("Network.emulateNetworkConditions", slowNetwork);
  await page.goto(place, { waitUntil: "commit" });
  const ready = await drawnAt(page);
  // The drawing of the sample comes later, and must push nothing away.
  await page.getByRole("img").first().waitFor({ timeout: 60_000 });
  const shift = await shiftOf(page);
  await context.close();
  return { ready, shift };
}

async function warmStarts(context: BrowserContext, page: Page, place: string): Promise<number[]> {
  await page.goto(place);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  const taken = [];
  for (let start = 0; start < starts; start += 1) {
    await page.goto("about:blank");
    await page.goto(place, { waitUntil: "commit" });
    taken.push(await drawnAt(page));
  }
  await context.setOffline(false);
  return taken;
}

/** A back of 2000 pieces and 50 pictures, opened again and again at its leftovers until they are drawn. */
async function openings(page: Page, place: string): Promise<number[]> {
  await page.goto(place);
  const file = { name: "large.verso", mimeType: "application/zip", buffer: await largeBack() };
  await page.locator("input[type=file]").first().setInputFiles(file);
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  const leftovers = page.url().replace(/[a-z]+$/, "leftovers");
  const taken = [];
  for (let start = 0; start < starts; start += 1) {
    await page.goto("about:blank");
    await page.goto(leftovers, { waitUntil: "commit" });
    taken.push(await drawnAt(page));
  }
  return taken;
}

/** Told by the page itself: whoever asks it for elements by what they are keeps it busy. */
async function drawnAt(page: Page): Promise<number> {
  await page.waitForFunction(() => window.drawnAt > 0, undefined, { polling: 200, timeout: 60_000 });
  return page.evaluate(() => window.drawnAt);
}

/** From a press until what it does is on the screen, each press by itself. */
async function pressedThrough(page: Page, press: (page: Page) => Promise<void>): Promise<number[]> {
  await page.evaluate(() => window.pressed.clear());
  await press(page);
  await page.waitForTimeout(500);
  return page.evaluate(() => [...window.pressed.values()]);
}

async function pressLeftovers(page: Page): Promise<void> {
  const line = page.getByRole("textbox", { name: "One leftover, as you would note it" });
  await line.click();
  await page.keyboard.type("6 squares of clay, 5 inches", { delay: 60 });
  await page.keyboard.press("Enter");
  for (const view of ["List", "Piles", "Fabrics", "All"]) {
    await page.getByRole("radio", { name: view, exact: true }).click();
    await page.waitForTimeout(150);
  }
  // Not through the bar that comes below with the first of them: a row that lies under it is moved into sight.
  const boxes = page.locator("label", { has: page.getByRole("checkbox", { name: /^Choose row/ }) });
  for (let at = 0; at < 12; at += 1) {
    await boxes.nth(at).click();
    await page.waitForTimeout(80);
  }
  await page.getByRole("button", { name: "Remove", exact: true }).click();
  await page.waitForTimeout(500);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.waitForTimeout(500);
  for (const _ of [0, 1]) await page.getByRole("button", { name: "Black and white" }).click();
}

/** While plans are searched for. */
async function pressPlan(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await page.locator("button:enabled", { hasText: "Stop here" }).waitFor({ timeout: 60_000 });
  const views = ["Light and dark", "Seams", "Color"];
  for (let at = 0; at < 24; at += 1) {
    await page.getByRole("radio", { name: views[at % 3] ?? "", exact: true }).click();
    await page.waitForTimeout(60);
    await page.getByRole("button", { name: at % 2 === 0 ? "Larger" : "Smaller", exact: true }).click();
  }
}

/** Frames while a piece that she has taken in hand is carried over the large drawing. */
async function dragged(page: Page): Promise<number[]> {
  const { x, y } = await takenInHand(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => {
    window.dragFrames = [];
    let last = 0;
    const next = (now: number) => {
      if (last > 0) window.dragFrames.push(now - last);
      last = now;
      requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  for (let step = 1; step <= 90; step += 1) await page.mouse.move(x - step, y - (step % 30));
  const frames = await page.evaluate(() => window.dragFrames);
  // A drag that nothing follows would be as quick as can be, and no figure.
  if ((await page.locator("[data-carried=true]").count()) === 0) throw new Error("nothing was carried");
  await page.keyboard.press("Escape");
  await page.mouse.up();
  return frames;
}

/** Taps here and there, until what is framed is a piece and not a plain part; where its middle lies. */
async function takenInHand(page: Page): Promise<{ readonly x: number; readonly y: number }> {
  const drawing = page.getByRole("img", { name: /^Drawing of the back seen from behind/ }).first();
  await drawing.scrollIntoViewIfNeeded();
  const box = await drawing.boundingBox();
  if (box === null) throw new Error("there is no drawing to tap");
  for (let at = 0; at < 60; at += 1) {
    const x = box.x + (box.width * ((at % 10) + 0.5)) / 10;
    await page.mouse.click(x, box.y + (box.height * (Math.floor(at / 10) + 0.5)) / 6);
    await page.waitForTimeout(500);
    const framed = page.locator("[data-carried]");
    // The edge that is cut away is no cell.
    if ((await framed.count()) === 0) continue;
    const piece = await framed.boundingBox();
    if (piece !== null && 40 * piece.width * piece.height < box.width * box.height)
      return { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 };
  }
  throw new Error("there is no piece to carry");
}

async function heapOf(session: CDPSession): Promise<number> {
  await session.send("Performance.enable");
  const { metrics } = await session.send("Performance.getMetrics");
  return metrics.find(({ name }) => name === "JSHeapUsedSize")?.value ?? 0;
}

/** What moved by itself, in all that was shown since the page was loaded. */
function shiftOf(page: Page): Promise<number> {
  return page.evaluate(() => window.shifts.reduce((sum, shift) => sum + shift, 0));
}

/** Runs in each page from its beginning: what moves by itself, and how long presses take. */
async function watchFrom(page: Page): Promise<void> {
  // What compiles this file gives functions their names by a function of its own, which the page hasn't got.
  await page.addInitScript({ content: "globalThis.__name ??= (one) => one;" });
  await page.addInitScript(() => {
    window.drawnAt = 0;
    const isDrawn = () =>
      location.hash.endsWith("leftovers")
        ? [...document.querySelectorAll("main h2")].some((heading) => heading.textContent === "Large pieces")
        : document.querySelector("main button") !== null;
    const look = () => {
      if (isDrawn()) window.drawnAt = performance.now();
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    window.shifts = [];
    window.pressed = new Map();
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        if ("value" in entry && "hadRecentInput" in entry && !entry.hadRecentInput)
          window.shifts.push(Number(entry.value));
    }).observe({ type: "layout-shift", buffered: true });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const press = "interactionId" in entry ? Number(entry.interactionId) : 0;
        if (press > 0) window.pressed.set(press, Math.max(window.pressed.get(press) ?? 0, entry.duration));
      }
    }).observe({ type: "event", durationThreshold: 16 } as PerformanceObserverInit);
  });
}
