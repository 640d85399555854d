import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { serve } from "../../scripts/serve.mjs";
import { test as base, expect } from "./verso.ts";

const built = join(import.meta.dirname, "../../dist");

/** The app in a folder of its own, so that a later one can be put there while it runs. */
type Place = { readonly address: string; readonly renew: (change?: (file: string) => string) => void };

const test = base.extend<{ readonly place: Place }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads from the pattern which fixtures are wanted
  place: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), "verso-place-"));
    cpSync(built, folder, { recursive: true });
    const { server, address } = await serve({ folder, port: 0 });
    await use({ address, renew: (change = (text) => text) => renew(folder, change) });
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

const isLater = (page: Page) => page.locator("meta[name=later]").count();
const later = (page: Page) => page.getByRole("status").filter({ hasText: "A newer Verso is ready." });

/** Opens the app and waits until the browser has all of it. */
async function visit(page: Page): Promise<void> {
  await page.goto("./");
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

async function lookForLater(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.getRegistration().then((known) => known?.update()));
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
  place.renew();
  await lookForLater(page);
  await expect(later(page)).toBeVisible();
  // Nothing changes unasked, not even by loading the page again.
  await page.reload();
  expect(await isLater(page)).toBe(0);

  const other = await context.newPage();
  await other.goto("./");
  expect(await isLater(other)).toBe(0);
  await later(page).getByRole("button", { name: "Later" }).click();
  await expect(later(page)).toHaveCount(0);

  await later(other).getByRole("button", { name: "Use it now" }).click();
  await expect.poll(() => isLater(other)).toBe(1);
  expect(await isLater(page)).toBe(0);
  await expect(page.getByRole("banner")).toContainText("Verso");
});

test("a later Verso that can't be fetched whole leaves the one that is there", async ({
  page,
  context,
  place,
}) => {
  await visit(page);
  place.renew((worker) => worker.replace('"files":[', '"files":["assets/missing-00000000.js",'));
  await lookForLater(page).catch(() => {});
  await page.waitForFunction(
    async () => (await navigator.serviceWorker.getRegistration())?.installing === null,
  );
  await expect(later(page)).toHaveCount(0);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole("banner")).toContainText("Verso");
  expect(await isLater(page)).toBe(0);
});
