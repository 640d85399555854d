import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { openKeptBack } from "./smallBack.ts";
import { expect, expectAccessible, expectFitsBetween, looks, screenSizes, test } from "./verso.ts";

const steps = ["size", "leftovers", "photo", "plan", "sew", "settings"] as const;

/** The sample, opened from the start page; gives the way to each of its pages. */
async function openSample(page: Page, search = ""): Promise<(step: (typeof steps)[number]) => Promise<void>> {
  await page.goto(`./${search}`);
  const ways = page.getByRole("main").getByRole("button");
  await expect(ways.first()).toBeVisible();
  await ways.first().click();
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  const id = new URL(page.url()).hash.split("/")[1];
  return async (step) => {
    await page.goto(`./${search}#/${id}/${step}`);
    await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
  };
}

const cloth = (page: Page) =>
  page.getByRole("main").locator("svg.cloth, .cloth svg").filter({ visible: true });

// Both themes on the same page: only the colours differ.
for (const [name, viewport] of Object.entries(looks))
  test(`nothing keeps anyone out of the pages, light or dark: ${name}`, async ({ page }) => {
    test.setTimeout(180_000);
    await page.setViewportSize(viewport);
    await openKeptBack(page);
    for (const step of steps) {
      await page.goto(page.url().replace(/[a-z]+$/, step));
      await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
      if (step === "plan") await expect(cloth(page).first()).toBeVisible();
      await expectAccessible(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), step).toBe(viewport.width);
      await expectFitsBetween(page);
    }
    await page.goto("./#/");
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await expectAccessible(page);
  });

test.describe("of the sample", () => {
  test.use({ searches: true });

  test("on a phone the drawing comes first", async ({ page }) => {
    await page.setViewportSize(screenSizes.phone);
    const goTo = await openSample(page);
    for (const step of ["size", "plan"] as const) {
      await goTo(step);
      const drawing = cloth(page).first();
      await expect(drawing).toBeVisible({ timeout: 30_000 });
      // The radio of a style is in its drawing.
      const fields = page
        .getByRole("main")
        .locator("input:not([type=radio]), select, textarea")
        .filter({ visible: true });
      // A page that is still coming in may stand lower for a moment.
      await expect(async () => {
        const top = (await drawing.boundingBox())?.y ?? Number.POSITIVE_INFINITY;
        expect(top, step).toBeLessThan(screenSizes.phone.height / 2);
        if ((await fields.count()) > 0)
          expect(top, step).toBeLessThan((await fields.first().boundingBox())?.y ?? 0);
      }).toPass({ timeout: 15_000 });
    }
  });

  test.describe("once it is kept", () => {
    test.use({ serviceWorkers: "allow" });

    test("after the first visit every page opens without a network", async ({ page, context }) => {
      const goTo = await openSample(page);
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await context.setOffline(true);
      for (const step of steps) {
        await goTo(step);
        await page.reload();
        await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
      }
      await goTo("plan");
      // The solver, too, is kept.
      await expect(cloth(page).first()).toBeVisible({ timeout: 30_000 });
    });
  });

  test("every text of the pages comes from the words", async ({ page }) => {
    const goTo = await openSample(page, "?words=en-XA");
    // Names that she gave are her own.
    const table = readFileSync(join(import.meta.dirname, "../../samples/garden-room.csv"), "utf8");
    const hers = new Set(table.split(/[,\n]/).map((cell) => cell.trim()));
    for (const step of steps) {
      await goTo(step);
      if (step === "plan") await expect(cloth(page).first()).toBeVisible({ timeout: 30_000 });
      const texts = await page.evaluate(textsWithoutBrackets);
      expect(
        texts.filter((text) => !hers.has(text)),
        step,
      ).toEqual([]);
    }
  });
});

/** Runs in the page: what stands in it outside of ⟦ ⟧. */
function textsWithoutBrackets(): string[] {
  const bare = (text: string) => {
    let [left, before] = [text, ""];
    while (before !== left) [before, left] = [left, left.replace(/⟦[^⟦⟧]*⟧/g, "")];
    return left.trim();
  };
  const holdsText = (element: Element) =>
    [...element.childNodes].some(
      (node) => node.nodeType === Node.TEXT_NODE && /\p{L}/u.test(node.nodeValue ?? ""),
    );
  return [...document.querySelectorAll("body *:not(script, style)")]
    .filter(holdsText)
    .map((element) => bare(element.textContent ?? ""))
    .filter((text) => /\p{L}/u.test(text));
}
