/** How many tests a run had, from the reports that the runners write. */

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

/** A step that is one test by itself. @param {boolean} passed @returns {Count} */
export const oneOf = (passed) => ({ passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 });

/**
 * @param {any} report What vitest's JSON reporter wrote; undefined if it wrote nothing.
 * @param {number} status Exit status of the run.
 * @returns {Count}
 */
export function countOfVitest(report, status) {
  // A file that cannot be loaded has no tests, and still is a failure.
  const broken = (report?.testResults ?? []).filter(
    (/** @type {any} */ file) => file.status === "failed" && !file.assertionResults.some(isFailure),
  );
  const skipped = (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0);
  return settled(report?.numPassedTests ?? 0, (report?.numFailedTests ?? 0) + broken.length, skipped, status);
}

const isFailure = (/** @type {any} */ test) => test.status === "failed";

/**
 * @param {any} report What Playwright's JSON reporter wrote; undefined if it wrote nothing.
 * @param {number} status Exit status of the run.
 * @returns {Count}
 */
export function countOfPlaywright(report, status) {
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = report?.stats ?? {};
  return settled(expected, unexpected + flaky, skipped, status);
}

/** A run without a single test, or one that failed outside its tests, counts as one failure. */
function settled(
  /** @type {number} */ passed,
  /** @type {number} */ failed,
  /** @type {number} */ skipped,
  /** @type {number} */ status,
) {
  const silent = failed === 0 && (status !== 0 || passed === 0);
  return { passed, failed: silent ? 1 : failed, skipped };
}
