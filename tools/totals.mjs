/** Sums what the test runners report. A runner that fails without naming a failed test still counts as one failure. */

import { stripVTControlCharacters } from "node:util";

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
 * A browser test that broke once and held when it was tried again has passed: a machine with two busy cores is late now and then. It is named at the end, so
 * that one that does so often is looked into.
 *
 * @param {any} report Playwright's JSON report, or null if there is none
 * @param {number} exitCode
 * @returns {Totals}
 */
export function fromPlaywright(report, exitCode) {
  if (report === null) return { ...NONE, failed: 1 };
  const { expected, unexpected, flaky, skipped } = report.stats;
  return atLeastOneFailure({ passed: expected + flaky, failed: unexpected, skipped }, exitCode);
}

/**
 * What failed, by name, with the first line of why: the end of a long run is what is read.
 *
 * @param {any} report Vitest's JSON report @param {string} root the project's folder
 * @returns {string[]}
 */
export function failedInVitest(report, root) {
  return (report?.testResults ?? []).flatMap((/** @type {any} */ file) => {
    const name = file.name.replace(`${root}/`, "");
    const failed = file.assertionResults.filter((/** @type {any} */ test) => test.status === "failed");
    if (failed.length === 0) return file.status === "failed" ? [named(name, file.message)] : [];
    return failed.map((/** @type {any} */ test) => named(`${name}: ${test.fullName}`, test.failureMessages?.[0]));
  });
}

/** @param {any} report Playwright's JSON report @returns {string[]} as {@link failedInVitest}, and what passed only when tried again */
export function failedInPlaywright(report) {
  /** @param {any} suite @returns {string[]} */
  const inSuite = (suite) => [
    ...(suite.suites ?? []).flatMap(inSuite),
    ...(suite.specs ?? []).flatMap((/** @type {any} */ spec) =>
      spec.tests
        .filter((/** @type {any} */ test) => test.status === "unexpected" || test.status === "flaky")
        .map((/** @type {any} */ test) =>
          named(
            `${spec.file}: ${spec.title}`,
            test.results?.find((/** @type {any} */ one) => one.error)?.error.message,
            test.status === "flaky" ? "Passed when tried again" : "Failed",
          ),
        ),
    ),
  ];
  const outside = (report?.errors ?? []).map((/** @type {any} */ error) => named("outside every browser test", error.message));
  return [...(report?.suites ?? []).flatMap(inSuite), ...outside];
}

/** @param {string} name @param {string | undefined} why @param {string} [what] */
function named(name, why, what = "Failed") {
  const [line] = stripVTControlCharacters(why ?? "")
    .split("\n")
    .filter(Boolean);
  return `${what}: ${name}${line === undefined ? "" : ` (${line})`}`;
}

/** @param {Totals} totals @returns {string} `N passed, N failed`, and `, N skipped` if any were */
export function totalsLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}

/** @param {Totals} totals @param {number} exitCode @returns {Totals} */
function atLeastOneFailure(totals, exitCode) {
  return exitCode !== 0 && totals.failed === 0 ? { ...totals, failed: 1 } : totals;
}
