import type { Locator, Page } from "@playwright/test";
import { expect, screenSizes, test } from "./verso.ts";

// Someone who has never seen Verso, with a heap as she would note it: numbers in words, sizes where they come to mind.
const heap = `six squares of clay-red, five inches
a dozen 2½ inch squares, navy
three strips of navy, 2½ wide and about a yard long
two fat quarters of sage
a fat eighth, mustard dots
one long strip cream, 4 by 60
eight half square triangles, rust and cream, 4½ unfinished
five nine-patch blocks, 6½ inches
a quarter yard of teal
half a yard of cream on cream
the end of a bolt, grey, 14 by 42
twenty five inch squares, mixed
four flying geese, 2½ x 4½, blue
strip of binding left over, 2¼ × 80, black
nine two-and-a-half inch squares of pink
a pair of rectangles, olive, 3 x 7
7 rectangles 4½ × 8½ white with stars
1 orphan block 12½, a star
a handful of crumbs, all colors
scraps, 5 oz, mixed
10 x 16 piece of plum
piece of denim, 11" × 19"
3 pieces gingham 5 by 9 inches
one yard of oatmeal linen
ten triangles cut from 5 inch squares, green
six strips 1½ x 20 assorted
strip 2½ × WOF red
2 strips 3" x width of fabric, ivory
four 10" squares paisley
twelve squares 3½ sky blue
fat quarter, brown check
6 log cabin blocks 8½
a rectangle 6½ by 20, mustard
two 4 inch squares tan
18 x 22 coral
1 strip 5 x 33 lilac
fourteen squares, 2 inches, yellow
three 6 x 6 black & white
30 cm x 1 m dark green
odd piece of turquoise, roughly 9 by 13`;

test.use({ searches: true, viewport: screenSizes.tablet });

test("from nothing to a plan she keeps, with a heap in words and what one gets wrong at first", async ({
  page,
}) => {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();

  // Looking ahead: what is missing is said, and the way there.
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await expect(page.getByText("The size of the back is not known yet.")).toBeVisible();
  await page.getByRole("link", { name: "Go to Size" }).click();

  const width = page.getByRole("textbox", { name: "Width, upper edge" });
  await width.fill("52 by 60");
  await width.blur();
  await expect(page.getByText("“52 by 60” is two sides.")).toBeVisible();
  await width.fill("52 inches");
  await page.getByRole("textbox", { name: "Height, left edge" }).fill("60 1/2");
  await expect(page.getByRole("status").filter({ hasText: "The back:" })).toContainText("68½");
  await page.getByRole("link", { name: "Go on to your leftovers" }).click();

  await enterHeap(page);
  await page.getByRole("link", { name: "Go on to the plan" }).click();

  await expect(page.getByText("No color is known yet of")).toBeVisible({ timeout: 30_000 });
  const staysOver = page.getByRole("listitem").filter({ hasText: /^\d+ [a-z ]+, .+×.+in, [a-z]/ });
  await expect(staysOver.first()).toBeVisible();
  await page.getByRole("button", { name: "Keep this plan" }).click();
  await expect(page.getByText("You keep this plan.")).toBeVisible();
  await page.getByRole("link", { name: "Go on to sewing" }).click();
  await expect(page.getByRole("heading", { name: /^Step 1 of \d+$/ })).toBeVisible();
});

/** One line by hand, the others pasted at once; the one that says too little is mended. */
async function enterHeap(page: Page): Promise<void> {
  const [first = "", ...rest] = heap.split("\n");
  const line = page.getByRole("textbox", { name: "One leftover, as you would note it" });
  await line.fill(first);
  await expect(page.getByText("6 squares, 5 × 5 in, clay-red.")).toBeVisible();
  await line.press("Enter");
  await paste(line, rest.join("\n"));
  await expect(page.getByText("38 rows entered. 1 row waits to be mended.")).toBeVisible();
  const waiting = page.getByRole("textbox", { name: /^Row \d+$/ });
  await expect(waiting).toHaveValue("a handful of crumbs, all colors");
  await waiting.fill("crumbs 2 oz, all colors");
  await waiting.press("Enter");
  await expect(page.getByText("1 row entered.", { exact: true })).toBeVisible();
  await expect(page.getByText("in 40 rows")).toBeVisible();
}

async function paste(field: Locator, text: string): Promise<void> {
  await field.evaluate((element, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    element.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}
