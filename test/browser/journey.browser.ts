import type { Locator, Page } from "@playwright/test";
import { expect, pauseBetweenTaps, reloadKept, test } from "./verso.ts";

test.use({ searches: true });

/** From nothing to a plan that is kept: what she does on the first evening, across all pages. */

const line = (page: Page) => page.getByRole("textbox", { name: "One leftover, as you would note it" });
const theBack = (page: Page) => page.getByRole("img", { name: /^Drawing of the back/ }).first();
const step = (page: Page, name: string) => page.getByRole("link", { name, exact: true });
const kept = (page: Page) => page.getByText("You keep this plan.");

const typed = [
  "6 squares 5 clay pot",
  "4 strips 2 1/2 x 31 teal dots",
  "2 blocks 9½ blocks of the top",
  "3 rectangles 10 x 14 moss",
  "strip 3 1/2 x 40 rainwater",
];

// Twenty-four pieces in five rows that can be read, and one that a spreadsheet has spoilt.
const table = [
  "kind\twidth\theight\tcount\tfabric",
  "square\t4 1/2\t4 1/2\t8\tapricot",
  "strip\t2-Jan\t30\t2\tink",
  "rectangle\t8\t12\t4\tfig",
  "square\t6 1/2\t6 1/2\t6\tsage leaf",
  "strip\t2 1/2\t42\t4\tink",
  "rectangle\t9\t20\t2\trainwater",
].join("\n");

async function newBack(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
}

async function giveSize(page: Page): Promise<void> {
  await page.getByRole("textbox", { name: "Width, middle" }).fill("36");
  await page.getByRole("textbox", { name: "Height, middle" }).fill("42");
  await expect(theBack(page)).toBeVisible();
}

async function typeLines(page: Page): Promise<void> {
  for (const text of typed) {
    await line(page).fill(text);
    await line(page).press("Enter");
    await expect(line(page)).toHaveValue("");
  }
}

async function paste(page: Page, text: string): Promise<void> {
  await line(page).focus();
  await line(page).evaluate((field, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text", pasted);
    field.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

/** As soon as there is a plan. */
async function stopped(page: Page, press: (button: Locator) => Promise<void>): Promise<void> {
  const stop = page.getByRole("button", { name: "Stop here" });
  await expect(stop).toBeEnabled({ timeout: 30_000 });
  await press(stop);
  await expect(page.getByText("Stopped. This is the best so far.")).toBeVisible();
}

/** What is drawn, colour by colour and place by place. */
function cloth(page: Page): Promise<string> {
  return theBack(page).evaluate((svg) =>
    [...svg.querySelectorAll("rect, path[fill]")].map((part) => part.outerHTML).join(""),
  );
}

test("forty leftovers typed and pasted, one mended, a plan kept: the same after a reload", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await newBack(page);
  await giveSize(page);
  await step(page, "Leftovers").click();
  await typeLines(page);
  await expect(page.getByText(/^16 pieces in 5 rows/)).toBeVisible();
  await paste(page, table);
  await expect(page.getByText(/^40 pieces in 10 rows/)).toBeVisible();

  const waits = page.getByRole("region", { name: /^1 row waits to be mended/ });
  await expect(waits).toContainText("1/2");
  await waits.getByRole("textbox", { name: "Width" }).fill("1 1/2");
  await waits.getByRole("textbox", { name: "Width" }).press("Enter");
  await expect(waits).toHaveCount(0);
  await expect(page.getByText(/^42 pieces in 11 rows/)).toBeVisible();

  await step(page, "Plan").click();
  await stopped(page, (stop) => stop.click());
  const before = await cloth(page);
  await page.getByRole("button", { name: "Keep this plan" }).click();
  await expect(kept(page)).toBeVisible();
  await reloadKept(page);
  await expect(kept(page)).toBeVisible();
  expect(await cloth(page)).toBe(before);
  await step(page, "Leftovers").click();
  await expect(page.getByText(/^42 pieces in 11 rows/)).toBeVisible();
});

test("undone step by step back to the empty back, and done again up to the same plan", async ({ page }) => {
  test.setTimeout(120_000);
  await newBack(page);
  await giveSize(page);
  await step(page, "Leftovers").click();
  await typeLines(page);
  await step(page, "Plan").click();
  await stopped(page, (stop) => stop.click());
  const before = await cloth(page);
  await page.getByRole("button", { name: "Keep this plan" }).click();
  await expect(kept(page)).toBeVisible();

  const undo = page.getByRole("button", { name: "Undo" });
  const redo = page.getByRole("button", { name: "Redo" });
  let undone = 0;
  while (await undo.isEnabled()) {
    await undo.click();
    undone++;
    expect(undone).toBeLessThan(40);
  }
  await step(page, "Leftovers").click();
  await expect(page.getByText(/pieces in/)).toHaveCount(0);
  await step(page, "Size").click();
  await expect(page.getByRole("textbox", { name: "Width, middle" })).toHaveValue("");

  for (let done = 0; done < undone; done++) await redo.click();
  await expect(redo).toBeDisabled();
  await expect(page.getByRole("textbox", { name: "Height, middle" })).toHaveValue("42");
  await step(page, "Plan").click();
  await expect(kept(page)).toBeVisible();
  expect(await cloth(page)).toBe(before);
});

test("two tabs that edit at once end the same", async ({ context, page }) => {
  await newBack(page);
  await giveSize(page);
  const other = await context.newPage();
  await other.goto(page.url().replace(/size$/, "leftovers"));
  await step(page, "Leftovers").click();
  await expect(line(page)).toBeVisible();
  await expect(line(other)).toBeVisible();
  await Promise.all([
    typeLines(page),
    (async () => {
      for (const text of ["8 squares 4 1/2 apricot", "4 rectangles 8 x 12 fig"]) {
        await line(other).fill(text);
        await line(other).press("Enter");
        await expect(line(other)).toHaveValue("");
      }
    })(),
  ]);
  for (const tab of [page, other]) await expect(tab.getByText(/^28 pieces in 7 rows/)).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  // Her own last line goes, not what the other tab has added meanwhile.
  for (const tab of [page, other]) {
    await expect(tab.getByText(/^27 pieces in 6 rows/)).toBeVisible();
    await expect(tab.getByText("apricot").first()).toBeVisible();
  }
});

test("by keyboard alone: from the start page to a kept plan", async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto("./");
  await tabTo(page, "New back");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Size" })).toBeVisible();
  await tabTo(page, "Width, middle");
  await page.keyboard.type("36");
  await tabTo(page, "Height, middle");
  await page.keyboard.type("42");
  await page.keyboard.press("Tab");
  await expect(theBack(page)).toBeVisible();
  await tabTo(page, "Leftovers");
  await page.keyboard.press("Enter");
  await expect(line(page)).toBeVisible();
  await tabTo(page, "One leftover, as you would note it");
  for (const text of typed) {
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await expect(line(page)).toHaveValue("");
  }
  await tabTo(page, "Plan");
  await page.keyboard.press("Enter");
  await stopped(page, async () => {
    await tabTo(page, "Stop here");
    await page.keyboard.press("Enter");
  });
  await tabTo(page, "Keep this plan");
  await page.keyboard.press("Enter");
  await expect(kept(page)).toBeVisible();
});

test.describe("by taps alone", () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

  test("from the start page to a kept plan", async ({ page }) => {
    test.setTimeout(120_000);
    await page.goto("./");
    await page.getByRole("button", { name: "New back" }).tap();
    await tapAndType(page, "Width, middle", "36");
    await tapAndType(page, "Height, middle", "42");
    await expect(theBack(page)).toBeVisible();
    await step(page, "Leftovers").tap();
    for (const text of typed) {
      await tapAndType(page, "One leftover, as you would note it", text);
      await page.getByRole("button", { name: "Add", exact: true }).tap();
      await expect(line(page)).toHaveValue("");
    }
    await step(page, "Plan").tap();
    await stopped(page, (stop) => stop.tap());
    await page.getByRole("button", { name: "Keep this plan" }).tap();
    await expect(kept(page)).toBeVisible();
  });
});

async function tapAndType(page: Page, name: string, text: string): Promise<void> {
  await pauseBetweenTaps(page);
  await page.getByRole("textbox", { name }).tap();
  await page.keyboard.type(text);
}

/** Moves on with Tab until what has this name is reached, as somebody without a mouse would. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let press = 0; press < 120; press++) {
    await page.keyboard.press("Tab");
    if ((await nameOfFocus(page)) === name) return;
  }
  throw new Error(`“${name}” is not reached with Tab`);
}

async function nameOfFocus(page: Page): Promise<string> {
  const focused = page.locator(":focus");
  if ((await focused.count()) === 0) return "";
  const snapshot = await focused.ariaSnapshot();
  return /"((?:[^"\\]|\\.)*)"/.exec(snapshot)?.[1] ?? "";
}
