import { createServer } from "node:net";
import { defineConfig } from "@playwright/test";
import { findTestBrowser, noBrowser } from "./scripts/browser.mjs";

const browser = await findTestBrowser();
if (browser === undefined) throw new Error(noBrowser);

// The workers that Playwright starts read this file again, and must come to the same port.
process.env.VERSO_TEST_PORT ??= String(await freePort());
const port = Number(process.env.VERSO_TEST_PORT);
const address = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: "test/browser",
  // What takes longest begins first: at the end one worker would wait for the other.
  projects: [
    { name: "store", testMatch: "**/store.browser.ts" },
    { name: "app", testMatch: "**/*.browser.ts", testIgnore: "**/store.browser.ts" },
  ],
  outputDir: "out/browser",
  fullyParallel: true,
  workers: 2,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [["list"]],
  use: {
    baseURL: address,
    locale: "en-US",
    // Each would fetch and keep the whole app beside its test; those that are about it allow it.
    serviceWorkers: "block",
    // Keeping a record of every step costs a third of the time: VERSO_TRACE=1 for a test that fails.
    trace: process.env.VERSO_TRACE ? "retain-on-failure" : "off",
    screenshot: "only-on-failure",
    // What a press waits for is there or is not: only a search takes longer, and is waited for by its own text.
    actionTimeout: 15_000,
    launchOptions: {
      executablePath: browser,
      args: [
        ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  webServer: {
    command: `node scripts/serve.mjs --port ${port}`,
    url: address,
    reuseExistingServer: false,
  },
});

function freePort(): Promise<number> {
  return new Promise((done, failed) => {
    const server = createServer();
    server.once("error", failed);
    server.listen(0, "127.0.0.1", () => {
      const place = server.address();
      server.close(() => (typeof place === "object" && place !== null ? done(place.port) : failed()));
    });
  });
}
