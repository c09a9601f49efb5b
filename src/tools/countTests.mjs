/**
 * @typedef {object} SpecReport the part we read of what vitest's JSON reporter writes
 * @property {number} numPassedTests
 * @property {number} numFailedTests
 * @property {number} numPendingTests
 * @property {number} [numTodoTests]
 * @property {readonly { status: string, assertionResults: readonly { status: string }[] }[]}
 *   testResults
 */

/**
 * Counts a test run so that no failure is lost: a file that could not be loaded, an error outside
 * every test and a run that ended early or ran nothing count as one failure each.
 *
 * @param {SpecReport | null} report null when there is none
 * @param {number | null} exitCode null when the run was killed
 * @returns {{ passed: number, failed: number, skipped: number, note: string }}
 */
export function countTests(report, exitCode) {
  if (report === null) return { passed: 0, failed: 1, skipped: 0, note: 'the run left no report' }
  const brokenFiles = report.testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  ).length
  const counted = {
    passed: report.numPassedTests,
    failed: report.numFailedTests + brokenFiles,
    skipped: report.numPendingTests + (report.numTodoTests ?? 0),
    note: brokenFiles === 0 ? '' : `${brokenFiles} files could not be run`,
  }
  if (counted.failed > 0) return counted
  if (exitCode !== 0) return { ...counted, failed: 1, note: 'an error outside the tests' }
  if (counted.passed === 0) return { ...counted, failed: 1, note: 'no test ran' }
  return counted
}
