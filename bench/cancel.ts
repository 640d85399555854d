// How long a search in the browser goes on after she asked it to stop: npx tsx bench/cancel.ts. Wanted: 500 ms at most.
import { chromium } from "@playwright/test";
import { findBrowser, noBrowser } from "../scripts/browser.mjs";
import { serveAlone } from "../test/browser/alone.ts";

const tries = 12;

const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(noBrowser);
const alone = await serveAlone("solver");
const args = process.getuid?.() === 0 ? ["--no-sandbox", "--disable-gpu"] : ["--disable-gpu"];
const browser = await chromium.launch({ executablePath, args });
const page = await browser.newPage();
await page.goto(alone.address);

const took: number[] = [];
for (let at = 0; at < tries; at += 1) took.push((await page.evaluate(() => window.tries.stopped())).took);
took.sort((one, other) => one - other);
const [median = 0, worst = 0] = [took[tries >> 1], took.at(-1)];
process.stdout.write(
  `Stopped after ${median.toFixed(1)} ms (median of ${tries}), ${worst.toFixed(1)} ms at worst.\n`,
);

await browser.close();
alone.close();
