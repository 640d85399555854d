import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { unzipSync } from "fflate";
import sharp from "sharp";
import { photoFile, tableTop, twoNear } from "../made/photoFile.ts";
import { pixelOf } from "../made/scene.ts";
import { expect, expectAccessible, reloadKept, screenSizes, test } from "./verso.ts";

const main = (page: Page) => page.getByRole("main");
const button = (page: Page, name: string | RegExp) =>
  page.getByRole("button", { name, exact: typeof name === "string" });
const pieces = (page: Page) => page.getByRole("region", { name: "The pieces" }).getByRole("listitem");

let photo: Promise<Buffer> | null = null;
const file = async (name = "table.jpg") => {
  photo ??= photoFile(tableTop);
  return { name, mimeType: "image/jpeg", buffer: await photo };
};

/** The photo page of a back of which nothing is known yet, by the way that leads there. */
async function openPhotos(page: Page): Promise<void> {
  await page.goto("./");
  await button(page, "New back").first().click();
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, "leftovers"));
  await page.getByRole("link", { name: "From a photo" }).click();
  await expect(main(page).getByRole("heading", { level: 1 })).toHaveText("Leftovers from photos");
}

async function choose(page: Page, ...files: readonly Awaited<ReturnType<typeof file>>[]): Promise<void> {
  await page.locator("main input[type=file][multiple]").setInputFiles([...files]);
}

test("a photo is measured, one size put right, the pieces added, and taken back", async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize(screenSizes.laptop);
  await openPhotos(page);
  await choose(page, { ...(await file()), buffer: await photoFile(twoNear) });
  await expect(pieces(page)).toHaveCount(6, { timeout: 30_000 });
  await expect(main(page).getByText("6 pieces found. Look again at 2 of them.")).toBeVisible();
  await expect(
    page.getByRole("figure").locator("svg.cloth polygon, .cloth svg polygon").first(),
  ).toBeVisible();
  // The two cream squares are of one cloth, which is named once.
  const cloths = page.getByRole("textbox", { name: "What this cloth is called" });
  await expect(cloths).toHaveCount(5);
  // The photo itself stays only where she says so.
  await expect(page.getByRole("region", { name: "Photos you keep" })).toHaveCount(0);
  await page.getByRole("checkbox", { name: "Keep this photo with the back" }).check();
  const kept = page.getByRole("img", { name: "Kept photo 1" });
  await expect(kept).toBeVisible();
  await expectAccessible(page);

  // On the photo, a piece is chosen by its number; its size is typed.
  const strip = pieces(page).filter({ hasText: "Strip" });
  await expect(strip).toContainText("2½ × 11 in");
  await page.getByRole("figure").getByRole("button", { name: /Strip/ }).click();
  await page.getByRole("textbox", { name: "Height" }).fill("11 1/2");
  await expect(strip).toContainText("2½ × 11½ in");
  await button(page, "Take back the last correction").click();
  await expect(strip).toContainText("2½ × 11 in");
  await page.getByRole("textbox", { name: "Height" }).fill("10 3/4");
  await page.getByRole("textbox", { name: "How many alike" }).fill("4");
  await expectAccessible(page);
  await button(page, /^Done with piece/).click();

  await cloths.last().fill("last cloth");
  // What is doubted is not ticked by itself.
  await expect(button(page, "Add 7 pieces")).toBeVisible();
  await button(page, "Tick all").click();
  await button(page, "Add 9 pieces").click();
  await expect(main(page).getByText("9 pieces added in 5 rows. Undo takes them back.")).toBeVisible();
  await expect(pieces(page)).toHaveCount(0);
  const onwards = page.getByRole("link", { name: "See them in the list" });
  await expect(onwards).toBeFocused();
  await expect(main(page).getByText("All its pieces are among the leftovers.")).toBeVisible();
  await onwards.click();
  await expect(main(page).getByText(/^9 pieces in 5 rows/)).toBeVisible();
  await expect(button(page, "Height: 10¾")).toBeVisible();

  await button(page, "Undo").click();
  await expect(main(page).getByText("Nothing lies here yet.")).toBeVisible();
  // What was taken back lies beside its photo again.
  await page.getByRole("link", { name: "From a photo" }).click();
  await expect(pieces(page)).toHaveCount(6);
  await button(page, "Add 9 pieces").click();
  await expect(pieces(page)).toHaveCount(0);

  // Each row keeps the picture of its cloth.
  await page.getByRole("link", { name: "Back to the leftovers" }).click();
  const pictures = page.getByRole("grid").locator("img");
  await expect(pictures).toHaveCount(5);
  await reloadKept(page);
  await expect(pictures).toHaveCount(5);
  await expect
    .poll(() => pictures.evaluateAll((all) => all.map((one) => (one as HTMLImageElement).naturalWidth > 50)))
    .toEqual([true, true, true, true, true]);

  // So does the photo that she keeps, until she says otherwise.
  await page.getByRole("link", { name: "From a photo" }).click();
  await expect(kept).toBeVisible();
  await button(page, "Keep photo 1 no longer").click();
  await expect(kept).toHaveCount(0);
});

test("a photo that is kept goes into the file with her back, made anew: no place, no camera's number", async ({
  page,
}) => {
  const secret = { Make: "Camera of Ida", Artist: "Ida" };
  const gps = { GPSLatitudeRef: "N", GPSLatitude: "51/1 30/1 0/1" };
  const taken = await sharp((await file()).buffer)
    .withExif({ IFD0: secret, IFD2: { BodySerialNumber: "serial 12345" }, IFD3: gps })
    .jpeg()
    .toBuffer();
  expect((await sharp(taken).metadata()).exif?.includes("serial 12345")).toBe(true);
  await openPhotos(page);
  await choose(page, { ...(await file()), buffer: taken });
  await expect(pieces(page)).toHaveCount(6, { timeout: 30_000 });
  await page.getByRole("checkbox", { name: "Keep this photo with the back" }).check();
  await expect(page.getByRole("img", { name: "Kept photo 1" })).toBeVisible();
  await reloadKept(page);

  await page.getByRole("link", { name: "Verso, your projects" }).click();
  await button(page, /^More for/).click();
  const download = page.waitForEvent("download");
  await button(page, "Save as a file").click();
  const entries = Object.values(unzipSync(readFileSync(await (await download).path())));
  for (const entry of entries)
    for (const told of [...Object.values(secret), "serial 12345", "Exif", "GPS"])
      expect(Buffer.from(entry).includes(told), told).toBe(false);
  const pictures = await Promise.all(
    entries.map((entry) =>
      sharp(entry)
        .metadata()
        .catch(() => null),
    ),
  );
  const photos = pictures.filter((one) => one !== null);
  expect(photos.map(({ width, height, exif }) => [width / height, exif])).toEqual([[4 / 3, undefined]]);
});

test("on the photo a corner is moved, a piece is split, joined, left out and found again", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.setViewportSize(screenSizes.laptop);
  await openPhotos(page);
  await choose(page, await file());
  await expect(pieces(page)).toHaveCount(6, { timeout: 30_000 });
  const figure = page.getByRole("figure");
  const number = (name: RegExp) => figure.getByRole("button", { name });
  const blue = pieces(page).filter({ hasText: "4½ × 4½ in" });
  const takeBack = button(page, "Take back the last correction");

  // Dragged off, a corner stays where it was let go; let go near its edge, it goes there.
  await number(/4½ × 4½ in/).click();
  const corner = figure.getByRole("button", { name: /^Corner 1 / });
  const at = async () => {
    const box = await corner.boundingBox();
    return { x: (box?.x ?? 0) + (box?.width ?? 0) / 2, y: (box?.y ?? 0) + (box?.height ?? 0) / 2 };
  };
  const from = await at();
  const drag = async (x: number, y: number) => {
    const start = await at();
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(x, y, { steps: 4 });
    await expect(figure.locator("svg image")).toBeVisible();
    await page.mouse.up();
  };
  await drag(from.x - 40, from.y - 40);
  await expect(blue).toHaveCount(0, { timeout: 15_000 });
  await drag(from.x + 2, from.y - 2);
  await expect(blue).toHaveCount(1, { timeout: 15_000 });

  // The same by the arrow keys.
  await corner.focus();
  for (let presses = 0; presses < 6; presses += 1) await page.keyboard.press("Shift+ArrowLeft");
  await expect(blue).toHaveCount(0, { timeout: 15_000 });
  await takeBack.click();
  await expect(blue).toHaveCount(1);

  // In two, by two taps on its edges; and one again.
  await button(page, "It is two pieces").click();
  const surface = figure.getByRole("button", { name: /^Place on the photo/ });
  await expect(surface).toBeFocused();
  await expectAccessible(page);
  const corners = await blueCorners(page);
  await surface.click({ position: between(corners, 0, 1) });
  await surface.click({ position: between(corners, 2, 3) });
  await expect(pieces(page)).toHaveCount(7, { timeout: 15_000 });
  const halves = number(/2[⅛¼] × 4½ in/);
  await expect(halves).toHaveCount(2);
  await halves.first().click();
  await button(page, "It is one with another").click();
  await halves.last().click();
  await expect(blue).toHaveCount(1, { timeout: 15_000 });
  await expect(pieces(page)).toHaveCount(6);
  await takeBack.click();
  await takeBack.click();
  await expect(pieces(page)).toHaveCount(6);

  // Left out, and found by a tap inside.
  await number(/4½ × 4½ in/).click();
  if ((await button(page, "Leave it out").count()) === 0) await number(/4½ × 4½ in/).click();
  await button(page, "Leave it out").click();
  await expect(pieces(page)).toHaveCount(5);
  await button(page, "A piece was missed").click();
  await surface.click({ position: between(corners, 0, 2) });
  await expect(blue).toHaveCount(1, { timeout: 20_000 });

  // The floor is chosen again, by a tap: all is looked for anew, and that is one step back.
  await number(/4½ × 4½ in/).click();
  await button(page, "Leave it out").click();
  await button(page, "Choose the floor again").click();
  await expect(figure.getByText(/^Tap a place where the floor lies bare/)).toBeVisible();
  await surface.click({ position: await spotOf(page, [-7.5, 3]) });
  await expect(pieces(page)).toHaveCount(6, { timeout: 20_000 });
  await expect(blue).toHaveCount(1);
  await takeBack.click();
  await expect(pieces(page)).toHaveCount(5);

  // Put away by mistake, the photo comes back with all that was put right in it.
  await button(page, "Put away table.jpg and what was found in it").click();
  await expect(figure).toHaveCount(0);
  await takeBack.click();
  await expect(figure).toHaveCount(1);
  await expect(pieces(page)).toHaveCount(5);
});

/** Where in the shown photo a place of the table is, in inches. */
async function spotOf(page: Page, at: readonly [number, number]): Promise<Spot> {
  const box = await page.getByRole("figure").locator("img").boundingBox();
  const [x, y] = pixelOf(tableTop, at);
  const share = (box?.width ?? 0) / tableTop.width;
  return { x: x * share, y: y * share };
}

type Spot = { readonly x: number; readonly y: number };

/** Where in the shown photo the corners of the blue square lie. */
async function blueCorners(page: Page): Promise<readonly Spot[]> {
  const box = await page.getByRole("figure").locator("img").boundingBox();
  const share = (box?.width ?? 0) / tableTop.width;
  return (tableTop.pieces[0]?.outline ?? []).map((spot) => {
    const [x, y] = pixelOf(tableTop, spot);
    return { x: x * share, y: y * share };
  });
}

function between(corners: readonly Spot[], one: number, other: number): Spot {
  const [a, b] = [corners[one] ?? { x: 0, y: 0 }, corners[other] ?? { x: 0, y: 0 }];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

test("the cards are saved to be printed", async ({ page }) => {
  await openPhotos(page);
  const downloading = page.waitForEvent("download");
  await button(page, "Save the cards to print").click();
  const cards = await downloading;
  expect(cards.suggestedFilename()).toBe("Verso cards.pdf");
  expect((await readFile(await cards.path())).subarray(0, 5).toString()).toBe("%PDF-");
});

test("what can't be measured says why, and a photo under way is stopped", async ({ page }) => {
  await openPhotos(page);
  const whole = await file();
  await choose(
    page,
    { ...whole, name: "notes.jpg", buffer: Buffer.from("pieces of cloth, but no picture") },
    { ...whole, name: "short.jpg", buffer: whole.buffer.subarray(0, whole.buffer.length / 2) },
    whole,
  );
  await expect(main(page).getByText(/^notes\.jpg: This is no photo/)).toBeVisible();
  await expect(main(page).getByText(/^short\.jpg: The end of this photo is missing/)).toBeVisible();
  await button(page, "Stop").click();
  await expect(page.getByText(/^table\.jpg/)).toHaveCount(0);
  await expect(pieces(page)).toHaveCount(0);
});

test.describe("once it is kept", () => {
  test.use({ serviceWorkers: "allow" });

  test("a phone's own photo is measured without a network, once all of Verso is on the device", async ({
    page,
    context,
  }) => {
    test.setTimeout(120_000);
    await page.goto("./#/settings");
    await expect(page.getByText("Ready: all of Verso is on this device.")).toBeVisible({ timeout: 60_000 });
    await context.setOffline(true);
    await openPhotos(page);
    const buffer = await readFile(join(import.meta.dirname, "../data/photos/scene.heic"));
    await choose(page, { name: "scene.heic", mimeType: "image/heic", buffer });
    await expect(pieces(page).first()).toBeVisible({ timeout: 60_000 });
    const downloading = page.waitForEvent("download");
    await page.getByText("Before you take it").click();
    await button(page, "Save the cards to print").click();
    await downloading;
  });
});

test("what the ruler says of the printed line goes into every size", async ({ page }) => {
  await openPhotos(page);
  const ruler = page.getByRole("textbox", { name: /^What your ruler says/ });
  await ruler.fill("4");
  await ruler.blur();
  await expect(main(page).getByText(/^That is far from what it should be/)).toBeVisible();
  await ruler.fill("5 7/8");
  await choose(page, await file());
  await expect(pieces(page).filter({ hasText: "Strip" })).toContainText("2⅜ × 10¾ in", { timeout: 30_000 });
});
