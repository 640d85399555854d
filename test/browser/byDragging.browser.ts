import type { Page } from "@playwright/test";
import { drawing, openKeptBack } from "./smallBack.ts";
import { expect, screenSizes, test } from "./verso.ts";

const change = (page: Page) => page.locator("section[aria-labelledby=change-plan]");
const said = (page: Page) => change(page).getByRole("status").first();
const handle = (page: Page) => page.locator("[data-carried]");
const undo = (page: Page) => page.getByRole("button", { name: "Undo" });
/** Where it may be laid down. */
const partners = (page: Page) => drawing(page).locator("rect[class*=mark][class*=dark]");

/** What is drawn, colour by colour and place by place. */
const cloth = (page: Page): Promise<string> =>
  drawing(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect[fill], path[fill]")].map((part) => part.outerHTML).join(""),
  );

async function takeInHand(page: Page, what: string | RegExp): Promise<void> {
  const list = change(page).locator("details").filter({ hasText: "Pieces of this plan" });
  if ((await list.getAttribute("open")) === null) await list.locator("summary").click();
  await list.locator("li button").filter({ hasText: what }).first().click();
  await drawing(page).scrollIntoViewIfNeeded();
  await expect(handle(page)).toBeAttached();
}

type Spot = { readonly x: number; readonly y: number };
type Pointer = {
  readonly down: (at: Spot) => Promise<unknown>;
  readonly move: (to: Spot) => Promise<unknown>;
  readonly up: () => Promise<unknown>;
};

function mouseOf({ mouse }: Page): Pointer {
  return {
    down: async ({ x, y }) => {
      await mouse.move(x, y);
      await mouse.down();
    },
    move: ({ x, y }) => mouse.move(x, y, { steps: 4 }),
    up: () => mouse.up(),
  };
}

async function fingerOf(page: Page): Promise<Pointer> {
  const browser = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: Spot[]) =>
    browser.send("Input.dispatchTouchEvent", { type, touchPoints });
  return {
    down: (at) => touch("touchStart", [at]),
    move: (to) => touch("touchMove", [to]),
    up: () => touch("touchEnd", []),
  };
}

async function middleOf(page: Page, what = handle(page)): Promise<Spot> {
  const box = await what.first().boundingBox();
  if (box === null) throw new Error("it is drawn");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The framed piece is dragged onto another that fits, and back by undo. */
async function swapByDragging(page: Page, pointer: Pointer): Promise<void> {
  const found = await cloth(page);
  await takeInHand(page, "milk");
  const from = await middleOf(page);
  await pointer.down(from);
  await pointer.move({ x: from.x + 12, y: from.y + 12 });
  await expect(partners(page).first()).toBeVisible();
  await pointer.move(await middleOf(page, partners(page)));
  await pointer.up();
  await expect(said(page)).toHaveText("They have changed places.");
  await expect(partners(page)).toHaveCount(0);
  expect(await cloth(page)).not.toBe(found);
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(found);
}

test("by mouse a piece is dragged onto another; Escape lays it back", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page);
  await swapByDragging(page, mouseOf(page));
  const found = await cloth(page);
  const mouse = mouseOf(page);
  await takeInHand(page, "milk");
  const from = await middleOf(page);
  await mouse.down(from);
  await mouse.move({ x: from.x + 60, y: from.y });
  await expect(handle(page)).toHaveAttribute("data-carried", "true");
  await page.keyboard.press("Escape");
  await expect(handle(page)).toHaveAttribute("data-carried", "false");
  await mouse.up();
  expect(await middleOf(page)).toEqual(from);
  expect(await cloth(page)).toBe(found);
});

test("the insert is dragged to another height, to the ruler's step", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openKeptBack(page, { style: "insert-across" });
  const found = await cloth(page);
  await takeInHand(page, "milk");
  await change(page).getByText("Place and size").click();
  await drawing(page).scrollIntoViewIfNeeded();
  const from = await middleOf(page);
  const mouse = mouseOf(page);
  await mouse.down(from);
  await mouse.move({ x: from.x, y: from.y + 10 });
  await mouse.up();
  await expect(said(page)).toHaveText(/^It lies .+ further down now\.$/);
  expect(await cloth(page)).not.toBe(found);
  await undo(page).click();
  await expect.poll(() => cloth(page)).toBe(found);
});

test.describe("by a finger", () => {
  test.use({ hasTouch: true });

  test("a piece is dragged onto another and the page stays where it is", async ({ page }) => {
    await page.setViewportSize(screenSizes.tablet);
    await openKeptBack(page);
    await swapByDragging(page, await fingerOf(page));
  });
});
