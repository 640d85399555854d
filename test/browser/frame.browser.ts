import { expect, test } from "./verso.ts";

test("the app opens without a word of complaint", async ({ page }) => {
  await page.goto("./");
  await expect(page.getByRole("banner")).toContainText("Verso");
});

test("a script planted in the page is stopped and seen", async ({ page, troubles }) => {
  await page.goto("./");
  const ran = await page.evaluate(() => {
    const script = document.createElement("script");
    const policyless = () => {
      script.textContent = "window.planted = true";
    };
    let refused = false;
    try {
      policyless();
    } catch {
      refused = true;
    }
    document.body.append(script);
    return { refused, planted: "planted" in window };
  });
  expect(ran).toEqual({ refused: true, planted: false });
  expect(troubles.splice(0).join("\n")).toMatch(/trusted-types|TrustedScript|require-trusted-types-for/i);
});
