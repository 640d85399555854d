import type { Page } from "@playwright/test";
import { drawing, openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Plans side by side" });

async function openDialog(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Plans side by side" }).click();
  await expect(dialog(page)).toBeVisible();
}

test.describe("with the solver at work", () => {
  test.use({ searches: true });

  test("two plans lie side by side with what each takes, and she goes on with the other", async ({
    page,
  }) => {
    await openKeptBack(page);
    await page.getByRole("button", { name: "Another like this" }).click();
    await page.getByRole("button", { name: "Stop here" }).click();
    await openDialog(page);
    const heads = dialog(page).getByRole("columnheader");
    await expect(heads.filter({ hasText: "The one you look at" })).toBeVisible();
    // Until she says which ones, those that are found meanwhile may take the place of the one she keeps.
    const boxes = dialog(page).getByRole("checkbox");
    await expect(boxes.nth(2)).toBeVisible({ timeout: 30_000 });
    await boxes.nth(1).press("Space");
    if (!(await boxes.last().isChecked())) await boxes.last().press("Space");
    await expect(heads.filter({ hasText: "The one you keep" })).toBeVisible();
    for (const row of ["Time", "Cloth", "Leftovers", "Sewing", "Plain cloth", "Contrast"]) {
      const cells = dialog(page).getByRole("row", { name: row }).getByRole("cell");
      await expect(cells.nth(1)).not.toBeEmpty();
    }
    await expectAccessible(page);
    await dialog(page)
      .getByRole("button", { name: /^Go on with/ })
      .last()
      .click();
    await expect(dialog(page)).toBeHidden();
    await expect(page.getByText("You keep this plan.")).toBeVisible();
  });
});

test("by keyboard: a plan is kept under a name, changed, and gone back to", async ({ page }) => {
  await openKeptBack(page);
  const before = await drawing(page).innerHTML();
  await page.getByRole("button", { name: "Plans side by side" }).focus();
  await page.keyboard.press("Enter");
  await dialog(page).getByRole("button", { name: "Keep it under this name" }).focus();
  await page.keyboard.press("Enter");
  await expect(dialog(page).getByText("Give it a name first.")).toBeVisible();
  await dialog(page).getByRole("textbox", { name: "Name for this plan" }).focus();
  await page.keyboard.type("Sunday");
  await page.keyboard.press("Enter");
  await expect(dialog(page).getByText("Kept as “Sunday”.")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Plans side by side" })).toBeFocused();
  await page.getByRole("button", { name: "Another like this" }).click();
  await expect(page.getByRole("button", { name: "Stop here" })).toBeVisible();
  await reloadKept(page);
  await openDialog(page);
  await dialog(page)
    .getByRole("button", { name: /^Go back to “Sunday”/ })
    .focus();
  await page.keyboard.press("Enter");
  await expect(page.getByText("All is as it was: “Sunday”.")).toBeVisible();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
  expect(await drawing(page).innerHTML()).toBe(before);
});

test("a plan that is kept under a name is removed, and comes back as it was; nothing is lost from sight", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page);
  await openDialog(page);
  for (const name of ["Sunday", "Monday"]) {
    await dialog(page).getByRole("textbox", { name: "Name for this plan" }).fill(name);
    await page.keyboard.press("Enter");
    await expect(dialog(page).getByText(`Kept as “${name}”.`)).toBeVisible();
  }
  const kept = dialog(page).getByRole("button", { name: /^Go back to/ });
  await expect(kept).toHaveCount(2);
  const before = await kept.evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")));
  await dialog(page)
    .getByRole("button", { name: /^Remove “Sunday”/ })
    .focus();
  await page.keyboard.press("Enter");
  await expect(dialog(page).getByText("“Sunday” is removed.")).toBeFocused();
  await expect(kept).toHaveCount(1);
  await expect(dialog(page).getByRole("columnheader", { name: "Sunday" })).toBeHidden();
  await expectAccessible(page);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(dialog(page).getByText("“Sunday” is back.")).toBeFocused();
  expect(await kept.evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")))).toEqual(before);
  await dialog(page)
    .getByRole("button", { name: /^Remove “Sunday”/ })
    .click();
  await expect(dialog(page).getByText("“Sunday” is removed.")).toBeVisible();
  await reloadKept(page);
  await openDialog(page);
  await expect(kept).toHaveCount(1);
});

test("on a phone nothing but the plans goes sideways", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page);
  await openDialog(page);
  await expect(dialog(page).getByRole("columnheader").first()).toBeVisible();
  const wide = await dialog(page).evaluate((all) => all.scrollWidth - all.clientWidth);
  expect(wide).toBe(0);
});
