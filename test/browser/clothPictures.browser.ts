import type { Page } from "@playwright/test";
import sharp from "sharp";
import { drawing, openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, screenSizes, test } from "./verso.ts";

const view = (page: Page, name: string) =>
  page.getByRole("radiogroup", { name: "What the drawing shows" }).getByRole("radio", { name });

/** A cut-out such as a photo gives: so many pixels, in stripes across that grow wider downwards. */
function striped(width: number, height: number, [one, other]: readonly [string, string]): Promise<Buffer> {
  const stripes = Array.from({ length: 6 }, (_, n) => {
    const [from, tall] = [(n * n * height) / 36, ((2 * n + 1) * height) / 72];
    return `<rect y="${from}" width="${width}" height="${tall}" fill="${other}"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="${one}"/>${stripes.join("")}</svg>`;
  return sharp(Buffer.from(svg)).jpeg({ quality: 90 }).toBuffer();
}

/** Clay squares, ink strips photographed folded, moss rectangles; the rest is not photographed. */
async function pictures(): Promise<ReadonlyMap<number, Buffer>> {
  return new Map([
    [0, await striped(320, 320, ["#b5694b", "#f3d9b0"])],
    [1, await striped(53, 320, ["#2b3a4f", "#9fb4cc"])],
    [2, await striped(208, 320, ["#6f7d4f", "#e7e9c9"])],
  ]);
}

/** How large the pictures lie in the drawing, in inches, the shorter side first; each size once. */
const laid = (page: Page) =>
  drawing(page).evaluate((svg) => {
    // The back is 34 in tall.
    const inches = Number(svg.getAttribute("viewBox")?.split(" ")[3]) / 34;
    const round = (length: SVGAnimatedLength) => Math.round((10 * length.baseVal.value) / inches) / 10;
    const sizes = [...svg.querySelectorAll("image")].map(
      (one) => `${round(one.width)} × ${round(one.height)}`,
    );
    return [...new Set(sizes)].sort();
  }) as Promise<string[]>;

test("the plan shows her own cloth as large as it is, or its plain colors; so does Sew", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await page.addInitScript(() => {
    const release = URL.revokeObjectURL.bind(URL);
    const released: string[] = [];
    URL.revokeObjectURL = (address) => {
      released.push(address);
      sessionStorage.setItem("released", JSON.stringify(released));
      release(address);
    };
  });
  await openKeptBack(page, { style: "all-over", pictures: { rows: await pictures() } });
  await expect(drawing(page).locator("image").first()).toBeVisible();
  await expect(view(page, "Your cloth")).toBeChecked();
  const sizes = await laid(page);
  expect(sizes.length).toBeGreaterThan(0);
  // The strip was folded in half: its picture lies on it twice.
  for (const size of sizes) expect(["5 × 5", "2.5 × 15.1", "6.5 × 10"]).toContain(size);
  // All of them can be fetched and unpacked.
  const addresses = await drawing(page).evaluate((svg) => [
    ...new Set([...svg.querySelectorAll("image")].map((one) => one.getAttribute("href") ?? "")),
  ]);
  expect(addresses.every((address) => address.startsWith("blob:"))).toBe(true);
  await expectAccessible(page);

  await view(page, "Color").click();
  await expect(drawing(page).locator("image")).toHaveCount(0);
  await view(page, "Your cloth").click();
  await expect(drawing(page).locator("image").first()).toBeVisible();

  await page.goto(page.url().replace(/plan$/, "sew"));
  const step = page.getByRole("main").locator("svg[role=img]").first();
  await expect(step).toBeVisible();
  await page.goto(page.url().replace(/sew$/, "size"));
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  // What is no longer shown is let go.
  const released = () => page.evaluate(() => JSON.parse(sessionStorage.getItem("released") ?? "[]"));
  await expect.poll(released).toEqual(expect.arrayContaining(addresses));
});

test("without pictures there is one choice less", async ({ page }) => {
  await openKeptBack(page);
  await expect(view(page, "Color")).toBeChecked();
  await expect(view(page, "Your cloth")).toHaveCount(0);
});
