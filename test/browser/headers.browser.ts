import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./verso.ts";

// The service worker is under the same headers.
test.use({ serviceWorkers: "allow" });

test.describe("with the solver at work", () => {
  test.use({ searches: true });

  test("the app opens without a word of complaint, and shows what it is about", async ({ page }) => {
    await page.goto("./");
    await expect(page.getByRole("banner")).toContainText("Verso");
    const glimpse = page.getByRole("figure").getByRole("img", { name: /^Drawing of the back/ });
    await expect(glimpse).toBeVisible({ timeout: 30_000 });
    await expectAccessible(page);
  });
});

/** Waits until this is among what went wrong, and takes it out with what is said beside it. */
async function expectSeen(page: Page, troubles: string[], what: string): Promise<void> {
  await expect.poll(() => troubles.join("\n")).toContain(what);
  // A violation is told twice, by the browser and by the page, in either order.
  await page.waitForTimeout(500);
  troubles.splice(0);
}

test("a text made into a script is refused and seen", async ({ page, troubles }) => {
  await page.goto("./");
  const planted = await page.evaluate(() => {
    const script = document.createElement("script");
    try {
      script.textContent = "window.planted = true";
    } catch {
      // Refused, as it should be.
    }
    document.body.append(script);
    return "planted" in window;
  });
  expect(planted).toBe(false);
  await expectSeen(page, troubles, "require-trusted-types-for");
});

// Each is brought into the page on its way from the server, as a fault of ours or someone else's would.
const plantedInPage = [
  ["a script in the page", "<script>window.planted = true</script>", "script-src"],
  ["a script of elsewhere", '<script src="http://127.0.0.1:9/planted.js"></script>', "script-src"],
  ["a style in the page", "<style>body { display: none }</style>", "style-src"],
  ["a style on an element", '<p style="position: fixed">planted</p>', "style-src"],
  ["a picture of elsewhere", '<img src="http://127.0.0.1:9/seen.gif" alt="">', "img-src"],
  ["a frame", '<iframe src="/icon.svg" title="planted"></iframe>', "frame-src"],
] as const;

for (const [name, html, directive] of plantedInPage)
  test(`${name} is refused and seen`, async ({ page, troubles }) => {
    await page.route("./", async (route) => {
      const response = await route.fetch();
      const body = (await response.text()).replace("<body>", `<body>${html}`);
      await route.fulfill({ response, body });
    });
    await page.goto("./");
    await expect(page.getByRole("banner")).toContainText("Verso");
    expect(await page.evaluate(() => "planted" in window)).toBe(false);
    await expectSeen(page, troubles, `security policy violation: ${directive}`);
  });

test("a policy beside our own is refused and seen", async ({ page, troubles }) => {
  await page.goto("./");
  const made = await page.evaluate(() => {
    try {
      const factory = (
        window as unknown as { trustedTypes: { createPolicy(name: string, rules: object): void } }
      ).trustedTypes;
      factory.createPolicy("planted", { createHTML: (text: string) => text });
      return true;
    } catch {
      return false;
    }
  });
  expect(made).toBe(false);
  await expectSeen(page, troubles, "trusted-types");
});

test("an unhandled rejection and an error are seen", async ({ page, troubles }) => {
  await page.goto("./");
  await page.evaluate(() => {
    setTimeout(() => Promise.reject(new Error("nobody took this")), 0);
    setTimeout(() => {
      throw new Error("nobody caught this");
    }, 0);
  });
  await expect.poll(() => troubles.join("\n")).toContain("nobody took this");
  await expect.poll(() => troubles.join("\n")).toContain("nobody caught this");
  troubles.splice(0);
});
