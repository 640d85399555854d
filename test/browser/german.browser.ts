import type { Page } from "@playwright/test";
import { openKeptBack } from "./smallBack.ts";
import { expect, expectNothingClipped, expectUsable, reloadKept, screenSizes, test } from "./verso.ts";

/** The app as it is for who reads German: the sample, its plan, its steps, and a back of her own in centimetres. */

test.use({ locale: "de-DE" });

const theBack = (page: Page) => page.getByRole("img", { name: /^Zeichnung der Rückseite/ }).first();

/** Words that no German page says; names she gave are her own. */
const english =
  /\b(the|and|with|from|this|your|you|are|not|pieces?|strips?|seams?|cloth|sewn|rows?|about|back|save|size)\b/i;

async function expectGerman(page: Page): Promise<void> {
  const said = await page.evaluate(() =>
    [...document.body.querySelectorAll("*")].flatMap((element) =>
      [...element.childNodes].flatMap((node) => (node instanceof Text ? [node.data] : [])),
    ),
  );
  const named = await page.evaluate(() =>
    [...document.querySelectorAll("[aria-label], [title], [placeholder]")].flatMap((element) =>
      ["aria-label", "title", "placeholder"].map((name) => element.getAttribute(name) ?? ""),
    ),
  );
  // Her choice of language names each in its own words.
  const left = [...said, ...named].filter(
    (text) => english.test(text.replaceAll(/Small back/g, "")) && !/^English, /.test(text),
  );
  expect(left).toEqual([]);
}

for (const [name, viewport] of Object.entries({ phone: screenSizes.phone, laptop: screenSizes.laptop }))
  test(`the sample is planned and sewn in German: ${name}`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.setViewportSize(viewport);
    const look = async () => {
      await expectGerman(page);
      await expectNothingClipped(page, viewport.width);
      // Colours are those of the English pages; names are German at any size.
      if (name === "phone") await expectUsable(page);
    };
    await page.goto("./");
    await expect(page.locator("html")).toHaveAttribute("lang", "de");
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await look();
    await page.getByRole("button", { name: "Das Beispiel ausprobieren" }).click();
    await expect(page.getByRole("heading", { level: 1, name: "Plan" })).toBeVisible();
    await look();
    await openKeptBack(page, { step: "sew" });
    await expect(page.getByRole("heading", { level: 1, name: /^Schritt 1 von/ })).toBeVisible();
    await page.getByRole("button", { name: "Fertig, nächster Schritt" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^Schritt 2 von/ })).toBeVisible();
    await look();
    await page.goto(page.url().replace(/[a-z]+$/, "plan"));
    await expect(theBack(page)).toBeVisible();
    await look();
    for (const step of ["size", "leftovers", "photo", "settings"]) {
      await page.goto(page.url().replace(/[a-z]+$/, step));
      await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
      await look();
    }
    await page.setViewportSize({ width: 320, height: viewport.height });
    await expectNothingClipped(page, 320);
  });

test("a back of her own begins in centimetres, and a decimal comma is read and written", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Neue Rückseite" }).click();
  await expect(page.getByRole("radio", { name: "Zentimeter" })).toBeChecked();
  await page.getByRole("textbox", { name: "Breite, Mitte" }).fill("90,5");
  await page.getByRole("textbox", { name: "Höhe, Mitte" }).fill("110 cm");
  await expect(theBack(page)).toBeVisible();
  await expect(page.getByText(/110,66\s×\s130,16\scm|110,5\s×|,\d+\s×/).first()).toBeVisible();
  await page.goto(page.url().replace(/[a-z]+$/, "leftovers"));
  const line = page.getByRole("textbox", { name: "Ein Rest, wie du ihn notieren würdest" });
  for (const [typed, understood] of [
    ["4 Streifen 6,5 x 80 petrol", /^4 Streifen, 6,5\s×\s80\scm, petrol\.$/],
    ["zwei Quadrate 2½ Inch moos", /^2 Quadrate, 6,35\s×\s6,35\scm, moos\.$/],
  ] as const) {
    await line.fill(typed);
    await expect(page.getByText(understood).first()).toBeVisible();
    await line.press("Enter");
    await expect(line).toHaveValue("");
  }
});

test("German is chosen in Settings, stays, and is there without a network", async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    locale: "en-GB",
    serviceWorkers: "allow",
    ...(baseURL ? { baseURL } : {}),
  });
  const page = await context.newPage();
  await page.goto("./#/settings");
  await expect(page.getByText("Ready: all of Verso is on this device.")).toBeVisible({ timeout: 30_000 });
  await context.setOffline(true);
  await page.getByText("Deutsch", { exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Einstellungen" })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe("de");
  await reloadKept(page);
  await expect(page.getByRole("heading", { level: 1, name: "Einstellungen" })).toBeVisible();
  await page.getByText("English, American", { exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Settings" })).toBeVisible();
  await context.close();
});

test("English does not fetch German", async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    locale: "en-US",
    serviceWorkers: "block",
    ...(baseURL ? { baseURL } : {}),
  });
  const page = await context.newPage();
  const fetched: string[] = [];
  page.on("request", (request) => fetched.push(request.url()));
  await page.goto("./");
  await expect(page.getByRole("button", { name: "Try the sample" })).toBeVisible();
  expect(fetched.filter((url) => /german/.test(url))).toEqual([]);
  await context.close();
});
