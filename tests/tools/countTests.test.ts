import { expect, test } from 'vitest'
import { countTests } from '../../src/tools/countTests.mjs'

const passing = {
  status: 'passed',
  assertionResults: [{ status: 'passed' }, { status: 'skipped' }],
}
const failing = { status: 'failed', assertionResults: [{ status: 'passed' }, { status: 'failed' }] }
const broken = { status: 'failed', assertionResults: [] }

function report(
  numPassedTests: number,
  numFailedTests: number,
  ...testResults: (typeof passing)[]
) {
  return { numPassedTests, numFailedTests, numPendingTests: 1, testResults }
}

test('tests are counted as the report says', () => {
  expect(countTests(report(5, 0, passing), 0)).toMatchObject({ passed: 5, failed: 0, skipped: 1 })
  expect(countTests(report(5, 2, passing, failing), 1)).toMatchObject({ passed: 5, failed: 2 })
})

test('a file that could not be loaded counts as a failure', () => {
  expect(countTests(report(5, 0, passing, broken), 1)).toMatchObject({ passed: 5, failed: 1 })
  expect(countTests(report(5, 1, failing, broken), 1)).toMatchObject({ failed: 2 })
})

test('an error outside the tests, no report and no test are failures', () => {
  expect(countTests(report(5, 0, passing), 1)).toMatchObject({ passed: 5, failed: 1 })
  expect(countTests(report(5, 0, passing), null)).toMatchObject({ failed: 1 })
  expect(countTests(null, 0)).toMatchObject({ passed: 0, failed: 1 })
  expect(countTests(report(0, 0), 0)).toMatchObject({ passed: 0, failed: 1 })
})
