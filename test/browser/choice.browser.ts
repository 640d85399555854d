import type { Page } from "@playwright/test";
import { drawing as large, offered, openKeptBack, openSmallBack } from "./smallBack.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const cards = (page: Page) => page.getByRole("radiogroup").locator("label");
const pins = (page: Page) => large(page).locator("circle");
const staying = (page: Page) => page.getByText(/stays? in (its place|their places)\.$/);

/** A tap in the drawing, at shares of its sides. */
async function tapAt(page: Page, x: number, y: number, how: "mouse" | "touch"): Promise<void> {
  const drawing = large(page);
  await drawing.scrollIntoViewIfNeeded();
  const box = await drawing.boundingBox();
  if (box === null) throw new Error("the drawing is there");
  const place = [box.x + box.width * x, box.y + box.height * y] as const;
  if (how === "mouse") await page.mouse.click(...place);
  else await page.touchscreen.tap(...place);
}

/** The places that are framed in the drawing as staying. */
const stay = (page: Page) =>
  page.locator("section[aria-labelledby=change-plan] div label").filter({ hasText: "This stays" }).first();

const held = (page: Page) =>
  large(page)
    .locator("rect[class*=held]")
    .evaluateAll((frames) => frames.map((frame) => frame.outerHTML.replace(/ class="[^"]*"/, "")));

test.describe("with the solver at work", () => {
  test.use({ searches: true });

  test("three to six plans are offered, each with its hours, what to buy and what speaks for it; the other styles are one press away", async ({
    page,
  }) => {
    // Every style is looked at several times.
    test.setTimeout(120_000);
    await page.setViewportSize(screenSizes.laptop);
    await openSmallBack(page, null);
    await offered(page);
    const count = await cards(page).count();
    expect(count).toBeGreaterThanOrEqual(3);
    expect(count).toBeLessThanOrEqual(6);
    const words = await cards(page).evaluateAll((all) =>
      all.map((card) => card.querySelector("[class*=why]")?.textContent ?? ""),
    );
    expect(words.filter((reason) => !reason.endsWith("."))).toEqual([]);
    const names = await cards(page).evaluateAll((all) =>
      all.map((card) => card.querySelector("[class*=name]")?.textContent),
    );
    expect(new Set(names).size).toBe(count);
    await expect(page.getByText("Seen from behind, as you lay it out to sew.")).toBeVisible();
    for (const card of await cards(page).all()) {
      await expect(card).toContainText(/hours|minutes/);
      await expect(card).toContainText(/nothing to buy|buy .*yd/);
    }
    await page.getByRole("button", { name: "Other styles" }).click();
    await expect(cards(page)).toHaveCount(9);
  });

  test("by mouse: what stays survives another plan, and undo takes it back", async ({ page }) => {
    await page.setViewportSize(screenSizes.laptop);
    await openKeptBack(page);
    await tapAt(page, 0.5, 0.4, "mouse");
    await stay(page).click();
    await expect(pins(page)).toHaveCount(1);
    await expect(staying(page)).toBeVisible();
    const before = await held(page);
    await page.getByRole("button", { name: "Plan again round what stays" }).click();
    await expect(large(page)).toBeVisible();
    await expect(pins(page)).toHaveCount(1, { timeout: 30_000 });
    expect(await held(page)).toEqual(before);
    // Planned again was one step, that it stays another.
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(pins(page)).toHaveCount(1);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(pins(page)).toHaveCount(0);
  });

  test("another piece from elsewhere is put in a place, stays there, and the rest is planned round it", async ({
    page,
  }) => {
    await page.setViewportSize(screenSizes.laptop);
    // There every leftover goes in.
    await openKeptBack(page, { style: "all-over" });
    await page.getByText("Pieces of this plan").click();
    const milk = page.locator("details[open] li button").filter({ hasText: "milk" }).first();
    await milk.click();
    await page.getByText("Another piece here").click();
    const other = page.locator("details[open] li button").filter({ hasText: "lies elsewhere" }).first();
    await expect(other).toBeVisible();
    await other.click();
    await expect(page.getByText("1 piece stays in its place.")).toBeVisible({ timeout: 30_000 });
    await expect(pins(page)).toHaveCount(1);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(pins(page)).toHaveCount(0);
  });

  test("a wish holds until it is let go, and other plans are offered for it", async ({ page }) => {
    // Every style is looked at several times.
    test.setTimeout(120_000);
    await openSmallBack(page);
    const wish = page.getByRole("button", { name: "Sew less" });
    await wish.click();
    await expect(wish).toHaveAttribute("aria-pressed", "true");
    await expect(page.getByText("Looking for plans that differ…")).toBeVisible();
    await offered(page);
    const strong = page.getByRole("radio", { name: "Strong", exact: true });
    await expect(page.getByRole("radio", { name: "Mixed", exact: true })).toHaveAttribute(
      "aria-checked",
      "true",
    );
    await strong.click();
    await expect(page.getByText(/^Light beside dark/)).toBeVisible();
    await reloadKept(page);
    await expect(wish).toHaveAttribute("aria-pressed", "true");
    await expect(strong).toHaveAttribute("aria-checked", "true");
    await wish.click();
    await expect(wish).toHaveAttribute("aria-pressed", "false");
  });
});

test.describe("by taps", () => {
  test.use({ hasTouch: true });

  test.describe("with the solver at work", () => {
    test.use({ searches: true });

    test("a piece is left out, and its row says so", async ({ page }) => {
      await page.setViewportSize(screenSizes.phone);
      await openKeptBack(page);
      await page.getByText("Pieces of this plan").tap();
      const piece = page
        .locator("details[open] li button")
        .filter({ hasText: /square|rectangle|block/ })
        .first();
      await piece.scrollIntoViewIfNeeded();
      await piece.tap();
      const leaveOut = page.getByRole("checkbox", { name: "Leave out" });
      await leaveOut.scrollIntoViewIfNeeded();
      await page.locator("label").filter({ has: leaveOut }).tap();
      await expect(large(page)).toBeVisible({ timeout: 30_000 });
      const id = new URL(page.url()).hash.split("/")[1];
      await page.goto(`./#/${id}/leftovers`);
      await expect(page.getByRole("button", { name: /, keep back\.$/ })).toBeVisible();
    });
  });

  test("a tap in the drawing frames the piece; nothing leaves the page sideways", async ({ page }) => {
    await page.setViewportSize(screenSizes.phone);
    await openKeptBack(page);
    await tapAt(page, 0.5, 0.45, "touch");
    await expect(page.getByRole("checkbox", { name: "This stays", exact: true })).toBeVisible();
    await expect(large(page).locator("rect[class*=frame]")).toHaveCount(2);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
  });
});

test("by keyboard alone: a piece from the list stays", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  await page.getByText("Pieces of this plan").focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("details[open] li button").first()).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.locator("details[open] li button").first()).toBeFocused();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await expect(pins(page)).toHaveCount(1);
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("checkbox", { name: "This stays", exact: true })).toBeChecked();
});

test("anybody can use it, with a piece that stays, at every size", async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  await tapAt(page, 0.5, 0.4, "mouse");
  await stay(page).click();
  for (const view of Object.values(screenSizes)) {
    await page.setViewportSize(view);
    await expect(pins(page)).toHaveCount(1);
    if (view !== screenSizes.tablet) await expectAccessible(page);
    const small = await page
      .locator("section[aria-labelledby=change-plan] button, section[aria-labelledby=change-plan] label")
      .evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect().height).filter((height) => height < 44),
      );
    expect(small).toEqual([]);
  }
});
