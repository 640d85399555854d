import type { Page } from "@playwright/test";
import { drawing as large, openKeptBack, settled } from "./smallBack.ts";
import { expect, expectAccessible, screenSizes, test } from "./verso.ts";

const advice = (page: Page) => page.getByRole("region", { name: "Before you sew" });
const show = (page: Page) => advice(page).getByRole("button", { name: "Show where: Dark beside pale" });
/** A frame is a light line and a dark one, and only they have no colour of cloth. */
const marks = (page: Page) => large(page).locator("rect:not([fill])");

async function settledSample(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "Try the sample" }).click();
  await expect(large(page)).toBeVisible({ timeout: 30_000 });
  await settled(page);
}

test.describe("of the sample, as it was found", () => {
  test.use({ searches: true });

  test("advice stands under the figures, each thing once, and says where and what to do", async ({
    page,
  }) => {
    await page.setViewportSize(screenSizes.laptop);
    await settledSample(page);
    // It comes a moment after the plan.
    await expect(advice(page)).toBeVisible();
    const headings = await page.getByRole("heading", { level: 3 }).allTextContents();
    expect(headings.slice(0, 4)).toEqual(["Change this plan", "In short", "Before you sew", "To buy"]);
    const titles = await advice(page).getByRole("heading", { level: 4 }).allTextContents();
    expect(titles).toContain("Dark beside pale");
    expect(new Set(titles).size).toBe(titles.length);
    const hint = advice(page).getByRole("listitem").filter({ hasText: "Dark beside pale" });
    await expect(hint).toContainText("Press these seams toward the dark side.");
    // The sample's dark cloth is ink and fig.
    await expect(hint).toContainText(/\((ink|fig)/);
    await expect(hint).toContainText(/units? \d+/);
  });
});

test("by keyboard a hint is shown in the drawing, another takes its place, and it goes again", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  await expect(marks(page)).toHaveCount(0);
  await show(page).focus();
  await page.keyboard.press("Space");
  await expect(show(page)).toHaveAttribute("aria-pressed", "true");
  await expect(page.getByText("Marked: dark beside pale.")).toBeVisible();
  const first = await marks(page).count();
  expect(first).toBeGreaterThanOrEqual(2);
  await expect(large(page)).toBeInViewport();
  await page.keyboard.press("Shift+Tab");
  const other = advice(page).getByRole("button").first();
  await expect(other).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(show(page)).toHaveAttribute("aria-pressed", "false");
  await expect(advice(page).getByRole("button", { pressed: true })).toHaveCount(1);
  await page.keyboard.press("Enter");
  await expect(marks(page)).toHaveCount(0);
});

test("on a phone it is shown beside the hint, and nothing leaves the page sideways", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page);
  await show(page).click();
  const nearby = advice(page).locator("svg");
  await expect(nearby).toHaveCount(1);
  await expect(nearby).toBeInViewport();
  expect(await nearby.locator("rect:not([fill])").count()).toBe(await marks(page).count());
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
});

// Thirty squares in two greens that one can't tell apart across a room, and a red that may run.
const alike = [
  "kind,width,height,count,fabric,colour,washed",
  "square,6 1/2,6 1/2,14,moss,#6f7d4f,yes",
  "square,6 1/2,6 1/2,14,fern,#748254,yes",
  "square,6 1/2,6 1/2,2,cherry,#a0141e,no",
].join("\n");

/** A cushion's back of what `table` lists. */
async function cushionOf(page: Page, table: string): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByRole("textbox", { name: "Width, middle" }).fill("30");
  await page.getByRole("textbox", { name: "Height, middle" }).fill("36");
  await page.getByRole("link", { name: "Leftovers", exact: true }).click();
  const line = page.getByRole("textbox", { name: "One leftover, as you would note it" });
  await line.evaluate((field, pasted) => {
    const data = new DataTransfer();
    data.setData("text", pasted);
    field.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }));
  }, table);
  await expect(page.getByText("3 rows entered.")).toBeVisible();
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await expect(large(page)).toBeVisible({ timeout: 30_000 });
  await page.getByRole("button", { name: "Other styles" }).click();
  await page.getByRole("radio", { name: /^Leftovers all over/ }).check({ force: true });
  await settled(page);
}

test.describe("of what lies on the floor in two greens", () => {
  test.use({ searches: true });

  test("one fabric that would mend the contrast is shown where it would go", async ({ page }) => {
    await page.setViewportSize(screenSizes.laptop);
    await cushionOf(page, alike);
    const hint = advice(page).getByRole("listitem").filter({ hasText: "How well the fabrics stand apart" });
    await expect(hint).toContainText(/told apart easily along \d+% of the seams/);
    await expect(hint).toContainText(/(light|medium|dark) \w+.* would bring it to \d+%; .*yd/);
    await hint.getByRole("button").click();
    await expect(page.getByText("Marked: where the new fabric would go.")).toBeVisible();
    const filled = await large(page).evaluate((svg) => {
      const frame = svg.querySelector("rect:not([fill])");
      return frame?.previousElementSibling?.getAttribute("fill") ?? null;
    });
    expect(filled).toMatch(/^#/);
    expect(["#6f7d4f", "#748254", "#a0141e"]).not.toContain(filled);
    // The other hints of this heap: the red, and what is washed beside what isn't.
    await expect(advice(page)).toContainText("Colors that may run");
    await expect(advice(page)).toContainText("Washed beside unwashed");
  });
});

test("everyone can use it", async ({ page }) => {
  await page.setViewportSize(screenSizes.tablet);
  await openKeptBack(page);
  await show(page).click();
  await expect(large(page)).toBeVisible();
  expect(await marks(page).count()).toBeGreaterThan(0);
  await expectAccessible(page);
});
