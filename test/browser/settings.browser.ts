import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import {
  expect,
  expectAccessible,
  expectFitsBetween,
  expectReadable,
  looks,
  reloadKept,
  test,
} from "./verso.ts";

// It tells what the browser keeps.
test.use({ serviceWorkers: "allow" });

const home = (page: Page) => page.getByRole("link", { name: "Verso, your projects" }).click();
const group = (page: Page, name: string) => page.getByRole("region", { name });

/** Waits until it is there: the page she comes from opens files too. */
async function toSettings(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Settings" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Settings" })).toBeVisible();
}

async function newBack(page: Page, title: string): Promise<void> {
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByLabel("Name of this back").fill(title);
}

/** A radio is in its label, which is what one presses. */
async function choose(page: Page, within: string, label: string): Promise<void> {
  await group(page, within).getByText(label, { exact: true }).click();
  await expect(group(page, within).getByRole("radio", { name: label, exact: true })).toBeChecked();
}

const groundOf = (page: Page) =>
  page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);

test("she sets what a new back begins with, and what this one has, apart from each other", async ({
  page,
}) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await toSettings(page);
  await choose(page, "New backs", "Centimeters");
  await group(page, "New backs").getByLabel("Seam allowance", { exact: true }).fill("1 cm");
  await group(page, "This back").getByLabel("Seam allowance", { exact: true }).fill("3/8");
  await choose(page, "This back", "1⁄16 in");

  await reloadKept(page);
  await expect(group(page, "This back").getByRole("radio", { name: "Inches" })).toBeChecked();
  await expect(group(page, "This back").getByLabel("Seam allowance", { exact: true })).toHaveValue("3/8");
  await expect(group(page, "New backs").getByLabel("Seam allowance", { exact: true })).toHaveValue("1 cm");

  await home(page);
  await newBack(page, "Oak");
  await expect(page.getByRole("radio", { name: "Centimeters" })).toBeChecked();
  await toSettings(page);
  await expect(group(page, "This back").getByLabel("Seam allowance", { exact: true })).toHaveValue("1 cm");
  // What she sets of a back is undone like any other edit.
  await group(page, "This back").getByLabel("Seam allowance", { exact: true }).fill("9 cm");
  await page.keyboard.press("Tab");
  await expect(page.getByText("The seam allowance is 9 cm. Choose it from", { exact: false })).toBeVisible();
});

test("the paper she prints on, and what her ruler said of it, are where cards are printed", async ({
  page,
}) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await toSettings(page);
  await choose(page, "Printing", "A4");
  await page.getByLabel("What your ruler says of the 150 mm line").fill("149 mm");
  await page.goto(page.url().replace(/settings$/, "photo"));
  await expect(page.getByRole("combobox", { name: "Paper" })).toHaveValue("a4");
  const bar = page.getByLabel("What your ruler says of the 150 mm line");
  await expect(bar).toHaveValue("149 mm");
  await expect(page.getByText("Hold a ruler to a piece or two", { exact: false })).toBeVisible();
  // Said there, it is kept for the next photo as well.
  await bar.fill("148.5 mm");
  await reloadKept(page);
  await expect(page.getByLabel("What your ruler says of the 150 mm line")).toHaveValue("148.5 mm");
});

test("light, dark and strong contrast are hers to choose, and stay", async ({ page }) => {
  await page.emulateMedia({ colorScheme: "light" });
  await page.goto("./#/settings");
  await choose(page, "On the screen", "Dark");
  expect(await groundOf(page)).toBe("rgb(39, 36, 33)");
  await reloadKept(page);
  await expect(page.getByRole("heading", { level: 1, name: "Settings" })).toBeVisible();
  await expect.poll(() => groundOf(page)).toBe("rgb(39, 36, 33)");
  await choose(page, "On the screen", "Strong contrast");
  expect(await groundOf(page)).toBe("rgb(255, 255, 255)");
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await groundOf(page)).toBe("rgb(0, 0, 0)");
  await choose(page, "On the screen", "Light");
  expect(await groundOf(page)).toBe("rgb(245, 241, 232)");
});

test("the language changes at once and stays", async ({ page }) => {
  await page.goto("./#/settings");
  await choose(page, "On the screen", "English, British");
  await expect(page.getByText("Cloth keeps its own colours", { exact: false })).toBeVisible();
  await reloadKept(page);
  await expect(page.getByText("Cloth keeps its own colours", { exact: false })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe("en-GB");
});

test("it says when all of it is there without a network", async ({ page, context }) => {
  await page.goto("./#/settings");
  await expect(page.getByText("Ready: all of Verso is on this device.")).toBeVisible({ timeout: 30_000 });
  // What the browser cleared away is told, fetched again, and told again.
  await page.evaluate(async () => {
    const [name = ""] = await caches.keys();
    const cache = await caches.open(name);
    const [one] = await cache.keys();
    if (one !== undefined) await cache.delete(one);
  });
  await reloadKept(page);
  await expect(page.getByText("1 part of Verso is missing", { exact: false })).toBeVisible();
  await expect(page.getByText("Ready: all of Verso is on this device.")).toBeVisible({ timeout: 30_000 });
  await context.setOffline(true);
  await reloadKept(page);
  await expect(page.getByText("Ready: all of Verso is on this device.")).toBeVisible();
});

test("everything goes into one file, is deleted after one question, and comes back from the file", async ({
  page,
}) => {
  await page.goto("./");
  for (const title of ["Ida", "Oak"]) {
    await newBack(page, title);
    await home(page);
  }
  await toSettings(page);
  await expect(page.getByText("Nothing is saved in a file of your own yet.")).toBeVisible();
  await page.getByRole("button", { name: "Delete everything" }).click();
  await expect(page.getByText("2 backs on this device", { exact: false })).toBeFocused();
  const download = page.waitForEvent("download");
  await group(page, "Delete everything").getByRole("button", { name: "Save everything" }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^Verso, everything, \d{4}-\d\d-\d\d\.verso$/);
  await expect(page.getByText("All your backs are saved in files", { exact: false })).toBeVisible();
  const buffer = readFileSync(await file.path());
  await page.getByRole("button", { name: "Delete it all now" }).click();
  await expect(page.getByRole("button", { name: "Try the sample" })).toBeVisible();
  expect(await page.evaluate(() => localStorage.length)).toBe(0);

  await toSettings(page);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: file.suggestedFilename(), mimeType: "application/zip", buffer });
  await expect(page.getByText("2 backs came in.")).toBeVisible();
  await expect(page.getByRole("link", { name: /Ida/ })).toBeVisible();
  await expect(page.getByRole("link", { name: /Oak/ })).toBeVisible();
});

test("the browser is asked to keep it after the first edit that is kept, and not before", async ({
  page,
}) => {
  await page.addInitScript(() => {
    const asked = () => Number(document.documentElement.dataset.asked ?? 0);
    navigator.storage.persisted = async () => false;
    navigator.storage.persist = async () => {
      document.documentElement.dataset.asked = String(asked() + 1);
      return false;
    };
  });
  const asked = () => page.evaluate(() => document.documentElement.dataset.asked);
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByLabel("Name of this back").waitFor();
  expect(await asked()).toBeUndefined();
  await page.getByLabel("Name of this back").fill("Ida");
  await expect.poll(asked).toBe("1");
  await page.getByLabel("Name of this back").fill("Ida’s");
  await toSettings(page);
  expect(await asked()).toBe("1");
  await page.getByRole("button", { name: "Ask the browser to keep it" }).click();
  await expect(page.getByText("The browser did not promise it this time.", { exact: false })).toBeVisible();
});

test("after much change she is reminded of a file of her own, until there is one", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida");
  const id = new URL(page.url()).hash.split("/")[1] ?? "";
  await page.evaluate((project) => {
    const copies = { [project]: { at: null, changes: 299 } };
    localStorage.setItem("verso-preferences", JSON.stringify({ copies }));
  }, id);
  await reloadKept(page);
  await page.getByLabel("Name of this back").fill("Ida’s");
  const reminder = page.getByRole("status").filter({ hasText: "Much has changed here" });
  await expect(reminder).toBeVisible();
  const download = page.waitForEvent("download");
  await reminder.getByRole("button", { name: "Save a file now" }).click();
  await download;
  await expect(reminder).toHaveCount(0);
});

test("a file let go of over any page is opened", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await home(page);
  await page.getByRole("button", { name: /^More for/ }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file" }).click();
  const bytes = [...readFileSync(await (await download).path())];
  await toSettings(page);
  await page.evaluate((given) => {
    const carried = new DataTransfer();
    carried.items.add(new File([Uint8Array.from(given)], "ida.verso"));
    document.body.dispatchEvent(
      new DragEvent("drop", { dataTransfer: carried, bubbles: true, cancelable: true }),
    );
  }, bytes);
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  await expect(page.getByLabel("Name of this back")).toHaveValue("Ida");
});

for (const [name, viewport] of Object.entries(looks))
  test(`settings keep no one out, in every look: ${name}`, async ({ page }) => {
    await page.setViewportSize(viewport);
    await page.goto("./");
    await newBack(page, "Ida");
    await toSettings(page);
    await page.getByRole("button", { name: "Delete everything" }).click();
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    await expectFitsBetween(page);
    await choose(page, "On the screen", "Strong contrast");
    for (const scheme of ["light", "dark"] as const) await expectReadable(page, scheme);
  });
