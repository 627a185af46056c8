// Counts a test run from its report, so that nothing which went wrong can be missing from the count.

/**
 * @typedef {object} Report
 * @property {number} numPassedTests
 * @property {number} numFailedTests
 * @property {number} numPendingTests
 * @property {number} numTodoTests
 * @property {{ status: string, assertionResults: unknown[] }[]} testResults one a file
 */

/**
 * A file that could not even be loaded has no tests in the report, and an error outside every test none either: each
 * counts as one failure.
 * @param {unknown} report the runner's JSON report; undefined where there is none
 * @param {number} code the runner's exit code
 */
export function countTests(report, code) {
  if (report === undefined) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } =
    /** @type {Report} */ (report);
  const unloaded = testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  );
  const counted = numFailedTests + unloaded.length;
  const failed = counted === 0 && code !== 0 ? 1 : counted;
  return { passed: numPassedTests, failed, skipped: numPendingTests + numTodoTests };
}
