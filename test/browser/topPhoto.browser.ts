import type { Page } from "@playwright/test";
import sharp from "sharp";
import { homography, onto } from "../../src/photo/homography.ts";
import type { Place } from "../../src/photo/index.ts";
import { drawing, openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const quarters = [
  [190, 40, 40],
  [40, 70, 170],
  [30, 110, 60],
  [240, 228, 188],
] as const;
const photo = { width: 800, height: 600 };
const corners: readonly Place[] = [
  [170, 90],
  [640, 60],
  [660, 460],
  [120, 540],
];

/** A top of four quarters on a grey floor, as a camera held askew sees it. */
async function topFile() {
  const square: readonly Place[] = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
  ];
  const inside = homography(corners.map((place, at) => [place, square[at] ?? place] as const)) ?? [];
  const { width, height } = photo;
  const rgb = Buffer.alloc(3 * width * height, 120);
  for (let at = 0; at < width * height; at += 1) {
    const [u, v] = onto(inside, [at % width, Math.floor(at / width)]);
    const quarter =
      u >= 0 && u < 2 && v >= 0 && v < 2 ? quarters[2 * Math.floor(v) + Math.floor(u)] : undefined;
    if (quarter) rgb.set(quarter, 3 * at);
  }
  const buffer = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
  return { name: "top.jpg", mimeType: "image/jpeg", buffer };
}

const section = (page: Page) => page.getByRole("region", { name: "A photo of the top" });
const picture = (page: Page) => page.getByRole("img", { name: /^Drawing of the back/ }).locator("image");

async function openSize(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByRole("textbox", { name: "Width, middle" }).fill("60");
  await page.getByRole("textbox", { name: "Height, middle" }).fill("80");
}

async function choose(page: Page, file: Awaited<ReturnType<typeof topFile>>): Promise<void> {
  await section(page).locator("input[type=file]").last().setInputFiles(file);
}

/** The color in the middle of each quarter of what an address shows. */
const quartersOf = (page: Page, address: string) =>
  page.evaluate(async (src) => {
    const image = new Image();
    image.src = src;
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    const context = new OffscreenCanvas(width, height).getContext("2d");
    context?.drawImage(image, 0, 0);
    const at = [0.25, 0.75].flatMap((y) => [0.25, 0.75].map((x) => [x * width, y * height] as const));
    return at.map(([x, y]) => [...(context?.getImageData(x, y, 1, 1).data.slice(0, 3) ?? [])]);
  }, address);

test("a photo of the top is straightened by its corners, lies on its back, has its colors, and is undone", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.setViewportSize(screenSizes.laptop);
  await openSize(page);
  await choose(page, await topFile());
  const shown = section(page).locator("img");
  await expect(shown).toBeVisible();
  await expectAccessible(page);
  const box = await shown.boundingBox();
  if (box === null) throw new Error("the photo is there");
  const placeOf = (corner: number) => {
    const [x, y] = corners[corner] ?? [0, 0];
    return { x: ((x + 0.5) * box.width) / photo.width, y: ((y + 0.5) * box.height) / photo.height };
  };
  // One is dragged, with what lies under it larger; two are tapped; the last is moved by the arrow keys.
  const first = section(page).getByRole("button", { name: "Upper left corner" });
  await first.hover();
  await page.mouse.down();
  await page.mouse.move(box.x + placeOf(0).x, box.y + placeOf(0).y, { steps: 4 });
  await expect(section(page).locator("svg image")).toBeVisible();
  await page.mouse.up();
  for (const corner of [1, 2]) await shown.click({ position: placeOf(corner) });
  // From 80, 540 to 120, 540.
  await section(page).getByRole("button", { name: "Lower left corner" }).focus();
  for (let presses = 0; presses < 4; presses += 1) await page.keyboard.press("Shift+ArrowRight");
  await section(page).getByRole("button", { name: "These are its corners" }).click();

  await expect(picture(page)).toBeVisible();
  await expect(section(page).getByText("The top lies on the back in the drawing.")).toBeVisible();
  const seen = await quartersOf(page, (await picture(page).getAttribute("href")) ?? "");
  for (const [at, quarter] of quarters.entries())
    for (const channel of [0, 1, 2])
      expect(Math.abs((seen[at]?.[channel] ?? 0) - (quarter[channel] ?? 0))).toBeLessThan(12);
  // As wide to its height as she measured it.
  const lies = await picture(page).boundingBox();
  expect((lies?.width ?? 0) / (lies?.height ?? 1)).toBeCloseTo(60 / 80, 1);

  const colours = section(page).getByRole("listitem").getByRole("button");
  await expect(colours).toHaveCount(4);
  await expect(colours.filter({ hasText: "Cream" })).toContainText(/2[3-7]%/);
  await colours.filter({ hasText: "Dark blue" }).click();
  const plain = page.locator("input[type=color]");
  await expect(plain).toHaveValue(/^#[23].[34].[ab]./);
  await expectAccessible(page);

  await reloadKept(page);
  await expect(picture(page)).toBeVisible();
  await section(page).getByRole("button", { name: "Take the photo away" }).click();
  await expect(picture(page)).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(picture(page)).toBeVisible();
});

test("what is no photo, and corners that crossed, say what to do", async ({ page }) => {
  await openSize(page);
  await choose(page, { name: "notes.jpg", mimeType: "image/jpeg", buffer: Buffer.from("no picture at all") });
  await expect(section(page).getByText(/^This is no photo/)).toBeVisible();
  await choose(page, await topFile());
  const corner = section(page).getByRole("button", { name: "Upper left corner" });
  await corner.focus();
  for (let presses = 0; presses < 70; presses += 1) await page.keyboard.press("Shift+ArrowRight");
  await section(page).getByRole("button", { name: "These are its corners" }).click();
  await expect(section(page).getByText(/^Two corners have changed places/)).toBeVisible();
  await section(page).getByRole("button", { name: "Leave it" }).click();
  await expect(section(page).locator("img")).toHaveCount(0);
  await expect(picture(page)).toHaveCount(0);
});

test("under the top the plan is seen through the photo, more or less", async ({ page }) => {
  const { buffer } = await topFile();
  await openKeptBack(page, { pictures: { top: buffer } });
  await expect(drawing(page).locator("image")).toHaveCount(0);
  await page.getByRole("radio", { name: "Under the top" }).click();
  const top = page.getByRole("main").locator("svg[role=img] image");
  await expect(top).toBeVisible();
  const covering = page.getByRole("slider", { name: "How much the top covers" });
  await covering.press("End");
  await expect(top).toHaveAttribute("opacity", "1");
  await covering.press("Home");
  await expect(top).toHaveAttribute("opacity", "0");
  await covering.press("ArrowRight");
  // In the middle of its back: as far from the left as from the right.
  const [over, back] = [
    await top.boundingBox(),
    await page.getByRole("img", { name: /^Drawing of the back/ }).boundingBox(),
  ];
  const left = (over?.x ?? 0) - (back?.x ?? 0);
  expect(left).toBeGreaterThan(5);
  expect(left).toBeCloseTo((back?.width ?? 0) - left - (over?.width ?? 0), 0);
  await expectAccessible(page);
});
