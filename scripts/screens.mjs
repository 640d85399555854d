// Takes pictures of every page as it is built now, in three sizes and two themes, into docs/screens:
// node scripts/screens.mjs [--only phone-light]. They are looked at before they are kept.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { chromium } from "@playwright/test";
import { findBrowser, noBrowser } from "./browser.mjs";
import { built, ensureBuilt } from "./build.mjs";
import { root } from "./install.mjs";
import { serve } from "./serve.mjs";

const sizes = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  laptop: { width: 1440, height: 900 },
};
const steps = ["size", "leftovers", "plan", "sew"];
const folder = join(root, "docs", "screens");

const { values } = parseArgs({ options: { only: { type: "string" } } });
const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(noBrowser);
if (!ensureBuilt()) throw new Error("the app could not be built");
mkdirSync(folder, { recursive: true });

const { server, address } = await serve({ folder: built, port: 0 });
const args = process.getuid?.() === 0 ? ["--no-sandbox", "--disable-gpu"] : ["--disable-gpu"];
const browser = await chromium.launch({ executablePath, args });
for (const [size, viewport] of Object.entries(sizes))
  for (const colorScheme of ["light", "dark"])
    if ((values.only ?? `${size}-${colorScheme}`) === `${size}-${colorScheme}`)
      await takePictures(`${size}-${colorScheme}`, { viewport, colorScheme });
await browser.close();
server.close();
server.closeAllConnections();

async function takePictures(name, options) {
  const context = await browser.newContext({ ...options, locale: "en-US", reducedMotion: "reduce" });
  const page = await context.newPage();
  const shoot = (what) => page.screenshot({ path: join(folder, `${what}-${name}.png`) });
  await page.goto(address);
  const ways = page.getByRole("main").getByRole("button");
  await ways.first().waitFor();
  await settled(page, "start");
  await shoot("start");
  await ways.first().click();
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  const id = new URL(page.url()).hash.split("/")[1];
  for (const step of steps) {
    await page.goto(`${address}#/${id}/${step}`);
    await settled(page, step);
    await shoot(step);
    if (step === "plan") await page.getByRole("button", { name: "Keep this plan" }).click();
  }
  await page.goto(`${address}#/`);
  await page.getByRole("link", { name: /Garden room/ }).waitFor();
  await page.waitForTimeout(1000);
  await shoot("projects");
  await context.close();
}

/** Until what is drawn is there, and on the plan page the search is over. */
async function settled(page, step) {
  await page.getByRole("main").getByRole("heading", { level: 1 }).waitFor();
  await page.getByRole("main").locator("svg").first().waitFor({ timeout: 60_000 });
  if (step === "plan") await page.getByText("This is the best that was found.").waitFor({ timeout: 120_000 });
  await page.waitForTimeout(step === "start" ? 5000 : 1000);
}
