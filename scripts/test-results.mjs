/**
 * What vitest's report and exit status come to. Whatever did not run counts as failed: a file that could not be
 * read, a skipped test, no test at all, a crash.
 */
export function resultsOf(report, status) {
  if (report === null) return { passed: 0, failed: 1 };
  const passed = report.numPassedTests;
  const broken = report.testResults.filter(
    ({ status, assertionResults }) =>
      status === "failed" && !assertionResults.some((result) => result.status === "failed"),
  ).length;
  const failed = report.numTotalTests - passed + broken;
  const hidden = failed === 0 && (status !== 0 || passed === 0) ? 1 : 0;
  return { passed, failed: failed + hidden };
}

/** The same of Playwright's report. A test that only passed when it was tried again counts as failed, too. */
export function browserResultsOf(report, status) {
  if (report === null) return { passed: 0, failed: 1 };
  const { expected: passed, unexpected, flaky, skipped } = report.stats;
  const failed = unexpected + flaky + skipped + report.errors.length;
  const hidden = failed === 0 && (status !== 0 || passed === 0) ? 1 : 0;
  return { passed, failed: failed + hidden };
}
