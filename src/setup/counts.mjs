import { existsSync, readFileSync } from 'node:fs'

/** @typedef {{ passed: number, failed: number }} Counts */

/**
 * What a runner's JSON report says. A runner that crashed, ran nothing, or ended badly
 * without naming a failed test still counts as one failure.
 * @param {unknown} report
 * @param {number} exitCode
 * @param {(report: any) => Counts} read
 * @returns {Counts}
 */
export function count(report, exitCode, read) {
  /** @type {Counts} */
  let counts = { passed: 0, failed: 0 }
  try {
    counts = read(report)
  } catch {
    // No report, or not one of this runner's: counted as a failure below.
  }
  const { passed, failed } = counts
  const silent = failed === 0 && (exitCode !== 0 || passed === 0)
  return silent ? { passed, failed: 1 } : { passed, failed }
}

/**
 * Test files that could not be loaded hold no test to count, so each counts as one failure.
 * @param {any} report of Vitest
 * @returns {Counts}
 */
export function vitestCounts({ numPassedTests, numFailedTests, testResults }) {
  const broken = testResults.filter(
    (/** @type {any} */ file) =>
      file.status === 'failed' &&
      !file.assertionResults.some((/** @type {any} */ t) => t.status === 'failed'),
  )
  return { passed: numPassedTests, failed: numFailedTests + broken.length }
}

/**
 * @param {any} report of Playwright
 * @returns {Counts}
 */
export function playwrightCounts({ stats, errors }) {
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected + errors.length }
}

/** @param {string} file */
export function readReport(file) {
  try {
    return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined
  } catch {
    return undefined
  }
}
