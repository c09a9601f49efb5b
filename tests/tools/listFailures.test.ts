import { expect, test } from 'vitest'
import { listFailures } from '../../src/tools/listFailures.mjs'

const passed = { status: 'passed', fullName: 'adds', failureMessages: [] }
const failed = {
  status: 'failed',
  fullName: 'in ounces reads the same',
  failureMessages: [
    'AssertionError: \u001B[31mexpected 5\u001B[39m to be 6\n    at withApp (/x/tests/app/units.test.ts:104:7)',
  ],
}

test('each failure is named with its words and its place, and nothing else is', () => {
  const report = {
    testResults: [
      { name: '/x/tests/a.test.ts', message: '', status: 'passed', assertionResults: [passed] },
      {
        name: '/x/tests/app/units.test.ts',
        message: '',
        status: 'failed',
        assertionResults: [passed, failed],
      },
    ],
  }
  expect(listFailures(report, '/x')).toEqual([
    'tests/app/units.test.ts: in ounces reads the same\n' +
      '    AssertionError: expected 5 to be 6 (tests/app/units.test.ts:104:7)',
  ])
})

test('a file that could not be loaded is named, and pages of words are cut', () => {
  const broken = {
    name: '/x/tests/b.test.ts',
    message: `Cannot find ${'that '.repeat(100)}`,
    status: 'failed',
    assertionResults: [],
  }
  const [told = ''] = listFailures({ testResults: [broken] }, '/x')
  expect(told).toMatch(/^tests\/b\.test\.ts\n {4}Cannot find that .*…$/)
  expect(told.length).toBeLessThan(300)
})

test('of no report nothing is listed', () => {
  expect(listFailures(null, '/x')).toEqual([])
})
