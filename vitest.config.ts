import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** What takes longest begins first: at the end one core would wait for the other. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => takesLong.test(moduleId);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

const takesLong =
  /plans\/(every-plan|plans-and|rules-kept)|plan\/stays|house\/same-plan|command-line|leftovers-laws|store\/(open-store|model)/;

export default defineConfig({
  root: import.meta.dirname,
  // Nothing outside this folder has a say in how the tests run.
  envDir: false,
  publicDir: false,
  css: { postcss: {} },
  test: {
    allowOnly: false,
    passWithNoTests: false,
    testTimeout: 60_000,
    // By itself it leaves one core idle, which on two cores is half of them.
    maxWorkers: "100%",
    include: ["src/**/*.test.{ts,tsx}", "test/**/*.test.ts"],
    // No file changes anything outside itself, so they share what has been loaded.
    isolate: false,
    sequence: { sequencer: LongestFirst },
  },
});
