import fc from 'fast-check'
import { expect, test } from 'vitest'
import { scanNumber } from '../../../src/core/formats/number.ts'

const SEED = 20_251

const scan = (text: string): number => scanNumber({ bytes: new TextEncoder().encode(text), at: 0 })

test('every spelling of a number reads as the language itself reads it', () => {
  for (const text of [
    '0',
    '7',
    '-3',
    '+3',
    '1.5',
    '.5',
    '+.5',
    '-.5',
    '5.',
    '1e5',
    '1E5',
    '1E+05',
    '1.e-3',
    '1e-05',
    '-1.25E+002',
    '00012.50',
    '0.000000000000000000000001',
    '123456789012345678901234567890',
    '0.1234567890123456789',
    '9007199254740993',
    '1e22',
    '1e23',
    '4.9e-324',
    '1e-400',
    '2.2250738585072011e-308',
    '0.30000001192092896',
  ]) {
    expect(scan(text), text).toBe(Number(text))
  }
})

test('what is no number reads as none and leaves the cursor where it was', () => {
  for (const text of [
    '',
    '-',
    '+',
    '.',
    'e5',
    '1e',
    '1e+',
    '1,5',
    '1.2.3',
    '1x',
    'nan',
    'inf',
    '--1',
    '0x10',
  ]) {
    const cursor = { bytes: new TextEncoder().encode(text), at: 0 }
    expect(scanNumber(cursor), text).toBeNaN()
    expect(cursor.at, text).toBe(0)
  }
})

test('minus zero reads as zero, so that vertices weld', () => {
  expect(Object.is(scan('-0.000'), 0)).toBe(true)
  expect(Object.is(scan('-1e-400'), 0)).toBe(true)
})

test(`random numbers in random spellings are correctly rounded (seed ${SEED})`, () => {
  const spelled = fc
    .tuple(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom<(v: number) => string>(
        String,
        (v) => v.toExponential(6),
        (v) => v.toExponential().toUpperCase(),
        (v) => v.toPrecision(17),
        (v) => v.toPrecision(21),
        (v) => String(Math.abs(v) < 1e38 ? Math.fround(v) : v),
        (v) => (Math.abs(v) < 1e20 ? v.toFixed(4) : String(v)),
      ),
    )
    .map(([value, spell]) => spell(value))
  fc.assert(
    fc.property(spelled, (text) => {
      expect(scan(text)).toBe(Number(text) + 0)
    }),
    { seed: SEED, numRuns: 3000 },
  )
})

test(`digits in any number and place are correctly rounded (seed ${SEED})`, () => {
  const digits = fc.string({
    unit: fc.constantFrom(...Array.from('0123456789')),
    minLength: 1,
    maxLength: 24,
  })
  fc.assert(
    fc.property(digits, digits, fc.integer({ min: -30, max: 30 }), (whole, part, power) => {
      for (const text of [`${whole}.${part}`, `${whole}.${part}e${power}`, `.${part}`, whole]) {
        expect(scan(text), text).toBe(Number(text))
      }
    }),
    { seed: SEED, numRuns: 2000 },
  )
})
