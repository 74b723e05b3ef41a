/** How many tests a run had, from the reports that the runners write. */
import { stripVTControlCharacters } from "node:util";

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
 * A test that passes at its second try is one that passed: `secondTries` names it.
 * @param {any} report What Playwright's JSON reporter wrote; undefined if it wrote nothing.
 * @param {number} status Exit status of the run.
 * @returns {Count}
 */
export function countOfPlaywright(report, status) {
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = report?.stats ?? {};
  return settled(expected + flaky, unexpected, skipped, status);
}

/**
 * The tests of a run that failed first and passed when they were tried again.
 * @param {any} report As `countOfPlaywright`.
 * @returns {readonly { readonly name: string, readonly why: string }[]} `why`: the first line of the first failure.
 */
export function secondTries(report) {
  return (report?.suites ?? []).flatMap((/** @type {any} */ suite) => secondTriesIn(suite));
}

/** @param {any} suite @returns {{ name: string, why: string }[]} */
function secondTriesIn({ specs = [], suites = [] }) {
  const own = specs.flatMap((/** @type {any} */ { title, file, line, tests }) =>
    tests
      .filter((/** @type {any} */ { status }) => status === "flaky")
      .map((/** @type {any} */ { results }) => ({ name: `${file}:${line} ${title}`, why: firstFailure(results) })),
  );
  return [...own, ...suites.flatMap(secondTriesIn)];
}

/** @param {any[]} results */
function firstFailure(results) {
  const message = results.find(({ error }) => error !== undefined)?.error.message ?? "";
  return stripVTControlCharacters(message).split("\n")[0] ?? "";
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
