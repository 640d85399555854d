import type { Page } from "@playwright/test";
import { expect, expectAccessible, pauseBetweenTaps, reloadKept, screenSizes, test } from "./verso.ts";

const measure = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });
const theBack = (page: Page) => page.getByRole("img", { name: /^Drawing of the back/ });
const plain = (text: string | null) => (text ?? "").replace(/[\u202f\u00a0]/g, " ");

async function newBack(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
}

test("the back grows as she types, in whatever way she writes a size", async ({ page }) => {
  await newBack(page);
  await expect(page.getByText("Give the size of the top, and the back is drawn here.")).toBeVisible();
  await measure(page, "Width, middle").fill("60");
  await expect(theBack(page)).toHaveCount(0);
  for (const [typed, back] of [
    ["80", "68 × 88 in"],
    ["80 1/2", "68 × 88½ in"],
    ["80½", "68 × 88½ in"],
    ['80.5"', "68 × 88½ in"],
  ] as const) {
    await measure(page, "Height, middle").fill(typed);
    await expect(theBack(page)).toBeVisible();
    expect(plain(await theBack(page).getAttribute("aria-label")), typed).toContain(`back, ${back}`);
  }
  await measure(page, "Height, left edge").fill("203,2 cm");
  await measure(page, "Height, middle").fill("");
  expect(plain(await theBack(page).getAttribute("aria-label"))).toContain("68 × 88 in");
});

test("half a number takes nothing away, and what can't be read is said beside the field once she leaves it", async ({
  page,
}) => {
  await newBack(page);
  await measure(page, "Width, middle").fill("60");
  await measure(page, "Height, middle").fill("80");
  await measure(page, "Height, middle").pressSequentially(" 1/");
  await expect(theBack(page)).toBeVisible();
  await expect(page.getByText("does not read as a size")).toHaveCount(0);
  await page.keyboard.press("Tab");
  await expect(page.getByText(/Middle: “80 1\/” does not read as a size/)).toBeVisible();
  await expect(measure(page, "Height, middle")).toHaveAccessibleDescription(/does not read as a size/);
  await expect(measure(page, "Height, middle")).toHaveAttribute("aria-invalid", "true");
});

test("of two readings she picks the one she means", async ({ page }) => {
  await newBack(page);
  await measure(page, "Width, middle").fill("121/2");
  await measure(page, "Height, middle").fill("80");
  await page.getByRole("button", { name: "It is 12 1/2" }).click();
  await expect(measure(page, "Width, middle")).toHaveValue("12 1/2");
  expect(plain(await theBack(page).getAttribute("aria-label"))).toContain("20½ × 88 in");
});

test("the largest of three counts, the method and the quilter say how much more", async ({ page }) => {
  await newBack(page);
  await measure(page, "Width, upper edge").fill("59 1/2");
  await measure(page, "Width, lower edge").fill("60 1/4");
  await measure(page, "Height, middle").fill("80");
  await expect(page.getByText(/The widths differ by/)).toBeVisible();
  const label = async () => plain(await theBack(page).getAttribute("aria-label"));
  expect(await label()).toContain("68¼ × 88 in");
  await page.getByRole("radio", { name: /On a home machine/ }).check({ force: true });
  expect(await label()).toContain("66¼ × 86 in");
  await page.getByText("Your quilter asks for something else").click();
  const asked = page.locator("details", { hasText: "Your quilter asks" });
  await asked.getByLabel("Extra on each side").fill("6");
  expect(await label()).toContain("72¼ × 92 in");
  await asked.getByLabel("Width, at least").fill("80");
  expect(await label()).toContain("80 × 92 in");
  await asked.getByLabel("Extra on each side").fill("40");
  await page.keyboard.press("Tab");
  await expect(page.getByText(/The extra on each side is 40/)).toBeVisible();
});

test("another unit re-rounds nothing, and everything is there after a reload", async ({ page }) => {
  await newBack(page);
  await measure(page, "Width, middle").fill("60");
  await measure(page, "Height, middle").fill("80");
  await page.getByRole("radio", { name: "Centimeters" }).check({ force: true });
  await expect(measure(page, "Width, middle")).toHaveValue("60 in");
  expect(plain(await theBack(page).getAttribute("aria-label"))).toContain("172.4 × 223.2 cm");
  await page.getByRole("radio", { name: "Inches" }).check({ force: true });
  await expect(measure(page, "Width, middle")).toHaveValue("60");
  await reloadKept(page);
  await expect(measure(page, "Width, middle")).toHaveValue("60");
  expect(plain(await theBack(page).getAttribute("aria-label"))).toContain("68 × 88 in");
});

test("all of one cloth, in plain words, for her own cloth's width", async ({ page }) => {
  await newBack(page);
  await measure(page, "Width, middle").fill("60");
  await measure(page, "Height, middle").fill("80");
  await expect(page.getByText(/seams running down: 2 lengths of 88/)).toBeVisible();
  await expect(page.getByText(/seams running across: 3 lengths of 68/)).toBeVisible();
  await expect(page.getByText(/Extra-wide cloth, 108/)).toBeVisible();
  await page.getByLabel("Usable width").fill("58");
  await expect(page.getByText(/58.in wide, seams running across: 2 lengths of 68/)).toBeVisible();
});

test("her own size of the back, without a top", async ({ page }) => {
  await newBack(page);
  await page.getByRole("radio", { name: "The size of the back" }).check({ force: true });
  await page.getByLabel("Width of the back").fill("150 cm");
  await page.getByLabel("Height of the back").fill("200 cm");
  await expect(theBack(page)).toBeVisible();
  expect(await theBack(page).getAttribute("aria-label")).not.toContain("top");
  await expectAccessible(page);
});

test("what is said of a field she leaves moves nothing away under her finger", async ({ page }) => {
  await newBack(page);
  await measure(page, "Width, middle").fill("sixty");
  const below = measure(page, "Height, middle");
  await below.hover();
  const before = (await below.boundingBox())?.y ?? 0;
  await page.mouse.down();
  await expect(below).toBeFocused();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  expect((await below.boundingBox())?.y).toBe(before);
  await page.mouse.up();
  await expect(page.getByText(/Middle: “sixty” does not read as a size/)).toBeVisible();
  expect((await below.boundingBox())?.y).toBeGreaterThan(before);
});

test("by taps alone, with a key for each eighth", async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    ...(baseURL === undefined ? {} : { baseURL }),
    viewport: screenSizes.phone,
    hasTouch: true,
    isMobile: true,
    locale: "en-US",
  });
  const page = await context.newPage();
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).tap();
  await measure(page, "Width, middle").tap();
  await page.keyboard.type("60");
  await page.getByRole("group", { name: "Eighths of an inch" }).getByText("½").tap();
  await expect(measure(page, "Width, middle")).toBeFocused();
  await expect(measure(page, "Width, middle")).toHaveValue("60½");
  // Another one takes the place of the one before.
  await page.getByRole("group", { name: "Eighths of an inch" }).getByText("¾").tap();
  await expect(measure(page, "Width, middle")).toHaveValue("60¾");
  await pauseBetweenTaps(page);
  await measure(page, "Height, middle").tap();
  await page.keyboard.type("80");
  await page.getByText("By hand").tap();
  expect(plain(await theBack(page).getAttribute("aria-label"))).toContain("64¾ × 84 in");
  await context.close();
});
