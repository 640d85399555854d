import type { Page } from "@playwright/test";
import type { Style } from "../../src/engine/back/index.ts";
import { inches } from "../../src/engine/length/index.ts";
import { lengthAsMeasured, newProject, readTableRows, writeProject } from "../../src/files/index.ts";
import { expect } from "./verso.ts";

// A cushion's back of a few leftovers, dark beside pale and unwashed beside washed.
const leftovers = `kind,width,height,count,fabric,colour,washed
square,5,5,6,clay pot,#b5694b,yes
strip,2 1/2,30,3,ink,#2b3a4f,yes
rectangle,6 1/2,10,2,moss,#6f7d4f,no
block,6 1/2,6 1/2,3,stars,#d9b38c,yes
square,4 1/2,4 1/2,6,milk,#f4efe2,yes
`;

const measure = (count: number) => [lengthAsMeasured(inches(count), "in"), null, null] as const;

function file(style: Style): Buffer {
  const project = newProject({ title: "Small back", createdAt: 0 });
  const { rows } = readTableRows(new TextEncoder().encode(leftovers), "in");
  const whole = {
    ...project,
    leftovers: rows.map((row, index) => ({ ...row, id: `leftover-${index + 1}` })),
    wishes: { ...project.wishes, style },
    size: { ...project.size, topWidths: measure(24), topHeights: measure(28), method: "machine" as const },
  };
  return Buffer.from(writeProject(whole, 0));
}

export const drawing = (page: Page) =>
  page.getByRole("img", { name: /^Drawing of the back seen from behind/ });

/** Opens the small back from its file, at its Plan page, with a plan of `style` drawn. */
export async function openSmallBack(page: Page, style: Style = "cross"): Promise<void> {
  await page.goto("./");
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "small.verso", mimeType: "application/zip", buffer: file(style) });
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, "plan"));
  await expect(drawing(page)).toBeVisible({ timeout: 30_000 });
}

/** Opens it and stops the search: from then on nothing changes by itself. */
export async function openStoppedBack(page: Page, style: Style = "cross"): Promise<void> {
  await openSmallBack(page, style);
  await page.getByRole("button", { name: "Stop here" }).click();
  await expect(page.getByText("Stopped. This is the best so far.")).toBeVisible();
}

/** Until the plans are offered among which she can choose. */
export async function offered(page: Page): Promise<void> {
  await expect(page.getByText("Looking for plans that differ…")).toBeHidden({ timeout: 90_000 });
}

/** Until nothing better is looked for. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByText("This is the best that was found.")).toBeVisible({ timeout: 60_000 });
}
