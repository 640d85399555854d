import type { Page } from "@playwright/test";
import { drawing as large, openKeptBack, openSmallBack, settled } from "./smallBack.ts";
import { expect, reloadKept, screenSizes, test } from "./verso.ts";

const keep = (page: Page) => page.getByRole("button", { name: "Keep this plan" });

/** What is drawn, colour by colour and place by place. */
function cloth(page: Page): Promise<string> {
  return large(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect, path[fill]")].map((part) => part.outerHTML).join(""),
  );
}

/** How fabrics meet is chosen by radios too. */
const styles = (page: Page) => page.getByRole("radiogroup", { name: /best/ }).getByRole("radio");
const chosen = (page: Page) =>
  page.getByRole("radiogroup", { name: /best/ }).getByRole("radio", { checked: true });

test("on a phone all styles lie in one row, and nothing leaves the page sideways", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page);
  await expect(styles(page)).toHaveCount(9);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
  const last = page.getByRole("radiogroup").locator("label").filter({ hasText: "Leftovers all over" });
  await last.scrollIntoViewIfNeeded();
  await last.click();
  await expect(page.getByRole("heading", { level: 2, name: "Leftovers all over" })).toBeInViewport();
});

test("before there can be a plan it is said what is needed, with the way there", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  const id = new URL(page.url()).hash.split("/")[1];
  await page.goto(`./#/${id}/plan`);
  await expect(page.getByText("The size of the back is not known yet.")).toBeVisible();
  await expect(page.getByText("No leftovers are listed yet.")).toBeVisible();
  await page.getByRole("link", { name: "Go to Size" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
});

test("the drawing's equal in words names every row and piece", async ({ page }) => {
  await openKeptBack(page);
  await page.getByText("The drawing as a list").click();
  const patches = await large(page).locator("rect").count();
  const named = await page.locator("details[open] li").count();
  expect(named).toBeGreaterThanOrEqual(patches);
  await expect(page.getByText(/^The whole back: /)).toBeVisible();
});

test.describe("while better ones are looked for", () => {
  test.use({ searches: true });

  test("a plan is kept, and after a reload it is the same plan", async ({ page }) => {
    await openSmallBack(page);
    await settled(page);
    const before = await cloth(page);
    await keep(page).click();
    await expect(page.getByText("You keep this plan.")).toBeVisible();
    await reloadKept(page);
    await expect(page.getByText("You keep this plan.")).toBeVisible();
    expect(await cloth(page)).toBe(before);
    await page.getByRole("link", { name: "Go on to sewing" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  });

  test("stopped when she likes, and the best so far is kept", async ({ page }) => {
    await openSmallBack(page);
    await settled(page);
    await page.getByRole("button", { name: "Look longer" }).click();
    await page.getByRole("button", { name: "Stop here" }).click();
    await expect(page.getByText("Stopped. This is the best so far.")).toBeVisible();
    await keep(page).click();
    await expect(page.getByText("You keep this plan.")).toBeVisible();
  });

  test("her leftovers change, and it is said that the plan she keeps is for what was", async ({ page }) => {
    await openKeptBack(page);
    await expect(page.getByText("You keep this plan.")).toBeVisible();
    const id = new URL(page.url()).hash.split("/")[1];
    await page.goto(`./#/${id}/size`);
    await page.getByRole("textbox", { name: "Width, upper edge" }).fill("50");
    await page.goto(`./#/${id}/plan`);
    await expect(page.getByText(/changed since you kept a plan/)).toBeVisible({ timeout: 30_000 });
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(page.getByText("You keep this plan.")).toBeVisible();
  });

  test("by keyboard alone: another style, then kept", async ({ page }) => {
    await page.setViewportSize(screenSizes.laptop);
    await openSmallBack(page);
    const first = await chosen(page).getAttribute("value");
    const tab = async (isThere: () => Promise<boolean>) => {
      for (let presses = 0; presses < 30 && !(await isThere()); presses++) await page.keyboard.press("Tab");
    };
    const focused = (selector: string) =>
      page.evaluate((selector) => document.activeElement?.matches(selector) ?? false, selector);
    await tab(() => focused("input[type=radio]"));
    await page.keyboard.press("ArrowDown");
    await expect(chosen(page)).not.toHaveAttribute("value", first ?? "");
    await expect(keep(page)).toBeVisible({ timeout: 30_000 });
    await settled(page);
    await tab(() => page.evaluate(() => document.activeElement?.textContent === "Keep this plan"));
    await page.keyboard.press("Enter");
    await expect(page.getByText("You keep this plan.")).toBeVisible();
  });
});
