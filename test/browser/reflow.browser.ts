import type { Page } from "@playwright/test";
import sharp from "sharp";
import { openKeptBack } from "./smallBack.ts";
import { expect, expectNothingClipped, test } from "./verso.ts";

/** A page of 1280 px enlarged four times, or a narrow phone. */
const narrow = { width: 320, height: 640 };

const plain = (colour: string) =>
  sharp({ create: { width: 240, height: 320, channels: 3, background: colour } })
    .jpeg()
    .toBuffer();

const words = {
  en: { sideBySide: "Plans side by side" },
  de: { sideBySide: "Pläne nebeneinander" },
};

for (const [locale, said] of Object.entries(words))
  test.describe(locale, () => {
    test.use({ locale: locale === "de" ? "de-DE" : "en-US", viewport: narrow, reducedMotion: "reduce" });

    test("at 320 px no page scrolls sideways and no text is cut off, in forced colors too", async ({
      page,
    }) => {
      test.setTimeout(120_000);
      const rows = new Map([[0, await plain("#b5694b")]]);
      await openKeptBack(page, { step: "sew", pictures: { rows, top: await plain("#2b3a4f") } });
      const look = (what: string) => expectWhole(page, what);
      await look("sew");
      await page.goto(page.url().replace(/[a-z]+$/, "plan"));
      await expect(page.locator("main svg.cloth").first()).toBeVisible();
      await look("plan");
      await page.getByRole("button", { name: said.sideBySide }).click();
      await look("side by side");
      for (const step of ["size", "leftovers", "photo", "settings"]) {
        await page.goto(page.url().replace(/[a-z]+$/, step));
        await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
        for (const closed of await page.locator("main details:not([open]) > summary").all())
          if (await closed.isVisible()) await closed.click();
        await look(step);
      }
      await page.goto("./#/");
      await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
      await look("projects");
    });
  });

async function expectWhole(page: Page, what: string): Promise<void> {
  for (const forcedColors of ["none", "active"] as const) {
    await page.emulateMedia({ forcedColors });
    await test.step(`${what}, forced colors ${forcedColors}`, () => expectNothingClipped(page, narrow.width));
    if (process.env.VERSO_LOOK)
      await page.screenshot({
        path: `${process.env.VERSO_LOOK}/${what}-${forcedColors}.png`,
        fullPage: true,
      });
  }
}
