import { describe, expect, it } from "vitest";
import { browserResultsOf, resultsOf } from "../../scripts/test-results.mjs";

type Assertion = { readonly status: string };
const file = (status: string, ...assertionResults: readonly Assertion[]) => ({ status, assertionResults });
const [good, bad, skipped] = [{ status: "passed" }, { status: "failed" }, { status: "pending" }];

describe("the count at the end of npm test", () => {
  it.each([
    ["all good", { numPassedTests: 2, numTotalTests: 2, testResults: [file("passed", good, good)] }, 0, 2, 0],
    [
      "one test failed",
      { numPassedTests: 1, numTotalTests: 2, testResults: [file("failed", good, bad)] },
      1,
      1,
      1,
    ],
    [
      "a file that can't be read",
      { numPassedTests: 1, numTotalTests: 1, testResults: [file("passed", good), file("failed")] },
      1,
      1,
      1,
    ],
    [
      "a skipped test",
      { numPassedTests: 1, numTotalTests: 2, testResults: [file("passed", good, skipped)] },
      0,
      1,
      1,
    ],
    ["no tests at all", { numPassedTests: 0, numTotalTests: 0, testResults: [] }, 0, 0, 1],
    [
      "an error outside the tests",
      { numPassedTests: 1, numTotalTests: 1, testResults: [file("passed", good)] },
      1,
      1,
      1,
    ],
    ["no report", null, 1, 0, 1],
  ])("%s", (_, report, status, passed, failed) => {
    expect(resultsOf(report, status)).toEqual({ passed, failed });
  });
});

describe("the count of the browser tests", () => {
  const stats = { expected: 3, unexpected: 0, flaky: 0, skipped: 0 };
  it.each([
    ["all good", { stats, errors: [] }, 0, 3, 0],
    ["one failed", { stats: { ...stats, unexpected: 1 }, errors: [] }, 1, 3, 1],
    ["one skipped", { stats: { ...stats, skipped: 1 }, errors: [] }, 0, 3, 1],
    ["one good only at the second try", { stats: { ...stats, flaky: 1 }, errors: [] }, 0, 3, 1],
    ["none at all", { stats: { ...stats, expected: 0 }, errors: [] }, 0, 0, 1],
    ["a file that can't be read", { stats, errors: [{}] }, 1, 3, 1],
    ["a crash after good tests", { stats, errors: [] }, 1, 3, 1],
    ["no report", null, 1, 0, 1],
  ])("%s", (_, report, status, passed, failed) => {
    expect(browserResultsOf(report, status)).toEqual({ passed, failed });
  });
});
