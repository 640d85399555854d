// Draws the icons of the app from icon.svg, in the sizes that devices ask for. Run after changing the drawing:
// node scripts/icons.mjs
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { findBrowser } from "./browser.mjs";
import { root } from "./install.mjs";

const folder = join(root, "src", "app", "public");
// A device may cut any shape out of the last one, as long as it leaves a circle of four fifths.
const icons = [
  { name: "icon-180.png", size: 180, drawn: 1 },
  { name: "icon-192.png", size: 192, drawn: 1 },
  { name: "icon-512.png", size: 512, drawn: 1 },
  { name: "icon-mask-512.png", size: 512, drawn: 0.72 },
];

const drawing = readFileSync(join(folder, "icon.svg"));
const args = process.getuid?.() === 0 ? ["--no-sandbox", "--disable-gpu"] : ["--disable-gpu"];
const browser = await chromium.launch({ executablePath: await findBrowser(), args });
const page = await browser.newPage();
for (const { name, size, drawn } of icons) {
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<body style="margin:0;background:#f5f1e8;display:grid;place-items:center;height:100vh">` +
      `<img style="width:${drawn * 100}%" src="data:image/svg+xml;base64,${drawing.toString("base64")}"></body>`,
  );
  writeFileSync(join(folder, name), await page.screenshot());
}
await browser.close();
