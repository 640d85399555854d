// Makes every plan of the gallery and draws it: npm run gallery [-- --only pram-quilt]
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { type Browser, chromium } from "@playwright/test";
import { findBrowser, noBrowser } from "../scripts/browser.mjs";
import { pageOf } from "./page.ts";
import { pictureOf, planOf } from "./plan.ts";
import { galleryQuilts } from "./quilts.ts";

// As wide as half a page of it is read, and light enough that the page loads at once.
const mostPixels = 500;
const folder = fileURLToPath(new URL("pictures", import.meta.url));
const hashes = `${folder}/drawn.json`;

const { values } = parseArgs({ options: { only: { type: "string" } } });
const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(noBrowser);
mkdirSync(folder, { recursive: true });
const args = process.getuid?.() === 0 ? ["--no-sandbox", "--disable-gpu"] : ["--disable-gpu"];
const browser = await chromium.launch({ executablePath, args });
const asked = galleryQuilts.filter(({ name }) => (values.only ?? name) === name);
const drawn = asked.map((quilt) => ({ quilt, plan: planOf(quilt) }));
const noted: Record<string, string> =
  values.only === undefined ? {} : JSON.parse(readFileSync(hashes, "utf8"));
for (const { quilt, plan } of drawn) {
  const svg = pictureOf(plan);
  writeFileSync(`${folder}/${quilt.name}.svg`, svg);
  await photograph(browser, svg, `${folder}/${quilt.name}.png`);
  noted[quilt.name] = createHash("sha256").update(svg).digest("hex");
}
await browser.close();
writeFileSync(hashes, `${JSON.stringify(noted, null, 2)}\n`);
if (values.only === undefined)
  writeFileSync(fileURLToPath(new URL("README.md", import.meta.url)), pageOf(drawn));

async function photograph(browser: Browser, svg: string, path: string): Promise<void> {
  const width = Number(/ width="([\d.]+)"/.exec(svg)?.[1]);
  const page = await browser.newPage({ deviceScaleFactor: Math.min(1, mostPixels / width) });
  await page.setContent(`<body style="margin:0">${svg}</body>`);
  await page.locator("svg").screenshot({ path });
  await page.close();
}
