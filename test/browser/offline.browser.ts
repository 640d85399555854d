import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { RequestListener, Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { serve } from "../../scripts/serve.mjs";
import { test as base, expect } from "./verso.ts";

const built = join(import.meta.dirname, "../../dist");

/** The app in a folder of its own, so that a later one can be put there while it runs. */
type Place = {
  readonly address: string;
  readonly renew: (change?: (file: string) => string) => void;
  readonly holdBack: (held: RegExp) => Held;
};

/** Files of which the server sends a beginning and no more: what was asked for, and a way to let the rest go. */
type Held = { readonly asked: string[]; readonly end: () => void };

const test = base.extend<{ readonly place: Place }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads from the pattern which fixtures are wanted
  place: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), "verso-place-"));
    cpSync(built, folder, { recursive: true });
    const { server, address } = await serve({ folder, port: 0 });
    await use({
      address,
      renew: (change = (text) => text) => renew(folder, change),
      holdBack: (held) => holdBack(server, held),
    });
    server.close();
    server.closeAllConnections();
    rmSync(folder, { recursive: true });
  },
  baseURL: async ({ place }, use) => use(place.address),
});

/** Another build: the page says so, and the service worker has another name for it. */
function renew(folder: string, change: (worker: string) => string): void {
  const [page, worker] = [join(folder, "index.html"), join(folder, "sw.js")];
  writeFileSync(
    page,
    readFileSync(page, "utf8").replace("<title>", '<meta name="later" content="yes"><title>'),
  );
  const text = readFileSync(worker, "utf8");
  const another = text.replace(/("build":")[0-9a-f]{16}/, "$1fedcba9876543210");
  expect(another, "the service worker names its build").not.toBe(text);
  writeFileSync(worker, change(another));
}

function holdBack(server: Server, held: RegExp): Held {
  const [answer] = server.listeners("request") as RequestListener[];
  const [asked, ends]: [string[], (() => void)[]] = [[], []];
  server.removeAllListeners("request");
  server.on("request", (request, response) => {
    const { url = "" } = request;
    if (!held.test(url)) return answer?.(request, response);
    response.writeHead(200, { "Content-Type": "text/javascript" });
    response.write("// The beginning of it\n");
    asked.push(url);
    ends.push(() => response.end());
  });
  return { asked, end: () => ends.forEach((end) => void end()) };
}

const isLater = (page: Page) => page.locator("meta[name=later]");
const later = (page: Page) => page.getByRole("status").filter({ hasText: "A newer Verso is ready." });

// The whole of a build is fetched and kept: on a busy machine that takes longer than what a press waits for.
const wholeBuild = { timeout: 40_000 };
test.describe.configure({ timeout: 120_000 });
test.use({ serviceWorkers: "allow" });

/** Opens the app and waits until the browser has all of it. */
async function visit(page: Page): Promise<void> {
  await page.goto("./");
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, wholeBuild);
}

/** Another build is put in its place, looked for, and offered once the browser has all of it. */
async function renewed(page: Page, place: Place): Promise<void> {
  place.renew();
  await page.evaluate(lookForLater);
  await expect(later(page)).toBeVisible(wholeBuild);
}

/** Runs in the page. */
async function lookForLater(): Promise<void> {
  await (await navigator.serviceWorker.getRegistration())?.update();
}

test("after the first visit the app opens without a network", async ({ page, context }) => {
  await visit(page);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole("banner")).toContainText("Verso");
  expect(await page.evaluate(() => document.fonts.check("16px 'Open Sans'"))).toBe(true);
});

test("every file of the app is kept, and nothing else", async ({ page }) => {
  await visit(page);
  const kept = await page.evaluate(async () => {
    const [name = ""] = await caches.keys();
    const requests = await (await caches.open(name)).keys();
    return requests.map(({ url }) => url);
  });
  const scripts = await page.evaluate(() =>
    performance.getEntriesByType("resource").map(({ name }) => name.replace(/[?#].*/, "")),
  );
  expect(kept).toContain(page.url().replace(/#.*/, ""));
  expect(kept.filter((url) => /\.vite|sw\.js|\.map$/.test(url))).toEqual([]);
  for (const used of scripts.filter((url) => url.includes("/assets/"))) expect(kept).toContain(used);
});

test("a later Verso is offered, never forced, and an old tab goes on", async ({ page, context, place }) => {
  await visit(page);
  await renewed(page, place);
  // Nothing changes unasked, not even by loading the page again.
  await page.reload();
  await expect(isLater(page)).toHaveCount(0);

  const other = await context.newPage();
  await other.goto("./");
  await expect(isLater(other)).toHaveCount(0);
  await later(page).getByRole("button", { name: "Later" }).click();
  await expect(later(page)).toHaveCount(0);

  await later(other).getByRole("button", { name: "Use it now" }).click();
  await expect(isLater(other)).toHaveCount(1);
  await expect(isLater(page)).toHaveCount(0);
  await expect(page.getByRole("banner")).toContainText("Verso");
});

test("a later Verso doesn't wait for large files that are being fetched", async ({
  page,
  context,
  place,
}) => {
  const large = place.holdBack(/opencv|libheif/);
  const small = place.holdBack(/held-back/);
  await visit(page);
  const tellWorker = (message: string) =>
    page.evaluate((text) => navigator.serviceWorker.controller?.postMessage(text), message);
  await tellWorker("fetch-later");
  await expect.poll(() => large.asked).toHaveLength(1);
  await renewed(page, place);
  const other = await context.newPage();
  await other.goto("./");
  await expect(later(other)).toBeVisible();

  // While one more thing is under way, the large ones are asked for anew.
  await page.evaluate(() => void fetch("./held-back.txt"));
  await expect.poll(() => small.asked).toHaveLength(1);
  await later(page).getByRole("button", { name: "Use it now" }).click();
  await tellWorker("fetch-later");
  small.end();
  await expect(isLater(page)).toHaveCount(1);
  const keptLarge = () =>
    page.evaluate(async () => {
      const all = await Promise.all(
        (await caches.keys()).map(async (name) => (await caches.open(name)).keys()),
      );
      return all.flat().filter(({ url }) => /opencv|libheif/.test(url)).length;
    });
  expect(await keptLarge(), "large files of which only the beginning came").toBe(0);

  // In the other tab it is only to be loaded.
  await later(other).getByRole("button", { name: "Use it now" }).click();
  await expect(isLater(other)).toHaveCount(1);
});

test("a later Verso that can't be fetched whole leaves the one that is there", async ({
  page,
  context,
  place,
}) => {
  await visit(page);
  place.renew((worker) => worker.replace('"files":[', '"files":["assets/missing-00000000.js",'));
  await page.evaluate(lookForLater).catch(() => {});
  await page.waitForFunction(
    async () => (await navigator.serviceWorker.getRegistration())?.installing === null,
    null,
    wholeBuild,
  );
  await expect(later(page)).toHaveCount(0);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole("banner")).toContainText("Verso");
  await expect(isLater(page)).toHaveCount(0);
});
