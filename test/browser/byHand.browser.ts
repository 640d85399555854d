import type { Locator, Page } from "@playwright/test";
import { drawing, openKeptBack, openStoppedBack } from "./smallBack.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const change = (page: Page) => page.locator("section[aria-labelledby=change-plan]");
const said = (page: Page) => change(page).getByRole("status").first();
const button = (page: Page, name: string) => change(page).getByRole("button", { name, exact: true });
const undo = (page: Page) => page.getByRole("button", { name: "Undo" });

/** What is drawn, colour by colour and place by place. */
const cloth = (page: Page): Promise<string> =>
  drawing(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect[fill], path[fill]")].map((part) => part.outerHTML).join(""),
  );

/** The row of a piece in the list of the plan's pieces. */
async function listed(page: Page, what: string | RegExp): Promise<Locator> {
  const list = change(page).locator("details").filter({ hasText: "Pieces of this plan" });
  if ((await list.getAttribute("open")) === null) await list.locator("summary").click();
  return list.locator("li button").filter({ hasText: what }).first();
}

const offeredToSwap = (page: Page) =>
  change(page).getByText("With which one?").locator("..").locator("li button");

test("two pieces change places, one becomes plain: each is one step back, and the plan can be kept", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  const found = await cloth(page);
  await (await listed(page, "milk")).click();
  await button(page, "Swap with another").click();
  await offeredToSwap(page)
    .filter({ hasText: /clay pot|stars|ink|moss/ })
    .first()
    .click();
  await expect(said(page)).toHaveText("They have changed places.");
  await expect(said(page)).toBeFocused();
  const swapped = await cloth(page);
  expect(swapped).not.toBe(found);
  await (await listed(page, "clay pot")).click();
  await button(page, "Make it plain").click();
  await expect(said(page)).toHaveText(/^It is plain now/);
  expect(await cloth(page)).not.toBe(swapped);
  await expect(page.getByText("You changed this plan by hand.")).toBeVisible();
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(swapped);
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(found);
  await page.getByRole("button", { name: "Redo" }).click();
  await expect.poll(() => cloth(page)).toBe(swapped);
  await reloadKept(page);
  await expect.poll(() => cloth(page)).toBe(swapped);
  await page.getByRole("button", { name: "Keep this plan" }).click();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
  await page.getByRole("button", { name: "Take all my changes back" }).click();
  await expect(page.getByText("You changed this plan by hand.")).toBeHidden();
});

test("what can't be is told why, and nothing changes", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  const found = await cloth(page);
  await (await listed(page, /stars/)).click();
  await button(page, "Turn it").click();
  await expect(said(page)).toHaveText("It would look just as it does now.");
  await button(page, "Swap with another").click();
  const offered = await offeredToSwap(page).allTextContents();
  const rows = change(page).locator("details[open] li button");
  const others = (await rows.allTextContents()).findIndex(
    (name) => !offered.includes(name) && /ink|moss|clay pot/.test(name),
  );
  await rows.nth(others).click();
  await expect(said(page)).toHaveText(/too (small|large|short)|very same size|stay whole/);
  expect(await cloth(page)).toBe(found);
});

test("a leftover that lies unused goes where it is put at once", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  await (await listed(page, "milk")).click();
  await button(page, "Make it plain").click();
  await expect(said(page)).toHaveText(/^It is plain now/);
  await change(page).getByText("Another piece here").click();
  // Among those alone: the list of the plan's own pieces is open too, and has others of the same fabric.
  const others = change(page).locator("details").filter({ hasText: "Another piece here" });
  await others.locator("li button").filter({ hasText: "milk" }).first().click();
  await expect(said(page)).toHaveText(/milk\) lies here now\.$/);
  await expect(page.getByText("stays in its place.")).toBeHidden();
});

test("by keyboard alone: a piece from the list changes places with one that fits", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  const found = await cloth(page);
  const row = await listed(page, "milk");
  await row.focus();
  await page.keyboard.press("Enter");
  await button(page, "Swap with another").focus();
  await page.keyboard.press("Space");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await expect(offeredToSwap(page).first()).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(said(page)).toBeFocused();
  expect(await cloth(page)).not.toBe(found);
});

test.describe("by taps", () => {
  test.use({ hasTouch: true });

  test("the piece, then the other one in the drawing; anybody can use it", async ({ page }) => {
    await page.setViewportSize(screenSizes.phone);
    await openKeptBack(page);
    const found = await cloth(page);
    await (await listed(page, "milk")).tap();
    await button(page, "Swap with another").tap();
    const marks = drawing(page).locator("rect[class*=mark][class*=dark]");
    await expect(marks.first()).toBeVisible();
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
    await marks.first().scrollIntoViewIfNeeded();
    const box = await marks.first().boundingBox();
    if (box === null) throw new Error("a mark has a place");
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await expect(said(page)).toHaveText("They have changed places.");
    expect(await cloth(page)).not.toBe(found);
  });
});

test.describe("with the solver at work", () => {
  test.use({ searches: true });

  test("keep this plan is reached before what stands below it", async ({ page }) => {
    await page.setViewportSize(screenSizes.laptop);
    await openStoppedBack(page);
    const order = await page
      .locator("main button, main summary")
      .evaluateAll((all) => all.map((one) => one.textContent ?? ""));
    expect(order.indexOf("Keep this plan")).toBeLessThan(order.indexOf("Look longer"));
    expect(order.indexOf("Look longer")).toBeLessThan(order.indexOf("Pieces of this plan"));
  });
});

const insertRow = /^Row \d+: \d+ side by side/;
const openPlaceAndSize = async (page: Page) => {
  await change(page).getByText("Place and size").click();
};

test("the insert is moved and comes back, by steps and as far as she types; too far is told why", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page, { style: "insert-across" });
  const found = await cloth(page);
  await (await listed(page, "milk")).click();
  await openPlaceAndSize(page);
  await expect(change(page).getByRole("radio", { name: insertRow })).toBeChecked();
  const by = change(page).getByLabel("By how much?");
  await expect(by).toHaveValue("1/8");
  await button(page, "Down").click();
  await expect(said(page)).toHaveText("It lies ⅛ in further down now.");
  await button(page, "Down").click();
  const moved = await cloth(page);
  expect(moved).not.toBe(found);
  await by.fill("1/4");
  await button(page, "Up").click();
  await expect(said(page)).toHaveText("It lies ¼ in further up now.");
  expect(await cloth(page)).toBe(found);
  await by.fill("40");
  await button(page, "Up").click();
  await expect(said(page)).toHaveText(/^What lies beside it can give or take .+ at most\.$/);
  expect(await cloth(page)).toBe(found);
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(moved);
});

test("a plain part is made as tall as she types, by keyboard alone, and what lies beside makes up for it", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page, { style: "insert-across" });
  const found = await cloth(page);
  const row = await listed(page, /^Row 1:/);
  await row.focus();
  await page.keyboard.press("Enter");
  await change(page).getByText("Place and size").focus();
  await page.keyboard.press("Enter");
  const height = change(page).getByLabel("Height once sewn");
  const before = await height.inputValue();
  await height.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("5 1/2");
  await page.keyboard.press("Enter");
  await expect(said(page)).toHaveText(
    /^It is .+ (shorter|taller) now\. The rest of its column makes up for it\.$/,
  );
  await expect(height).toBeFocused();
  expect(before).not.toBe(await height.inputValue());
  expect(await cloth(page)).not.toBe(found);
  await height.fill("5 1/64");
  await page.keyboard.press("Enter");
  await expect(said(page)).toHaveText("Sizes go by ⅛ in here, the step of your ruler.");
  await expect(height).toBeFocused();
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(found);
});

test("moving and sizing can be used by anybody, on a phone too", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page, { style: "insert-across" });
  await (await listed(page, "milk")).click();
  await openPlaceAndSize(page);
  await expect(button(page, "Down")).toBeVisible();
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
});
