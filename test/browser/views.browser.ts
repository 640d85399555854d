import type { Page } from "@playwright/test";
import { drawing, openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, screenSizes, test } from "./verso.ts";

const view = (page: Page, name: string) =>
  page.getByRole("radiogroup", { name: "What the drawing shows" }).getByRole("radio", { name });

const fills = (page: Page): Promise<string[]> =>
  drawing(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect[fill]")].map((patch) => patch.getAttribute("fill") ?? ""),
  );

const isGrey = (fill: string) => new Set(fill.slice(1).match(/../g)).size === 1;

const changeOf = (page: Page) => page.getByRole("region", { name: "Change this plan" });

/** Taps a place of the drawing, each way 0 to 1. */
async function tapAt(page: Page, x: number, y: number): Promise<void> {
  const box = await drawing(page).boundingBox();
  if (box === null) throw new Error("the drawing is there");
  await drawing(page).click({ position: { x: x * box.width, y: y * box.height } });
}

test("in colour, light and dark, seams, and under the top, where a tap finds the same piece", async ({
  page,
}) => {
  await openKeptBack(page);
  expect((await fills(page)).every(isGrey)).toBe(false);
  await view(page, "Light and dark").click();
  await expect.poll(async () => (await fills(page)).every(isGrey)).toBe(true);
  await view(page, "Seams").click();
  await expect.poll(async () => new Set(await fills(page)).size).toBe(1);
  await expectAccessible(page);
  await view(page, "Color").click();
  await tapAt(page, 0.12, 0.4);
  const piece = await changeOf(page)
    .getByText(/^Row|^Place|^The whole/)
    .first()
    .textContent();
  expect(piece).toMatch(/.+/);
  await view(page, "Under the top").click();
  await expect(page.getByText(/left and right have changed places/)).toBeVisible();
  await tapAt(page, 0.5, 0.1);
  await tapAt(page, 0.88, 0.4);
  await expect(
    changeOf(page)
      .getByText(piece ?? "", { exact: true })
      .first(),
  ).toBeVisible();
});

test("steps to go: what is ticked as sewn is drawn full, the rest pale with the number of its step", async ({
  page,
}) => {
  await openKeptBack(page);
  const full = await fills(page);
  await view(page, "Steps to go").click();
  const numbers = drawing(page).locator("text");
  await expect(page.getByText(/Sewn so far: 0 of \d+ steps\./)).toBeVisible();
  const before = await numbers.allTextContents();
  expect(before.length).toBeGreaterThan(2);
  const pale = await fills(page);
  expect(pale.every((fill, at) => fill !== full[at])).toBe(true);
  const list = page.locator("details").filter({ hasText: "Steps to go as a list" });
  await list.locator("summary").click();
  await expect(list.locator(":scope > ul > li").first()).toHaveText(/^Unit 1 /);
  await expectAccessible(page);
  await page.goto(page.url().replace(/plan$/, "sew"));
  await page.getByRole("checkbox", { name: /unit 1\b/i }).check();
  await page.goto(page.url().replace(/sew$/, "plan"));
  await view(page, "Steps to go").click();
  await expect(page.getByText(/Sewn so far: 1 of \d+ steps\./)).toBeVisible();
  expect(await numbers.allTextContents()).toEqual(before.filter((number) => number !== "1"));
  const now = await fills(page);
  expect(now.filter((fill, at) => fill === full[at]).length).toBeGreaterThan(0);
  expect(now.filter((fill, at) => fill === pale[at]).length).toBeGreaterThan(0);
  await page.getByRole("button", { name: "Another like this" }).click();
  await expect(view(page, "Steps to go")).toBeHidden();
});

test("enlarged by buttons, keys and wheel; its lines stay as fine, and double", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await openKeptBack(page);
  const wide = async () => (await drawing(page).boundingBox())?.width ?? 0;
  const whole = await wide();
  const larger = page.getByRole("button", { name: "Larger" });
  expect((await larger.boundingBox())?.height).toBeGreaterThanOrEqual(48);
  await larger.click();
  await larger.click();
  await expect.poll(wide).toBeCloseTo(whole * 2.25, 0);
  const lines = await drawing(page).evaluate((svg) =>
    [...svg.querySelectorAll("path[class*=piecing]")].map((line) => {
      const { vectorEffect, strokeWidth, stroke } = getComputedStyle(line);
      return { vectorEffect, strokeWidth, stroke };
    }),
  );
  expect(lines.map(({ vectorEffect }) => vectorEffect)).toEqual(lines.map(() => "non-scaling-stroke"));
  expect(new Set(lines.map(({ stroke }) => stroke)).size).toBe(2);
  const place = page.getByRole("region", { name: /^The drawing, enlarged/ });
  await place.focus();
  const across = () => place.evaluate((box) => box.scrollLeft);
  const before = await across();
  await page.keyboard.press("ArrowRight");
  await expect.poll(across).toBeGreaterThan(before);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
  await page.keyboard.press("0");
  await expect.poll(wide).toBeCloseTo(whole, 0);
  await drawing(page).hover();
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -200);
  await page.keyboard.up("Control");
  await expect.poll(wide).toBeGreaterThan(whole * 1.5);
});
