import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, reloadKept, screenSizes, test } from "./verso.ts";

const home = (page: Page) => page.getByRole("link", { name: "Verso, your projects" }).click();
const backs = (page: Page) => page.getByRole("main").getByRole("listitem");

async function newBack(page: Page, title: string): Promise<void> {
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByLabel("Name of this back").fill(title);
  await home(page);
  await expect(backs(page).filter({ hasText: title })).toBeVisible();
}

async function downloaded(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const download = page.waitForEvent("download");
  await press();
  const file = await download;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

test("the sample is one press away and lies apart from her own backs", async ({ page }) => {
  await page.goto("./");
  const buttons = page.getByRole("main").getByRole("button");
  await expect(buttons.first()).toHaveText("Try the sample");
  await buttons.first().click();
  await expect(page.getByRole("heading", { level: 1, name: "Plan" })).toBeVisible();
  await home(page);
  await newBack(page, "For the garden");
  const sample = page
    .getByRole("region", { name: "Sample" })
    .or(page.locator("section", { hasText: "Sample" }));
  await expect(sample.getByRole("link", { name: /Garden room/ })).toBeVisible();
  await expect(sample.getByRole("link", { name: /For the garden/ })).toHaveCount(0);
});

test("a back is named, duplicated, deleted and brought back, and all of it is there after a reload", async ({
  page,
}) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await page.getByRole("button", { name: "More for “Ida”" }).click();
  await page.getByRole("button", { name: "Duplicate" }).click();
  await expect(page.getByRole("link", { name: /Ida, copy/ })).toBeVisible();

  await page.getByRole("button", { name: "More for “Ida, copy”" }).click();
  await page.getByRole("button", { name: "Delete" }).click();
  await expect(page.getByText("“Ida, copy” is deleted.")).toBeVisible();
  await expect(page.getByRole("link", { name: /Ida, copy/ })).toHaveCount(0);
  // What was pressed is gone; the way back has the focus.
  await expect(page.getByRole("button", { name: "Bring it back" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("link", { name: /Ida, copy/ })).toBeVisible();

  await reloadKept(page);
  await expect(page.getByRole("link", { name: /Ida/ })).toHaveCount(2);
});

test("what was deleted on another day can still be brought back", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await page.getByRole("button", { name: "More for “Ida”" }).click();
  await page.getByRole("button", { name: "Delete" }).click();
  await expect(page.getByText("“Ida” is deleted.")).toBeVisible();
  await reloadKept(page);
  await page.getByText("Deleted", { exact: true }).click();
  await page.getByRole("button", { name: "Bring “Ida” back" }).click();
  await expect(page.getByRole("link", { name: /Ida/ })).toBeVisible();
});

test("a back leaves as a file and comes in again, by the picker and by dropping it", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida’s “best”: 2");
  await page.getByRole("button", { name: /^More for/ }).click();
  const { name, bytes } = await downloaded(page, () =>
    page.getByRole("button", { name: "Save as a file" }).click(),
  );
  expect(name).toMatch(/^Ida’s “best” 2\.verso$/);

  await page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/zip", buffer: bytes });
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  await expect(page.getByLabel("Name of this back")).toHaveValue("Ida’s “best”: 2");

  await home(page);
  await expect(backs(page).filter({ hasText: "Ida’s" })).toHaveCount(2);
  await drop(page, name, bytes);
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  await home(page);
  await expect(backs(page).filter({ hasText: "Ida’s" })).toHaveCount(3);
});

async function drop(page: Page, name: string, bytes: Buffer): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([name, base64]) => {
      const data = new DataTransfer();
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      data.items.add(new File([bytes], name));
      return data;
    },
    [name, bytes.toString("base64")] as const,
  );
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await expect(page.getByText("Let go to open the file.")).toBeVisible();
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

test("a file that is none of ours changes nothing and says why", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida");
  const input = page.locator("input[type=file]");
  await input.setInputFiles({
    name: "holiday.verso",
    mimeType: "image/png",
    buffer: Buffer.from("not a zip"),
  });
  const notice = page.getByRole("alert");
  await expect(notice).toContainText("“holiday.verso” could not be opened. Nothing here was changed.");
  await expect(notice.getByRole("listitem")).toHaveCount(1);
  await notice.getByRole("button").click();
  await expect(notice).toHaveCount(0);
  await expect(page.getByRole("link", { name: /Ida/ })).toHaveCount(1);
});

test("by keyboard alone: from nothing to a back with a name, and home again", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await page.goto("./");
  const newBackButton = page.getByRole("button", { name: "New back" });
  await expect(newBackButton).toBeVisible();
  for (let presses = 0; presses < 10 && !(await isFocused(page, "New back")); presses++)
    await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeFocused();
  await page.keyboard.press("Tab");
  await expect(page.getByLabel("Name of this back")).toBeFocused();
  await page.keyboard.press("ControlOrMeta+A");
  await page.keyboard.type("By hand");
  for (let presses = 0; presses < 12 && !(await isFocused(page, "Verso")); presses++)
    await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("link", { name: /By hand/ })).toBeVisible();
});

function isFocused(page: Page, text: string): Promise<boolean> {
  return page.evaluate((text) => document.activeElement?.textContent?.trim() === text, text);
}
