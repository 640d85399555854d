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

type Fixtures = {
  /**
   * What went wrong in the pages of this test: each violation of the headers, error on the console, unhandled
   * rejection and request to another place, in words. It must be empty at the end; a test that provokes one takes it
   * out (`troubles.splice(0)`).
   */
  readonly troubles: string[];
};

export const test = base.extend<Fixtures>({
  troubles: [
    async ({ context, baseURL }, use) => {
      const troubles: string[] = [];
      await watch(context, new URL(baseURL ?? "").origin, troubles);
      await use(troubles);
      expect(troubles, "what went wrong in the pages").toEqual([]);
    },
    { auto: true },
  ],
});

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

/** Fails with axe's own words where the page, as it stands, keeps someone from using it: in light, then in dark. */
export async function expectAccessible(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: "light", reducedMotion: "reduce" });
  expect(await problemsIn(page), "in light").toEqual([]);
  await page.emulateMedia({ colorScheme: "dark", reducedMotion: "reduce" });
  // The same elements in other colours: nothing else can have changed.
  expect(await problemsIn(page, ["color-contrast"]), "in dark").toEqual([]);
}

async function problemsIn(page: Page, rules: readonly string[] = []): Promise<string[]> {
  // There are no frames within the pages, and without looking for them it takes half the time.
  const axe = new AxeBuilder({ page }).setLegacyMode();
  const { violations } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map((node) => node.html).join("\n  ")}`,
  );
}
