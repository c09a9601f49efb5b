import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { headersFor, parseHeaders, policyForMeta } from '../../src/tools/headers.mjs'

const SHIPPED = parseHeaders(readFileSync('public/_headers', 'utf8'))

test('every rule that fits a path adds its headers, the later one winning', () => {
  const rules = parseHeaders('# note\n/*\n  A: 1\n  B: x: y\n\n/assets/*\n  A: 2\n/one\n  C: 3\n')
  expect(headersFor(rules, '/')).toEqual({ A: '1', B: 'x: y' })
  expect(headersFor(rules, '/assets/a.js')).toEqual({ A: '2', B: 'x: y' })
  expect(headersFor(rules, '/one')).toEqual({ A: '1', B: 'x: y', C: '3' })
})

test('a line that is no header is named', () => {
  expect(() => parseHeaders('/*\n  nonsense\n')).toThrow('nonsense')
  expect(() => parseHeaders('  A: 1\n')).toThrow('A: 1')
})

test('the shipped policy lets nothing in from elsewhere and runs no text as code', () => {
  const policy = headersFor(SHIPPED, '/')['Content-Security-Policy']
  expect(policy).toContain("default-src 'none'")
  expect(policy).not.toMatch(/unsafe|https?:|\*/)
})

test('the policy for the page leaves out what only a header can say', () => {
  const policy = policyForMeta(SHIPPED)
  expect(policy).not.toContain('frame-ancestors')
  expect(policy).toContain("script-src 'self'")
})
