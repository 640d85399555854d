/** What every browser test stands on: the built app, and nothing that goes wrong unseen. */
import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, test as base, expect, type Page } from "@playwright/test";

export { expect };

/** The sizes that every page is looked at in. */
export const screenSizes = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  laptop: { width: 1440, height: 900 },
} as const;

/** Those that differ in what is there to be read and pressed: what a tablet shows is put together of both. */
export const { tablet: between, ...looks } = screenSizes;

type Fixtures = {
  /**
   * What went wrong in the pages of this test: each violation of the headers, error on the console, unhandled
   * rejection and request to another place, in words. It must be empty at the end; a test that provokes one takes it
   * out (`troubles.splice(0)`).
   */
  readonly troubles: string[];
  /**
   * Whether searches are made, by `test.use({ searches: true })`. Otherwise they are begun and never get on, as on a
   * machine that has no time for them: what is on the page stays as it is, and no test pays for plans it doesn't look
   * at (the start page plans the sample, the Plan page plans in every style).
   */
  readonly searches: boolean;
};

export const test = base.extend<Fixtures>({
  searches: [false, { option: true }],
  troubles: [
    async ({ context, baseURL, searches }, use) => {
      const troubles: string[] = [];
      if (!searches) await context.addInitScript(holdSearchesBack);
      await watch(context, new URL(baseURL ?? "").origin, troubles);
      await use(troubles);
      expect(troubles, "what went wrong in the pages").toEqual([]);
    },
    { auto: true },
  ],
});

/** Runs in the page: the solver's worker is there, and is never asked anything. */
function holdSearchesBack(): void {
  globalThis.Worker = class extends Worker {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      if (/\/solver-[^/]*$/.test(String(address))) this.postMessage = () => {};
    }
  };
}

/** Puts into `troubles` whatever goes wrong in the pages of `context`. For contexts that a test makes itself. */
export async function watch(context: BrowserContext, origin: string, troubles: string[]): Promise<void> {
  context.on("console", (message) => {
    if (message.type() === "error" || isViolation(message.text()))
      troubles.push(`console: ${message.text()}`);
  });
  context.on("weberror", (error) => troubles.push(`not caught: ${error.error().stack ?? error.error()}`));
  context.on("request", (request) => {
    const address = new URL(request.url());
    if (["data:", "blob:"].includes(address.protocol) || address.origin === origin) return;
    troubles.push(`request to another place: ${request.url()}`);
  });
  // Not every violation is written to the console, and what is written is worded differently from time to time.
  await context.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => {
      console.error(
        `security policy violation: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`,
      );
    });
  });
}

function isViolation(text: string): boolean {
  return /Content Security Policy|Trusted ?Type|TrustedScript|TrustedHTML/i.test(text);
}

/** A second tap within 300 ms, even on another field, is a double tap to Chromium, and places no caret. No hand is so quick. */
export async function pauseBetweenTaps(page: Page): Promise<void> {
  await page.waitForTimeout(350);
}

/** Loads the page anew once all is kept: until then it would ask her before it goes. */
export async function reloadKept(page: Page): Promise<void> {
  const isKept = () => page.evaluate(() => dispatchEvent(new Event("beforeunload", { cancelable: true })));
  await expect.poll(isKept, "all is kept").toBe(true);
  await page.reload();
}

/**
 * Fails with axe's own words where the page, as it stands, keeps someone from using it: in light, then in dark.
 * `within`: only there, for what comes up on a page that has been looked at whole.
 */
export async function expectAccessible(page: Page, within = "html"): Promise<void> {
  await expectUsable(page, within);
  // The same elements in other colours: nothing else can have changed.
  await expectReadable(page, "dark", within);
}

/** The same in light alone, for a page that is looked at in both elsewhere. */
export async function expectUsable(page: Page, within = "html"): Promise<void> {
  await page.emulateMedia({ colorScheme: "light", reducedMotion: "reduce" });
  expect(await problemsIn(page, within), "in light").toEqual([]);
}

/** Its colours alone, where nothing else differs from a page that has been looked at. */
export async function expectReadable(
  page: Page,
  colorScheme: "light" | "dark",
  within = "html",
): Promise<void> {
  await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
  expect(await problemsIn(page, within, ["color-contrast"]), `in ${colorScheme}`).toEqual([]);
}

/** On a tablet nothing runs out of the side; then it is as large as before. */
export async function expectFitsBetween(page: Page): Promise<void> {
  const before = page.viewportSize();
  await page.setViewportSize(between);
  expect(await page.evaluate(() => document.documentElement.scrollWidth), "on a tablet").toBe(between.width);
  if (before !== null) await page.setViewportSize(before);
}

async function problemsIn(page: Page, within: string, rules: readonly string[] = []): Promise<string[]> {
  // There are no frames within the pages, and without looking for them it takes half the time.
  // Nor are the places of all that is good looked for, which takes most of the rest.
  const axe = new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ["violations"] })
    .include(within);
  const { violations } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map((node) => node.html).join("\n  ")}`,
  );
}

/** Nothing runs out of the side, and no text out of its button or field. */
export async function expectNothingClipped(page: Page, width: number): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  const clipped = await page.evaluate(() =>
    [...document.querySelectorAll("button, a, label, h1, h2, h3, p, legend, summary")]
      .filter((element) => element.checkVisibility() && element.scrollWidth > element.clientWidth + 1)
      .filter((element) => getComputedStyle(element).overflowX !== "visible")
      .filter((element) => !element.closest(".onlyRead") && element.clientWidth > 1)
      .map((element) => element.textContent),
  );
  expect(clipped).toEqual([]);
}
