import type { Page } from "@playwright/test";
import { openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const home = (page: Page) => page.getByRole("link", { name: "Verso, your projects" }).click();
const step = (page: Page, name: string) =>
  page.getByRole("navigation", { name: "Steps of the job" }).getByRole("link", { name }).click();
const shelf = (page: Page) => page.getByRole("button", { name: /^From the shelf/ });
const onShelf = (page: Page) => page.getByRole("region", { name: /^From the shelf/ });

async function newBack(page: Page, title: string): Promise<void> {
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByLabel("Name of this back").fill(title);
  await step(page, "Leftovers");
}

async function enter(page: Page, ...lines: string[]): Promise<void> {
  for (const line of lines) {
    await page.getByRole("textbox", { name: "One leftover, as you would note it" }).fill(line);
    await page.keyboard.press("Enter");
  }
}

/** Moves the first row of a pile to the shelf. */
async function shelve(page: Page, name: RegExp): Promise<void> {
  await page.getByRole("button", { name }).click();
  await page.getByRole("button", { name: "To the shelf" }).click();
}

for (const name of ["phone", "laptop"] as const)
  test(`leftovers of one back join the next from the shelf, and undo lays them back: ${name}`, async ({
    page,
  }) => {
    await page.setViewportSize(screenSizes[name]);
    await page.goto("./");
    await newBack(page, "Ida");
    await enter(page, "4 strips 2 1/2 x 31 teal", "6 squares 5 moss");
    await expect(shelf(page)).toHaveCount(0);
    await shelve(page, /4 strips/);
    await expect(page.getByText("1 row moved to the shelf.", { exact: false })).toBeVisible();
    await expect(shelf(page)).toHaveText("From the shelf, 1 row");
    // Undo brings it back, and it is no longer on the shelf.
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(shelf(page)).toHaveCount(0);
    await page.getByRole("button", { name: "Redo" }).click();
    await expect(shelf(page)).toHaveText("From the shelf, 1 row");

    await home(page);
    await expect(page.getByRole("main").getByRole("link")).toHaveCount(1);
    await newBack(page, "Oak");
    await shelf(page).click();
    const row = onShelf(page).getByRole("checkbox", { name: /4 strips, 2½ × 31 in, teal/ });
    await row.check();
    await expect(onShelf(page)).toContainText("Ida");
    await page.getByRole("button", { name: "Add 1 row to this heap" }).click();
    await expect(page.getByText("1 row joined this heap.", { exact: false })).toBeVisible();
    await expect(shelf(page)).toHaveCount(0);
    await expect(page.getByRole("button", { name: /4 strips/ }).first()).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(shelf(page)).toHaveText("From the shelf, 1 row");
    await reloadKept(page);
    await expect(shelf(page)).toHaveText("From the shelf, 1 row");
    await shelf(page).click();
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes[name].width);
  });

test("what is taken off the shelf for good can be laid back at once", async ({ page }) => {
  await page.goto("./");
  await newBack(page, "Ida");
  await enter(page, "4 strips 2 1/2 x 31 teal");
  await shelve(page, /4 strips/);
  await shelf(page).click();
  await onShelf(page).getByRole("checkbox").check();
  await page.getByRole("button", { name: "Take off the shelf for good" }).click();
  await page.getByRole("button", { name: "Lay it back" }).click();
  await expect(shelf(page)).toHaveText("From the shelf, 1 row");
});

test("what a kept plan leaves over goes on the shelf with one tap, once", async ({ page }) => {
  await openKeptBack(page, { style: "insert-across", step: "sew" });
  await page.getByText("What stays over", { exact: true }).click();
  await page.getByRole("button", { name: "Put it all on the shelf" }).click();
  await expect(page.getByText("It lies on the shelf, ready to join another heap.")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByRole("button", { name: "Put it all on the shelf" }).click();
  await home(page);
  await newBack(page, "Oak");
  await shelf(page).click();
  await expect(onShelf(page).getByRole("checkbox").first()).toBeVisible();
  await expect(onShelf(page)).toContainText("Small back");
});

test("the heap is seen in black and white, and what is odd about it is said", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await page.goto("./");
  await newBack(page, "Ida");
  await enter(page, "20 squares 5 navy", "2 squares 5 black", "2 squares 5 maroon");
  await expect(page.getByText("83% of this heap is “navy”", { exact: false })).toBeVisible();
  await page.getByRole("button", { name: "Black and white" }).click();
  const fills = await page
    .getByRole("region", { name: "Piles" })
    .locator("svg.cloth path[fill]")
    .evaluateAll((paths) => paths.map((path) => getComputedStyle(path).fill));
  expect(fills.length).toBeGreaterThan(0);
  for (const fill of fills) {
    const [red, green, blue] = fill.match(/\d+/g) ?? [];
    expect(
      Math.max(Math.abs(Number(red) - Number(green)), Math.abs(Number(green) - Number(blue))),
    ).toBeLessThan(3);
  }
});
