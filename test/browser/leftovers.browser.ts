import { readFileSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import {
  expect,
  expectAccessible,
  expectFitsBetween,
  looks,
  reloadKept,
  screenSizes,
  test,
} from "./verso.ts";

const main = (page: Page) => page.getByRole("main");
const line = (page: Page) => page.getByRole("textbox", { name: "One leftover, as you would note it" });
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const status = (page: Page) => main(page).getByRole("status");
const view = (page: Page, name: string) => page.getByRole("radio", { name, exact: true });
const pile = (page: Page, name: string) => page.getByRole("region", { name, exact: true });
const mark = (page: Page, ofPile: string, name: string) =>
  pile(page, ofPile).getByRole("radio", { name, exact: true });
const pieces = (page: Page) => main(page).locator("svg.cloth path[fill]").filter({ visible: true });
const waiting = (page: Page) => page.getByRole("region", { name: /to be mended$/ });

/** The page of a back of which nothing is known yet. */
async function openEmpty(page: Page): Promise<void> {
  await page.goto("./");
  await button(page, "New back").first().click();
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, "leftovers"));
  await expect(main(page).getByRole("heading", { level: 1 })).toHaveText("Leftovers");
}

async function openSample(page: Page): Promise<void> {
  await page.goto("./");
  await main(page).getByRole("button").first().click();
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, "leftovers"));
  await expect(pieces(page).first()).toBeVisible();
}

async function paste(page: Page, text: string): Promise<void> {
  await line(page).evaluate((field, pasted) => {
    const data = new DataTransfer();
    data.setData("text", pasted);
    field.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
}

// Forty rows as one would type or keep them; two of them can't be read as they stand.
const fabrics = ["teal dots", "rust", "cream", "moss", "navy stripe", "rose", "oat"];
const typed = [
  "4 strips 2 1/2 x 31 teal dots",
  "12 blocks 6½",
  "3 hsts 3 rust",
  "fat quarter red",
  "strip 2.5 x wof navy",
  "2 triangles 5 7/8 oat",
  "1 length 42 x 70 cream",
  "crumbs 6 oz",
  "9 cm x 30 cm blue stripe 5",
  "half yard moss",
];
const pastedLines = [
  ...Array.from(
    { length: 18 },
    (_, index) => `${index + 1} squares ${3 + (index % 6)} ${fabrics[index % 7]}`,
  ),
  "4 strips 21/2 x 31 rust",
  "teal dots from the border",
];
const pastedTable = [
  "kind,width,height,count,fabric",
  ...Array.from(
    { length: 10 },
    (_, index) => `rectangle,${6 + index},4 1/2,${index + 1},${fabrics[index % 7]}`,
  ),
].join("\n");

test("forty leftovers, typed and pasted, lie in their piles and are there again after a reload", async ({
  page,
}) => {
  await openEmpty(page);
  for (const text of typed) {
    await line(page).fill(text);
    await line(page).press("Enter");
    await expect(line(page)).toHaveValue("");
  }
  await expect(status(page)).toContainText("Added.");
  await paste(page, pastedLines.join("\n"));
  await expect(status(page)).toHaveText("18 rows entered. 2 rows wait to be mended.");
  await paste(page, pastedTable);
  await expect(status(page)).toHaveText("10 rows entered.");

  const summary = main(page).getByText(/^\d+ pieces in 38 rows/);
  await expect(summary).toBeVisible();
  for (const name of ["Strips", "Blocks and part blocks", "Triangles", "Small pieces", "Large pieces"]) {
    await expect(pile(page, name).getByRole("heading")).toHaveText(name);
    await expect(pile(page, name).locator("svg.cloth").first()).toBeVisible();
  }
  const told = await summary.textContent();
  await reloadKept(page);
  await expect(summary).toHaveText(told ?? "");
  await expect(waiting(page).getByRole("listitem")).toHaveCount(2);
});

test("a line is drawn as it is typed, to scale, and only good ones enter", async ({ page }) => {
  await openEmpty(page);
  const strip = main(page).locator("svg.cloth").first();
  await line(page).fill("1 strip 2 x 20 teal");
  await expect(main(page).getByText("1 strip, 2 × 20 in, teal.")).toBeVisible();
  await expect(strip.locator("path[fill='#008080']")).toHaveCount(1);
  const box = await strip.boundingBox();
  expect((box?.width ?? 0) / (box?.height ?? 1)).toBeCloseTo(10, 0);

  await line(page).fill("1 strip 2-Jan x 20 teal");
  await line(page).press("Enter");
  await expect(main(page).getByText("A spreadsheet may have changed 1/2.")).toBeVisible();
  await expect(line(page)).toHaveValue("1 strip 2-Jan x 20 teal");
  await expect(line(page)).toBeFocused();
  await expect(strip).toHaveCount(0);
  await button(page, "It is 1/2").click();
  await expect(line(page)).toHaveValue("1 strip 1/2 x 20 teal");
  await line(page).press("Enter");
  await expect(main(page).getByText(/^1 piece in 1 row/)).toBeVisible();
});

test("bad rows are mended one by one, each with its words", async ({ page }) => {
  await openEmpty(page);
  await paste(page, "4 strips 21/2 x 31 rust\nteal dots\n2 blocks 6 1/2");
  await paste(page, "kind,width,height,count\nsqare,5,5,2\nstrip,2-Jan,31,4\nstrip,2 1/2,,3\nblock,6,6,0");
  const rows = waiting(page).getByRole("listitem");
  await expect(rows).toHaveCount(6);
  await expect(waiting(page)).toContainText("“21/2” may mean 2 1/2 or 10 1/2. Write the one you mean.");
  await button(page, "It is 2 1/2").click();
  await expect(rows).toHaveCount(5);

  await rows.nth(0).getByRole("textbox").fill("3 squares 4 teal dots");
  await rows.nth(0).getByRole("button", { name: "Take it so" }).click();
  await expect(rows).toHaveCount(4);

  await expect(rows.nth(0)).toContainText("“sqare” is not a word for this column.");
  await rows.nth(0).getByRole("combobox", { name: "What" }).selectOption({ label: "square" });
  await rows.nth(0).getByRole("button", { name: "Take it so" }).click();
  await expect(rows).toHaveCount(3);

  await expect(rows.nth(0)).toContainText("looks like a date");
  await rows.nth(0).getByRole("textbox", { name: "Width" }).fill("1 1/2");
  await rows.nth(0).getByRole("textbox", { name: "Width" }).press("Enter");
  await expect(rows).toHaveCount(2);

  await expect(rows.nth(0)).toContainText("Nothing is written here. Add the size as cut.");
  await rows.nth(0).getByRole("textbox", { name: "Height" }).fill("31");
  await rows.nth(0).getByRole("textbox", { name: "Height" }).press("Enter");
  await expect(rows).toHaveCount(1);

  await button(page, "Leave out row 7").click();
  await expect(waiting(page)).toHaveCount(0);
  await expect(main(page).getByText(/^18 pieces in 6 rows/)).toBeVisible();
  await button(page, "Undo").click();
  await expect(rows).toHaveCount(1);
});

test("by keyboard alone: lines entered, cells changed, rows chosen, marked and removed", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openEmpty(page);
  const focused = page.locator(":focus");
  while (!(await line(page).evaluate((field) => field === document.activeElement)))
    await page.keyboard.press("Tab");
  for (const text of ["4 strips 2 1/2 x 31 teal dots", "12 blocks 6 1/2 cream", "3 squares 5 rust"]) {
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  }
  await expect(main(page).getByText(/in 3 rows/)).toBeVisible();

  const grid = page.getByRole("grid", { name: "Every row" });
  for (let tabs = 0; tabs < 12 && (await grid.locator(":focus").count()) === 0; tabs++) {
    await page.keyboard.press("Tab");
  }
  // The last row entered stands first; into its cells with the arrow keys.
  await toCell(page, "Width: 5");
  await page.keyboard.press("Enter");
  const field = page.getByRole("dialog", { name: "Width" }).getByRole("textbox");
  await expect(field).toBeFocused();
  await page.keyboard.type("half");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog")).toContainText("“half” does not read as a size.");
  await page.keyboard.press("Escape");
  await expect(focused).toHaveAccessibleName("Width: 5");
  await page.keyboard.press("Enter");
  await page.keyboard.type("5 1/2");
  await page.keyboard.press("Enter");
  await expect(focused).toHaveAccessibleName("Width: 5½");

  await toCell(page, /^Mark: /);
  await page.keyboard.press("Enter");
  await press(page, "ArrowDown", "Enter");
  await expect(focused).toHaveAccessibleName("Mark: use first");

  await page.keyboard.press("Home");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Space");
  await expect(page.getByRole("region", { name: "Mark what is chosen" })).toContainText("1 row chosen");
  for (let tabs = 0; tabs < 40 && !(await isFocused(button(page, "Remove"))); tabs++)
    await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(status(page)).toHaveText("1 row removed. Undo brings it back.");
  await expect(main(page).getByText(/in 2 rows/)).toBeVisible();
  await page.keyboard.press("Control+z");
  await expect(main(page).getByText(/in 3 rows/)).toBeVisible();
});

test("the list is a grid: one stop for Tab, arrow keys to every cell, rows chosen by keys one by one, many, all", async ({
  page,
}) => {
  await page.setViewportSize(screenSizes.laptop);
  await openEmpty(page);
  await paste(
    page,
    "crumbs 6 oz\n4 strips 2 1/2 x 31 teal\n12 blocks 6 1/2 cream\n3 squares 5 rust\n2 squares 4 oat",
  );
  const grid = page.getByRole("grid", { name: "Every row" });
  const focused = page.locator(":focus");
  const choosing = (row: number) => grid.getByRole("checkbox", { name: `Choose row ${row}` });
  const chosen = grid.getByRole("row", { selected: true });
  await expect(grid.getByRole("row")).toHaveCount(6);
  await expect(grid.locator("[tabindex='0']")).toHaveCount(1);
  await expect(grid).toHaveAttribute("aria-rowcount", "6");
  await expect(choosing(5)).toHaveAccessibleName(/^Choose row 5 What: /);

  await choosing(5).focus();
  await press(page, "End");
  await expect(focused).toHaveAccessibleName("All about row 5");
  await press(page, "ArrowUp");
  await expect(focused).toHaveRole("columnheader");
  await press(page, "Control+End");
  await expect(focused).toHaveAccessibleName("All about row 1");
  // Crumbs have no height: the cell itself is gone to, and is where Tab comes back to.
  await press(page, "ArrowLeft", "ArrowLeft", "ArrowLeft");
  await expect(focused).toHaveRole("gridcell");
  await expect(grid.locator("[tabindex='0']")).toHaveCount(1);
  await press(page, "Tab", "Shift+Tab");
  await expect(focused).toHaveRole("gridcell");

  await press(page, "Control+Home", "Space", "ArrowDown", "Shift+ArrowDown", "Shift+ArrowDown");
  await expect(chosen).toHaveCount(4);
  await expect(choosing(1)).not.toBeChecked();
  await expect(page.getByLabel("Choose all")).toHaveJSProperty("indeterminate", true);
  await press(page, "ArrowRight", "Shift+Space");
  await expect(chosen).toHaveCount(3);
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await press(page, "Control+a");
  await expect(chosen).toHaveCount(5);
  await expect(page.getByLabel("Choose all")).toBeChecked();
  await press(page, "Escape");
  await expect(chosen).toHaveCount(0);

  await choosing(5).click();
  await choosing(3).click({ modifiers: ["Shift"] });
  await expect(chosen).toHaveCount(3);
  await page.getByLabel("Choose all").click();
  await expect(chosen).toHaveCount(5);
});

async function press(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

function isFocused(place: Locator): Promise<boolean> {
  return place.evaluate((element) => element === document.activeElement);
}

/** Along the row to a cell. */
async function toCell(page: Page, name: string | RegExp): Promise<void> {
  const cell = page.getByRole("button", { name, exact: typeof name === "string" }).first();
  for (const key of ["ArrowRight", "ArrowLeft"]) {
    for (let steps = 0; steps < 9 && !(await isFocused(cell)); steps++) await page.keyboard.press(key);
  }
  await expect(cell).toBeFocused();
}

test.describe("by taps alone, on a phone", () => {
  test.use({ viewport: screenSizes.phone, hasTouch: true });

  test("entered, marked by the pile and by the piece, changed, removed and back again", async ({ page }) => {
    await openEmpty(page);
    for (const example of ["4 strips 2 1/2 x 31 teal dots", "12 blocks 6 1/2"]) {
      if (await line(page).inputValue()) await line(page).fill("");
      const offered = button(page, example);
      if ((await offered.count()) > 0) await offered.tap();
      else await line(page).fill(example);
      await button(page, "Add").tap();
    }
    await expect(pieces(page).first()).toBeVisible();
    await mark(page, "Strips", "use first").tap();
    await expect(mark(page, "Strips", "use first")).toBeChecked();
    await expect(pile(page, "Strips").getByRole("listitem")).toContainText("use first");

    await pile(page, "Blocks and part blocks")
      .getByRole("button", { name: /^12 blocks/ })
      .tap();
    const bar = page.getByRole("region", { name: "Mark what is chosen" });
    await expect(bar).toContainText("1 row chosen");
    await bar.getByRole("radio", { name: "keep back", exact: true }).tap();
    await expect(pile(page, "Blocks and part blocks").getByRole("listitem")).toContainText("keep back");
    await bar.getByRole("button", { name: "Remove" }).tap();
    await expect(pile(page, "Blocks and part blocks")).toHaveCount(0);
    await button(page, "Undo").tap();
    await expect(pile(page, "Blocks and part blocks")).toBeVisible();

    await view(page, "List").tap();
    await button(page, "Fabric: teal dots").tap();
    await page.getByRole("dialog", { name: "Fabric" }).getByRole("textbox").fill("sea");
    await button(page, "Done").tap();
    await expect(button(page, "Fabric: sea")).toBeVisible();
    await view(page, "Fabrics").tap();
    await expect(page.getByLabel("Color of sea")).toBeVisible();
  });

  test("everything to be tapped is at least 44 by 44, save words in a row of marks", async ({ page }) => {
    await openSample(page);
    for (const [name, drawn] of Object.entries({
      Piles: "piles",
      List: "list",
      Fabrics: "fabrics",
      More: "about",
    })) {
      await view(page, name).tap();
      await expect(main(page).locator(`[data-view=${drawn}]`)).toBeVisible();
      const targets = await main(page)
        .locator("button, input:not(label input, [type=file]), label:has(input), a")
        .filter({ visible: true })
        .evaluateAll((all) =>
          all.map((one) => {
            const { width, height } = one.getBoundingClientRect();
            return { width, height, what: one.outerHTML };
          }),
        );
      const shown = targets.filter(({ width }) => width > 1);
      expect(shown.length).toBeGreaterThan(3);
      expect(shown.filter(({ height }) => height < 44)).toEqual([]);
      expect(shown.filter(({ width, what }) => width < 24 && !what.includes("mark"))).toEqual([]);
    }
  });
});

test("a whole pile is marked at one tap, and taken back at one", async ({ page }) => {
  await openSample(page);
  const strips = pile(page, "Strips");
  const rows = await strips.getByRole("listitem").count();
  await mark(page, "Strips", "give away").click();
  await expect(strips.getByRole("listitem").filter({ hasText: "give away" })).toHaveCount(rows);
  await expect(mark(page, "Strips", "give away")).toBeChecked();
  await button(page, "Undo").click();
  await expect(strips.getByRole("listitem").filter({ hasText: "give away" })).toHaveCount(0);
});

test("pieces show their own cloth alone: no mark, no choice, no theme changes it", async ({ page }) => {
  await openSample(page);
  const colours = () => pieces(page).evaluateAll((paths) => paths.map((path) => getComputedStyle(path).fill));
  const before = await colours();
  expect(before.length).toBeGreaterThan(50);
  await mark(page, "Strips", "use first").click();
  await expect(mark(page, "Strips", "use first")).toBeChecked();
  await pile(page, "Strips").getByRole("listitem").first().getByRole("button").click();
  await expect(page.getByRole("region", { name: "Mark what is chosen" })).toBeVisible();
  expect(await colours()).toEqual(before);
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await colours()).toEqual(before);
  await page.emulateMedia({ forcedColors: "active" });
  expect(await colours()).toEqual(before);
});

test("what is as large in life is as large on the page, in every pile", async ({ page }) => {
  await openEmpty(page);
  await paste(page, "strip 2 x 40 teal\n2 strips 2 x 20 rust\nblock 20 cream\nlength 42 x 80 oat");
  const widthOf = async (name: RegExp) => {
    const drawing = main(page).getByRole("button", { name }).locator("svg.cloth");
    return (await drawing.boundingBox())?.width ?? Number.NaN;
  };
  const [strip, half, block, length] = [
    await widthOf(/^1 strip/),
    await widthOf(/^2 strips/),
    await widthOf(/^1 block/),
    await widthOf(/^1 length/),
  ];
  expect(strip / half).toBeCloseTo(2, 1);
  expect(block / half).toBeCloseTo(1, 1);
  expect(length / strip).toBeCloseTo(2, 1);
});

test("a fabric's colour goes to everything of it", async ({ page }) => {
  await page.setViewportSize(screenSizes.laptop);
  await openEmpty(page);
  await paste(page, "2 strips 2 x 30 sea glass\nsquare 5 sea glass");
  await expect(page.getByText("no color yet")).toBeVisible();
  await page.getByLabel("Color of sea glass").fill("#4f9f8f");
  await expect(main(page).locator("section svg.cloth path[fill='#4f9f8f']")).toHaveCount(3);
  await expect(page.getByText("no color yet")).toHaveCount(0);
  await line(page).fill("3 squares 4 sea glass");
  await expect(main(page).locator("section svg.cloth path[fill='#4f9f8f']")).toHaveCount(6);
});

test("a table is opened, dropped, and saved so that it can be read back", async ({ page }) => {
  await openEmpty(page);
  const table = "kind,width,height,count,fabric,box\nstrip,2 1/2,31,4,teal,3\nblock,6 1/2,6 1/2,2,cream,";
  await page
    .locator("main input[type=file]")
    .setInputFiles({ name: "left.csv", mimeType: "text/csv", buffer: Buffer.from(table) });
  await expect(status(page)).toHaveText("2 rows entered.");

  await drop(page, "more.csv", "kind,width,height\nsquare,5,5");
  await expect(main(page).getByText(/^7 pieces in 3 rows/)).toBeVisible();
  await drop(page, "top.png", "\u0089PNG not a table");
  await expect(
    main(page)
      .getByText(/does not read as a table|This is a picture/)
      .first(),
  ).toBeVisible();
  await expect(main(page).getByText(/^7 pieces in 3 rows/)).toBeVisible();

  const downloading = page.waitForEvent("download");
  await button(page, "Save as a table").click();
  const file = await downloading;
  expect(file.suggestedFilename()).toMatch(/, leftovers\.csv$/);
  const saved = readFileSync(await file.path());
  expect(saved.toString("utf8")).toContain("kind,width,height,count,fabric,colour,box");
  await openEmpty(page);
  await page
    .locator("main input[type=file]")
    .setInputFiles({ name: "again.csv", mimeType: "text/csv", buffer: saved });
  await expect(main(page).getByText(/^7 pieces in 3 rows/)).toBeVisible();
});

async function drop(page: Page, name: string, content: string): Promise<void> {
  await main(page)
    .getByRole("heading", { level: 1 })
    .evaluate(
      (place, file) => {
        const data = new DataTransfer();
        data.items.add(new File([file.content], file.name));
        for (const type of ["dragover", "drop"]) {
          place.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
        }
      },
      { name, content },
    );
}

test("binding and label are put aside first, and what is missing is said", async ({ page }) => {
  await openSample(page);
  await page.getByText("Enough for the binding").click();
  await expect(
    main(page).getByText(/^It takes 290\sin of strips 2½\sin wide\. Put aside: 8 of 42\s×\s2½\sin, oat\.$/),
  ).toBeVisible();
  await page.getByText("A piece for the label").click();
  await expect(main(page).getByText(/^Put aside: 1 of /)).toBeVisible();
  await button(page, "Undo").click();
  await expect(page.getByRole("checkbox", { name: "A piece for the label" })).not.toBeChecked();
});

test("stock without a list: about so much of strips, a bag by its weight", async ({ page }) => {
  await openEmpty(page);
  await button(page, "Stock without a list").click();
  const strips = page.getByRole("form", { name: "Strips of one width" });
  await strips.getByRole("textbox", { name: /^About how much/ }).fill("9 yd");
  await strips.getByRole("textbox", { name: /^How wide/ }).fill("2-Jan");
  await button(page, "Add these strips").click();
  await expect(strips).toContainText("looks like a date");
  await strips.getByRole("textbox", { name: /^How wide/ }).fill("2 1/2");
  await button(page, "Add these strips").click();
  await expect(page.getByText("About 9 yd of strips 2 1/2 wide")).toBeVisible();
  await expect(pile(page, "Strips")).toContainText("about 9 yd of 2 1/2");

  const bag = page.getByRole("form", { name: "A bag of small bits" });
  await bag.getByRole("textbox", { name: /^Its weight/ }).fill("12 oz");
  await button(page, "Add this bag").click();
  await expect(page.getByText("About 3,600 sq in of cloth, a tenth more or less.")).toBeVisible();
  await button(page, "Remove: A bag of small bits, 12 oz").click();
  await expect(page.getByText("A bag of small bits, 12 oz")).toHaveCount(0);
});

for (const [name, viewport] of Object.entries(looks))
  test(`nothing keeps anyone out, light or dark: ${name}`, async ({ page }) => {
    test.setTimeout(180_000);
    await page.setViewportSize(viewport);
    await openSample(page);
    await paste(page, "teal dots\n4 strips 21/2 x 31 rust");
    await line(page).fill("4 strips 2 1/2 x 31 teal dots");
    await expect(waiting(page)).toBeVisible();
    await expectAccessible(page);

    if (name === "phone") await view(page, "List").click();
    await page.getByRole("checkbox", { name: "Choose row 29" }).locator("xpath=ancestor::label").click();
    await expect(page.getByRole("region", { name: "Mark what is chosen" })).toBeVisible();
    await expectAccessible(page, "[aria-label='Mark what is chosen'], [aria-selected='true']");
    await button(page, "Choose none").click();

    await button(page, "Width: 14").click();
    await expect(page.getByRole("dialog", { name: "Width" })).toBeVisible();
    await expectAccessible(page, "[role=dialog]");
    await page.keyboard.press("Escape");
    await button(page, "All about row 29").click();
    await expect(page.getByRole("dialog", { name: "All about row 29" })).toBeVisible();
    await expectAccessible(page, "[role=dialog]");
    await page.keyboard.press("Escape");
    for (const [other, shown] of name === "phone"
      ? Object.entries({ Fabrics: "fabrics", More: "about" })
      : []) {
      await view(page, other).click();
      await expect(main(page).locator(`[data-view=${shown}]`)).toBeVisible();
      await expectAccessible(page);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    await expectFitsBetween(page);
  });
