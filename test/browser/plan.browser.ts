import type { Page } from "@playwright/test";
import { drawing as large, offered, openSmallBack, settled } from "./smallBack.ts";
import { expect, screenSizes, test } from "./verso.ts";

const keep = (page: Page) => page.getByRole("button", { name: "Keep this plan" });

async function sample(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "Try the sample" }).click();
  await expect(large(page)).toBeVisible({ timeout: 30_000 });
}

/** What is drawn, colour by colour and place by place. */
function cloth(page: Page): Promise<string> {
  return large(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect, path[fill]")].map((part) => part.outerHTML).join(""),
  );
}

test("a few styles with hours and what to buy, the others one press away", async ({ page }) => {
  // Every style is looked at several times.
  test.setTimeout(120_000);
  await sample(page);
  const styles = page.getByRole("radio");
  await expect.poll(() => styles.count()).toBeGreaterThanOrEqual(3);
  await offered(page);
  expect(await styles.count()).toBeLessThanOrEqual(6);
  await expect(page.getByText("Seen from behind, as you lay it out to sew.")).toBeVisible();
  for (const style of await page.getByRole("radiogroup").locator("label").all()) {
    await expect(style).toContainText(/hours|minutes/, { timeout: 30_000 });
    await expect(style).toContainText(/nothing to buy|buy .*yd/);
  }
  await page.getByRole("button", { name: "Other styles" }).click();
  await expect(styles).toHaveCount(9);
});

test("on a phone all styles lie in one row, and nothing leaves the page sideways", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await sample(page);
  await page.getByRole("button", { name: "Other styles" }).click();
  await expect(page.getByRole("radio")).toHaveCount(9);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
  const last = page.getByRole("radiogroup").locator("label").filter({ hasText: "Leftovers all over" });
  await last.scrollIntoViewIfNeeded();
  await last.click();
  await expect(page.getByRole("heading", { level: 2, name: "Leftovers all over" })).toBeInViewport();
});

test("a plan is kept, and after a reload it is the same plan", async ({ page }) => {
  await openSmallBack(page);
  await settled(page);
  const before = await cloth(page);
  await keep(page).click();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
  await page.reload();
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
  await openSmallBack(page);
  // While it is still looking, a better plan may take the place of the one that is kept.
  await settled(page);
  await keep(page).click();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
  const id = new URL(page.url()).hash.split("/")[1];
  await page.goto(`./#/${id}/size`);
  await page.getByRole("textbox", { name: "Width, upper edge" }).fill("50");
  await page.goto(`./#/${id}/plan`);
  await expect(page.getByText(/changed since you kept a plan/)).toBeVisible({ timeout: 30_000 });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
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

test("by keyboard alone: another style, then kept", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openSmallBack(page);
  const first = await page.getByRole("radio", { checked: true }).getAttribute("value");
  const tab = async (isThere: () => Promise<boolean>) => {
    for (let presses = 0; presses < 30 && !(await isThere()); presses++) await page.keyboard.press("Tab");
  };
  const focused = (selector: string) =>
    page.evaluate((selector) => document.activeElement?.matches(selector) ?? false, selector);
  await tab(() => focused("input[type=radio]"));
  await page.keyboard.press("ArrowDown");
  await expect(page.getByRole("radio", { checked: true })).not.toHaveAttribute("value", first ?? "");
  await expect(keep(page)).toBeVisible({ timeout: 30_000 });
  await settled(page);
  await tab(() => page.evaluate(() => document.activeElement?.textContent === "Keep this plan"));
  await page.keyboard.press("Enter");
  await expect(page.getByText("You keep this plan.")).toBeVisible();
});

test("the drawing's equal in words names every row and piece", async ({ page }) => {
  await openSmallBack(page);
  await page.getByRole("button", { name: "Stop here" }).click();
  await page.getByText("The drawing as a list").click();
  const patches = await large(page).locator("rect").count();
  const named = await page.locator("details[open] li").count();
  expect(named).toBeGreaterThanOrEqual(patches);
  await expect(page.getByText(/^The whole back: /)).toBeVisible();
});
