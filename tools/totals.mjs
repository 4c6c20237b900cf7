/** Sums what the test runners report. A runner that fails without naming a failed test still counts as one failure. */

/** @typedef {{ passed: number, failed: number, skipped: number }} Totals */

/** @type {Totals} */
export const NONE = { passed: 0, failed: 0, skipped: 0 };

/** @param {Totals} a @param {Totals} b @returns {Totals} */
export function addTotals(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/**
 * @param {any} report Vitest's JSON report, or null if there is none
 * @param {number} exitCode
 * @returns {Totals}
 */
export function fromVitest(report, exitCode) {
  if (report === null) return { ...NONE, failed: 1 };
  // A file that cannot even be loaded has no tests in it to fail.
  const unloadable = report.testResults.filter(
    (/** @type {any} */ file) =>
      file.status === "failed" && !file.assertionResults.some((/** @type {any} */ test) => test.status === "failed"),
  ).length;
  return atLeastOneFailure(
    {
      passed: report.numPassedTests,
      failed: report.numFailedTests + unloadable,
      skipped: report.numPendingTests + report.numTodoTests,
    },
    exitCode,
  );
}

/**
 * @param {any} report Playwright's JSON report, or null if there is none
 * @param {number} exitCode
 * @returns {Totals}
 */
export function fromPlaywright(report, exitCode) {
  if (report === null) return { ...NONE, failed: 1 };
  const { expected, unexpected, flaky, skipped } = report.stats;
  return atLeastOneFailure({ passed: expected, failed: unexpected + flaky, skipped }, exitCode);
}

/** @param {Totals} totals @returns {string} `N passed, N failed`, and `, N skipped` if any were */
export function totalsLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}

/** @param {Totals} totals @param {number} exitCode @returns {Totals} */
function atLeastOneFailure(totals, exitCode) {
  return exitCode !== 0 && totals.failed === 0 ? { ...totals, failed: 1 } : totals;
}
