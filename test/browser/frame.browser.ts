import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { testAlone } from "./alone.ts";
import { expect, expectAccessible, looks, screenSizes } from "./verso.ts";

// The frame alone, with made-up pages and a store that does what a test says.
const test = testAlone("frame", { "screens/index.ts": "screens.tsx" });

const steps = (page: Page) => page.getByRole("navigation", { name: "Steps of the job" });

test("the steps are links in their order, and the one she is at is marked", async ({ page }) => {
  await page.goto("./#/there/leftovers");
  await expect(steps(page).getByRole("link")).toHaveText(["Size", "Leftovers", "Plan", "Sew"]);
  await expect(steps(page).locator("[aria-current=page]")).toHaveText("Leftovers");
  await steps(page).getByRole("link", { name: "Size" }).click();
  await expect(page).toHaveURL(/#\/there\/size$/);
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
  await expect(page).toHaveTitle("Size · Garden room back · Verso");
  await page.goBack();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Leftovers");
});

test("an address that means nothing leads to the start", async ({ page }) => {
  for (const hash of ["#/", "#/there/nowhere", "#/there", "#/%E0%A4%A/size", "#nonsense"]) {
    await page.goto(`./${hash}`);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Start");
  }
});

test("a project that isn't there is said so, with a way on", async ({ page }) => {
  await page.goto("./#/gone/size");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(
    "There is no such project on this device.",
  );
  await page.getByRole("link", { name: "Go to your projects" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Start");
});

test("where storage does not answer, nothing is said to be gone, and it can be tried again", async ({
  page,
}) => {
  await page.goto("./#/held/size");
  const title = page.getByRole("heading", { level: 1 });
  await expect(title).toHaveText("This project can't be read just now.");
  await expect(page.getByText("Nothing of yours was changed.")).toBeVisible();
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(title).toHaveText("Size");
});

test("by keyboard alone: past the bar, along the steps, through undo and redo", async ({ page }) => {
  await page.goto("./#/there/size");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Size");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Skip to the page" })).toBeFocused();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Rename" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByTestId("title")).toHaveText("Garden room back, Size");
  await page.keyboard.press("Control+z");
  await expect(page.getByTestId("title")).toHaveText("Garden room back");
  await page.keyboard.press("Control+Shift+Z");
  await expect(page.getByTestId("title")).toHaveText("Garden room back, Size");
  for (const name of ["Settings", "Undo", "Sew", "Plan", "Leftovers"]) {
    await page.keyboard.press("Shift+Tab");
    await expect(page.locator(":focus")).toHaveText(name);
  }
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Leftovers");
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
});

test("in a field the keys undo letters, not edits", async ({ page }) => {
  await page.goto("./#/there/size");
  await page.getByRole("button", { name: "Rename" }).click();
  await page.getByLabel("Note").fill("later");
  await page.keyboard.press("Control+z");
  await expect(page.getByTestId("title")).toHaveText("Garden room back, Size");
});

test("undo and redo are there when there is something to go back to", async ({ page }) => {
  await page.goto("./#/there/size");
  const [undo, redo] = [
    page.getByRole("button", { name: "Undo" }),
    page.getByRole("button", { name: "Redo" }),
  ];
  await expect(undo).toBeDisabled();
  await expect(redo).toBeDisabled();
  await page.getByRole("button", { name: "Rename" }).click();
  await undo.click();
  await expect(page.getByTestId("title")).toHaveText("Garden room back");
  await expect(undo).toBeDisabled();
  await redo.click();
  await expect(page.getByTestId("title")).toHaveText("Garden room back, Size");
});

test("saving is silent while it is steady, and NOT SAVED stays with a way out", async ({ page }) => {
  await page.goto("./#/there/size");
  await page.evaluate(() => window.say({ saving: { kind: "saving" } }));
  await expect(page.getByRole("status").filter({ hasText: /\S/ })).toHaveCount(0);

  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "full" } }));
  const notice = page.getByRole("status").filter({ hasText: "NOT SAVED" });
  await expect(notice).toContainText("This device has no room left.");
  await steps(page).getByRole("link", { name: "Leftovers" }).click();
  await expect(notice).toBeVisible();

  const downloading = page.waitForEvent("download");
  await notice.getByRole("button", { name: "Save a file now" }).click();
  const file = await downloading;
  expect(file.suggestedFilename()).toBe("Garden room back.verso");
  expect(readFileSync(await file.path(), "utf8")).toBe("the project");
  await expect(notice).toBeVisible();

  await notice.getByRole("button", { name: "Try again" }).click();
  await expect(notice).toHaveCount(0);
});

test("before she leaves with something that isn't kept, the browser asks", async ({ page }) => {
  await page.goto("./#/there/size");
  // A browser asks only where she has done something.
  await page.getByRole("button", { name: "Rename" }).click();
  const asked: string[] = [];
  page.on("dialog", (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await page.reload();
  expect(asked).toEqual([]);
  await page.getByRole("button", { name: "Rename" }).click();
  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "failed" } }));
  await expect(page.getByRole("status").filter({ hasText: "NOT SAVED" })).toBeVisible();
  await page.reload();
  expect(asked).toEqual(["beforeunload"]);
});

test("what else isn't as it was is said in words", async ({ page }) => {
  await page.goto("./#/there/size");
  const notice = page.getByRole("status").filter({ hasText: /\S/ });
  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "newer-tab" } }));
  await expect(notice.getByRole("button", { name: "Load this page again" })).toBeVisible();
  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "no-storage" } }));
  await expect(notice).toContainText("Save a file before you leave.");
  await page.evaluate(() => window.say({ saving: { kind: "steady" }, readOnly: true }));
  await expect(notice).toContainText("made by a later Verso");
  await page.evaluate(() => window.say({ readOnly: false, problems: [{ kind: "edits-missing" }] }));
  await expect(notice).toContainText("could not be read");
  await page.evaluate(() => window.say({ gone: true }));
  await expect(notice).toContainText("removed in another tab");
  await expect(notice.getByRole("button", { name: "Save a file now" })).toBeVisible();
});

test("a page that breaks leaves the frame, and a way to keep everything", async ({ page, troubles }) => {
  await page.goto("./#/there/sew");
  await page.getByRole("button", { name: "Rename" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("This page stopped working.");
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save a file now" }).click();
  await downloading;
  await steps(page).getByRole("link", { name: "Size" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Size");
  expect(troubles.splice(0).join("\n")).toContain("broken on purpose");
});

test("a page that can't be fetched says why that may be", async ({ page, troubles }) => {
  await page.goto("./#/there/plan");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("This page could not be fetched.");
  await expect(page.getByRole("button", { name: "Load this page again" })).toBeVisible();
  expect(troubles.splice(0).join("\n")).toContain("dynamically imported module");
});

test("on a phone the steps lie within the thumb's reach, large enough to meet", async ({ page }) => {
  await page.setViewportSize(screenSizes.phone);
  await page.goto("./#/there/size");
  for (const link of await steps(page).getByRole("link").all()) {
    const box = await link.boundingBox();
    expect(box?.y).toBeGreaterThan(screenSizes.phone.height - 72);
    expect(box?.height).toBeGreaterThanOrEqual(48);
    expect(box?.width).toBeGreaterThanOrEqual(48);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(screenSizes.phone.width);
});

test("enlarged to 400 % nothing runs out of the side", async ({ page }) => {
  // 1280 pixels at 400 % (WCAG 2.2, 1.4.10).
  await page.setViewportSize({ width: 320, height: 256 });
  await page.goto("./#/there/size");
  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "full" } }));
  await expect(page.getByRole("status").filter({ hasText: "NOT SAVED" })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
});

test("every text of the frame comes from the words", async ({ page }) => {
  await page.goto("./?words=en-XA#/there/size");
  await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "failed" } }));
  await expect(page.getByRole("status").filter({ hasText: "⟦" })).toBeVisible();
  const texts = await page.evaluate(() =>
    [...document.querySelectorAll("header a, header button, [role=status] strong, [role=status] button")].map(
      (element) => element.textContent,
    ),
  );
  expect(texts.length).toBeGreaterThan(8);
  for (const text of texts) expect(text).toMatch(/^⟦.*⟧$/);
});

test("on paper there is nothing to press", async ({ page }) => {
  await page.goto("./#/there/size");
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(page.getByRole("button").filter({ visible: true })).toHaveCount(0);
  await expect(page.getByRole("banner")).toBeHidden();
});

test("with colours of her own the step she is at is still marked", async ({ page }) => {
  await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
  await page.goto("./#/there/size");
  const widths = await steps(page)
    .getByRole("link")
    .evaluateAll((links) => links.map((link) => getComputedStyle(link).fontWeight));
  expect(widths).toEqual(["650", "400", "400", "400"]);
  expect(
    await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--quick")),
  ).toMatch(/^0m?s$/);
});

for (const [name, viewport] of Object.entries(looks))
  test(`nothing keeps anyone out of the frame, light or dark: ${name}`, async ({ page }) => {
    await page.setViewportSize(viewport);
    for (const hash of ["#/gone/size", "#/there/leftovers"]) {
      await page.goto(`./${hash}`);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      if (hash.startsWith("#/there"))
        await page.evaluate(() => window.say({ saving: { kind: "not-saved", why: "failed" } }));
      await expectAccessible(page);
    }
  });
