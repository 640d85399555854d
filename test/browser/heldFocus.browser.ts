import type { Page } from "@playwright/test";
import { openKeptBack, openSmallBack } from "./smallBack.ts";
import { expect, screenSizes, test } from "./verso.ts";

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

async function press(page: Page, name: string): Promise<void> {
  await button(page, name).first().focus();
  await page.keyboard.press("Enter");
}

test("a button that goes away when it is pressed hands the focus to what took its place", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  const list = page.locator("details").filter({ hasText: "Pieces of this plan" });
  await list.locator("summary").click();
  await list.locator("li button").filter({ hasText: "milk" }).first().click();
  await press(page, "Make it plain");
  await press(page, "Done");
  await expect(list.locator("summary")).toBeFocused();
  await press(page, "Keep this plan");
  await expect(page.getByRole("link", { name: "Go on to sewing" })).toBeFocused();
  await press(page, "Take all my changes back");
  await expect(button(page, "Look longer")).toBeFocused();
  await press(page, "Larger");
  await press(page, "Whole");
  await expect(button(page, "Larger")).toBeFocused();
  await press(page, "Larger");
  await press(page, "Smaller");
  await expect(button(page, "Larger")).toBeFocused();
  await press(page, "Another like this");
  await expect(page.getByText("Looking for a better one…")).toBeFocused();
});

test.describe("with the solver at work", () => {
  test.use({ searches: true });

  test("after a search is stopped one can look longer at once", async ({ page }) => {
    await openSmallBack(page);
    await press(page, "Stop here");
    await expect(button(page, "Look longer")).toBeFocused();
    await page.keyboard.press("Enter");
    await expect(button(page, "Stop here")).toBeFocused();
  });
});

test("by mouse the page stays where it is when what was pressed goes away; by keys what has the focus is in sight", async ({
  page,
}) => {
  await page.setViewportSize({ width: 820, height: 500 });
  await openKeptBack(page);
  await page.getByRole("link", { name: "Leftovers", exact: true }).click();
  const pieces = page.getByRole("region", { name: "Piles", exact: true }).locator("button[aria-pressed]");
  await pieces.nth(1).click();
  await page.evaluate(() => scrollTo(0, 0));
  await button(page, "Choose none").click();
  await expect(button(page, "Choose none")).toHaveCount(0);
  await expect(page.locator("body")).not.toBeFocused();
  expect(await page.evaluate(() => scrollY)).toBe(0);

  await pieces.nth(1).press("Enter");
  await press(page, "Choose none");
  await expect(button(page, "Choose none")).toHaveCount(0);
  await expect(page.locator(":focus")).toBeInViewport();
});

test("who has left a thing herself is not led back to it when it goes", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  const list = page.locator("details").filter({ hasText: "Pieces of this plan" });
  await list.locator("summary").click();
  await list.locator("li button").filter({ hasText: "milk" }).first().click();
  await press(page, "Make it plain");
  await button(page, "Keep this plan").focus();
  const heading = page.getByRole("heading", { level: 1 });
  await heading.click();
  await page.keyboard.press("ControlOrMeta+z");
  await expect(page.getByRole("link", { name: "Go on to sewing" })).toBeVisible();
  await expect(heading).toBeFocused();
});
