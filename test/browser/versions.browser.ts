import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./verso.ts";

const width = (page: Page) => page.getByRole("textbox", { name: "Width, middle" });

async function moreOf(page: Page, title: string): Promise<void> {
  await page.goto("./#/");
  await page.getByRole("button", { name: `More for “${title}”` }).click();
  await page.getByRole("button", { name: "Earlier versions" }).click();
}

test("a version is kept under a name, gone back to, and what was there in between is a version too", async ({
  page,
}) => {
  await page.goto("./");
  await page.getByRole("button", { name: "New back" }).click();
  await page.getByRole("textbox", { name: "Name of this back" }).fill("Lap quilt");
  await width(page).fill("40");
  await page.getByRole("textbox", { name: "Height, middle" }).fill("50");
  const size = page.url();

  await moreOf(page, "Lap quilt");
  const versions = page.getByRole("region", { name: "Earlier versions" });
  await versions.getByRole("textbox", { name: "Name for how it is now" }).fill("as measured");
  await versions.getByRole("button", { name: "Keep it as a version" }).click();
  await expect(versions.getByRole("listitem").filter({ hasText: "as measured" })).toHaveCount(1);

  await page.goto(size);
  await width(page).fill("44");
  await expect(width(page)).toHaveValue("44");
  await moreOf(page, "Lap quilt");
  await versions.getByRole("button", { name: "Go back to “as measured”" }).click();
  await expect(versions.getByRole("status")).toContainText("It is as it was");
  await expect(versions.getByRole("listitem").filter({ hasText: "Kept by itself" })).not.toHaveCount(0);
  await expectAccessible(page);

  await page.goto(size);
  await expect(width(page)).toHaveValue("40");
});
