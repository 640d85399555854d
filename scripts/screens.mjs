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
    if (step === "leftovers") await takeEntering(page, shoot);
    if (step === "plan") await page.getByRole("button", { name: "Keep this plan" }).click();
  }
  await page.goto(`${address}#/`);
  await page.getByRole("link", { name: /Garden room/ }).waitFor();
  await page.waitForTimeout(1000);
  await shoot("projects");
  for (const [what, place] of [
    ["photo", `${id}/photo`],
    ["settings", "settings"],
  ]) {
    await page.goto(`${address}#/${place}`);
    await page.getByRole("main").getByRole("heading", { level: 1 }).waitFor();
    await page.waitForTimeout(1000);
    await shoot(what);
  }
  await context.close();
}

/** A line while it is typed, rows that wait to be mended, and the list of every row. */
async function takeEntering(page, shoot) {
  const line = page.getByRole("textbox", { name: "One leftover, as you would note it" });
  await line.fill("4 strips 2 1/2 x 31 teal dots");
  await shoot("leftovers-typed");
  await line.fill("");
  const pasted = "4 strips 21/2 x 31 navy\nteal dots\n2 blocks 6 1/2 cream";
  await line.evaluate((field, text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text", text);
    field.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, pasted);
  await page.getByRole("region", { name: /to be mended$/ }).waitFor();
  await shoot("leftovers-mend");
  for (let edits = 0; edits < 3; edits++) {
    const undo = page.getByRole("button", { name: "Undo" });
    if (await undo.isEnabled()) await undo.click();
  }
  const list = page.getByRole("radio", { name: "List", exact: true });
  if ((await list.count()) === 0) return;
  await list.click();
  await page.getByRole("grid").scrollIntoViewIfNeeded();
  await shoot("leftovers-list");
  await page.evaluate(() => scrollTo(0, 0));
}

/** Until what is drawn is there, and on the plan page every search is over. */
async function settled(page, step) {
  await page.getByRole("main").getByRole("heading", { level: 1 }).waitFor();
  await page.getByRole("main").locator("svg").first().waitFor({ timeout: 60_000 });
  if (step === "plan") {
    await page.getByText("Looking for plans that differ…").waitFor({ state: "hidden", timeout: 120_000 });
    await page.getByText("This is the best that was found.").waitFor({ timeout: 120_000 });
  }
  await page.waitForTimeout(step === "start" ? 5000 : 1000);
}
