import { defineConfig } from "vitest/config";

export default defineConfig({
  root: import.meta.dirname,
  // Nothing outside this folder has a say in how the tests run.
  envDir: false,
  publicDir: false,
  css: { postcss: {} },
  test: {
    include: ["src/**/*.test.{ts,tsx}", "test/**/*.test.ts"],
    allowOnly: false,
    passWithNoTests: false,
    testTimeout: 60_000,
    // By itself it leaves one core idle, which on two cores is half of them.
    maxWorkers: "100%",
  },
});
