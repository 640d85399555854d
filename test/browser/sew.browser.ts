import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { documentOf, newProject, readPlan, writePlan, writeProject } from "../../src/files/index.ts";
import { handMadePlan } from "../generators/handMadePlan.ts";
import { expect, expectAccessible, looks, reloadKept, screenSizes, test } from "./verso.ts";

// Ten steps: a unit and a slab, a section, the sections together. The fifth takes the first.
const plan = documentOf(handMadePlan());

function projectFile(kept: boolean): Buffer {
  const project = newProject({ title: "Kept back", createdAt: 0 });
  const text = writePlan(plan);
  const { style, seed, effort } = plan;
  const keptPlan = { text, job: "of another day", style, seed, effort, keptAt: 0 };
  return Buffer.from(writeProject({ ...project, plan: kept ? keptPlan : null }, 0));
}

/** Opens the project's file from the start page and goes to Sew. */
async function openSew(page: Page, kept = true): Promise<void> {
  await page.goto("./");
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "kept.verso", mimeType: "application/zip", buffer: projectFile(kept) });
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, "sew"));
  await expect(page.getByRole("main").getByRole("heading", { level: 1 })).toBeVisible();
}

const main = (page: Page) => page.getByRole("main");
const heading = (page: Page) => main(page).getByRole("heading", { level: 1 });
const progress = (page: Page) => main(page).getByRole("status");
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const doneAndNext = (page: Page) => button(page, "Done, next step");
const partsLaid = (page: Page) => main(page).getByRole("img", { name: /as they are laid out/ });
const box = (page: Page, step: number) => page.getByRole("checkbox", { name: `Unit ${step} is done` });
const row = (page: Page, step: number) => page.getByRole("listitem").filter({ has: box(page, step) });

/** The list and every part of it, from the outside in. */
async function openAll(page: Page): Promise<void> {
  for (const part of await main(page).locator("details").all())
    if (!(await part.evaluate((details: HTMLDetailsElement) => details.open)))
      await part.locator("> summary").click();
}

test("steps are ticked one after the other, kept over a reload, and undone", async ({ page }) => {
  await openSew(page);
  await expect(heading(page)).toHaveText("Step 1 of 10");
  await expect(progress(page)).toHaveText("10 steps to sew.");
  await doneAndNext(page).click();
  await doneAndNext(page).click();
  await expect(heading(page)).toHaveText("Step 3 of 10");
  await expect(heading(page)).toBeFocused();
  await expect(progress(page)).toHaveText("2 of 10 steps done.");

  await reloadKept(page);
  await expect(heading(page)).toHaveText("Step 3 of 10");
  await expect(progress(page)).toHaveText("2 of 10 steps done.");

  await doneAndNext(page).click();
  await expect(heading(page)).toHaveText("Step 4 of 10");
  await button(page, "Undo").click();
  await expect(heading(page)).toHaveText("Step 3 of 10");
  await expect(progress(page)).toHaveText("2 of 10 steps done.");
  await button(page, "Redo").click();
  await expect(progress(page)).toHaveText("3 of 10 steps done.");
  await reloadKept(page);
  await expect(progress(page)).toHaveText("3 of 10 steps done.");
});

test("the size to cut is the largest thing, and beside it stands what is laid out", async ({ page }) => {
  await openSew(page);
  for (const viewport of [...Object.values(screenSizes), { width: 320, height: 640 }]) {
    await page.setViewportSize(viewport);
    await expect(partsLaid(page)).toBeVisible();
    const largest = await main(page).evaluate((page) => {
      const sized = [...page.querySelectorAll("*")].filter(
        (element) =>
          element.checkVisibility() &&
          [...element.childNodes].some(
            ({ nodeType, data = "" }: Node & { data?: string }) => nodeType === 3 && data.trim() !== "",
          ),
      );
      const size = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize);
      const most = Math.max(...sized.map(size));
      return { most, texts: sized.filter((element) => size(element) === most).map((one) => one.textContent) };
    });
    expect(largest.most, JSON.stringify(viewport)).toBeGreaterThanOrEqual(36);
    for (const text of largest.texts) expect(text).toMatch(/×/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  }
});

test("a step that takes one not done yet says so, and leads there", async ({ page }) => {
  await openSew(page);
  await openAll(page);
  await expect(row(page, 5)).toContainText("after unit 1");
  await row(page, 5).getByRole("button").click();
  await expect(heading(page)).toHaveText("Step 5 of 10");
  await expect(main(page)).toContainText("This step takes unit 1, which is not done yet. Sew it first.");
  await button(page, "Go to unit 1").click();
  await expect(heading(page)).toHaveText("Step 1 of 10");
  await doneAndNext(page).click();
  // The part she left lies folded again.
  await expect(row(page, 5)).toHaveCount(0);
  await openAll(page);
  await row(page, 5).getByRole("button").click();
  await expect(main(page)).not.toContainText("not done yet");
  await expect(row(page, 5)).not.toContainText("after");
});

test("in the list they are ticked without turning the page, and what is done is said in words", async ({
  page,
}) => {
  await openSew(page);
  await expect(row(page, 1)).toHaveAttribute("aria-current", "step");
  await box(page, 1).check();
  await expect(heading(page)).toHaveText("Step 1 of 10");
  await expect(row(page, 1)).toContainText("done");
  await expect(main(page).locator("summary").filter({ hasText: "Units and slabs" })).toContainText(
    "1 of 2 steps done",
  );
  await expect(progress(page)).toHaveText("1 of 10 steps done.");
  await button(page, "Next open step").click();
  await expect(heading(page)).toHaveText("Step 2 of 10");
  await box(page, 1).uncheck();
  await expect(progress(page)).toHaveText("10 steps to sew.");
});

test("to the end, where the back is sewn; cautions are said once", async ({ page }) => {
  await openSew(page);
  const texts: string[] = [];
  for (let step = 1; step <= 10; step++) {
    await expect(heading(page)).toHaveText(`Step ${step} of 10`);
    await expect(partsLaid(page)).toBeVisible();
    texts.push((await main(page).textContent()) ?? "");
    await button(page, step < 10 ? "Done, next step" : "Done").click();
  }
  await expect(progress(page)).toHaveText("The back is sewn.");
  for (const tool of ["Rotary cutter:", "Iron:"])
    expect(texts.filter((text) => text.includes(tool))).toHaveLength(1);
  await button(page, "Not done after all").click();
  await expect(progress(page)).toHaveText("9 of 10 steps done.");
});

test("a plan whose leftovers changed since is said to be as it was kept", async ({ page }) => {
  await openSew(page);
  await expect(main(page)).toContainText("These steps go with the plan as it was kept.");
});

test("without a kept plan it is said where one is made", async ({ page }) => {
  await openSew(page, false);
  await expect(heading(page)).toHaveText("No plan is kept yet");
  await expectAccessible(page);
  await page.getByRole("link", { name: "Go to Plan" }).click();
  await expect(page).toHaveURL(/\/plan$/);
});

test("by keyboard alone: done, back, the list, undo", async ({ page }) => {
  await openSew(page);
  const tabTo = async (name: string) => {
    for (let presses = 0; presses < 40; presses++) {
      const reached = await page.evaluate(() => {
        const { activeElement } = document;
        return activeElement?.getAttribute("aria-label") ?? activeElement?.textContent ?? "";
      });
      if (reached.startsWith(name)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`no way by Tab to ${name}`);
  };
  await tabTo("Done, next step");
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Step 2 of 10");
  // From the heading the next thing to do is near.
  for (const name of ["Step before", "Done, next step"]) {
    await page.keyboard.press("Tab");
    await expect(button(page, name)).toBeFocused();
  }
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Step 3 of 10");
  await tabTo("Unit 3 is done");
  await page.keyboard.press("Space");
  await expect(progress(page)).toHaveText("3 of 10 steps done.");
  await page.keyboard.press("Control+z");
  await expect(progress(page)).toHaveText("2 of 10 steps done.");
  await tabTo("Section 2");
  await page.keyboard.press("Enter");
  await tabTo("Unit 4 is done");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Step 4 of 10");
  await expect(heading(page)).toBeFocused();
});

test.describe("by taps alone", () => {
  test.use({ hasTouch: true, isMobile: true, viewport: screenSizes.phone });

  test("on a phone, the next step in thumb's reach", async ({ page }) => {
    await openSew(page);
    const place = await doneAndNext(page).boundingBox();
    expect(place?.height).toBeGreaterThanOrEqual(48);
    expect(place?.y).toBeGreaterThan(screenSizes.phone.height * 0.8);
    await doneAndNext(page).tap();
    await doneAndNext(page).tap();
    await expect(heading(page)).toHaveText("Step 3 of 10");
    await expect(box(page, 3)).toBeHidden();
    await main(page).locator("summary").filter({ hasText: "All steps" }).tap();
    for (const one of await main(page).locator("button, summary, label").filter({ visible: true }).all())
      expect((await one.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    await box(page, 3).tap();
    await expect(progress(page)).toHaveText("3 of 10 steps done.");
    await button(page, "Undo").tap();
    await expect(progress(page)).toHaveText("2 of 10 steps done.");
    await button(page, "Step before").tap();
    await expect(heading(page)).toHaveText("Step 2 of 10");
  });
});

for (const [name, viewport] of Object.entries(looks))
  test(`nothing keeps anyone out of Sew, light or dark: ${name}`, async ({ page }) => {
    await page.setViewportSize(viewport);
    await openSew(page);
    await doneAndNext(page).click();
    await openAll(page);
    await row(page, 5).getByRole("button").click();
    await expect(heading(page)).toHaveText("Step 5 of 10");
    await expect(partsLaid(page)).toBeVisible();
    await expect(main(page).getByRole("img", { name: /unit 5 framed/ })).toBeVisible();
    await expectAccessible(page);
  });

test("for the time she has she gets steps that end tidy, one after the other", async ({ page }) => {
  await openSew(page);
  await page.getByText("How long have you got?").click();
  await page.getByRole("button", { name: "I have 45 minutes" }).click();
  const sitting = main(page).getByRole("region", { name: "How long have you got?" });
  await expect(sitting).toContainText(/\d steps? for now/);
  const steps = await sitting.getByRole("listitem").count();
  for (let step = 0; step < steps; step++) await doneAndNext(page).click();
  await expect(sitting).toContainText("That is all for now. No row is left half sewn.");
  await expectAccessible(page);
  await button(page, "Back to all steps").click();
  await expect(sitting).toHaveCount(0);
  await expect(progress(page)).toHaveText(`${steps} of 10 steps done.`);
});

test("while she sews the screen stays awake, and no longer", async ({ page }) => {
  await page.addInitScript(() => {
    const count = (by: number) => {
      const { dataset } = document.documentElement;
      dataset.awake = String(Number(dataset.awake ?? 0) + by);
    };
    Object.defineProperty(navigator, "wakeLock", {
      value: {
        request: async () => {
          count(1);
          return { release: async () => count(-1) };
        },
      },
    });
  });
  await openSew(page);
  const awake = () => page.evaluate(() => document.documentElement.dataset.awake);
  await expect.poll(awake).toBe("1");
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await expect.poll(awake).toBe("0");
});

test("whatever there is to press in sewing is large enough for a hand with cloth in it", async ({ page }) => {
  await page.setViewportSize(screenSizes.tablet);
  await openSew(page);
  await openAll(page);
  await page.getByText("How long have you got?").click();
  const small = await main(page)
    .locator("button, summary, label, a")
    .evaluateAll((targets) =>
      targets
        .map((target) => ({ text: target.textContent, height: target.getBoundingClientRect().height }))
        .filter(({ height }) => height > 0 && height < 48),
    );
  expect(small).toEqual([]);
});

/** The file that a button gives. */
async function given(page: Page, name: string): Promise<{ readonly file: string; readonly bytes: Buffer }> {
  const download = page.waitForEvent("download");
  await button(page, name).click();
  const file = await download;
  return { file: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

test("the plan leaves as a picture, a drawing to scale, a plan file and a table", async ({ page }) => {
  await openSew(page);
  await page.getByText("Take it with you").click();
  const png = await given(page, "Picture (PNG)");
  expect(png.file).toBe("Kept back.png");
  expect([...png.bytes.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
  // Its sides in pixels, as a PNG begins.
  expect(Math.max(png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20))).toBe(3000);
  const svg = (await given(page, "Drawing to scale (SVG)")).bytes.toString();
  expect(svg).toContain("Seen from behind, as it is laid out to be sewn.");
  const json = (await given(page, "The plan (JSON)")).bytes.toString();
  expect(readPlan(json)).toEqual({ ok: true, value: plan });
  const table = await given(page, "Leftovers (CSV)");
  expect(table.file).toBe("Kept back, leftovers.csv");
  expect(table.bytes.toString()).toContain("kind,width,height");
});

test("where there is a share sheet the files go there, and nothing is saved beside", async ({ page }) => {
  await page.addInitScript(() => {
    Object.assign(navigator, {
      canShare: () => true,
      share: async ({ files: [file] }: { readonly files: readonly File[] }) => {
        document.documentElement.dataset.shared = file?.name;
      },
    });
  });
  let saved = 0;
  page.on("download", () => saved++);
  await openSew(page);
  await page.getByText("Take it with you").click();
  await button(page, "Share the picture (PNG)").click();
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset.shared)).toBe("Kept back.png");
  expect(saved).toBe(0);
});
