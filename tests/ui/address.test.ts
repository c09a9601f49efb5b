import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatAddress, parseAddress, SHEETS } from '../../src/ui/set/address.ts'

const SEED = 20_271_126

describe('an address of the page', () => {
  test('is read back as what was written, for every sheet, with and without a part', () => {
    const item = fc.option(fc.integer({ min: 1, max: 99_999 }))
    fc.assert(
      fc.property(fc.constantFrom(...SHEETS), item, ({ id }, number) => {
        expect(parseAddress(formatAddress(id, number))).toEqual({ sheet: id, item: number })
      }),
      { seed: SEED },
    )
  })

  test.each([
    ['#/frame', 'frame', null],
    ['#/part/2', 'part', 2],
    ['#/part/002', 'part', 2],
    ['#/part', 'part', null],
    ['#/bench/', 'bench', null],
    ['#/paper', 'paper', null],
  ] as const)('%s is sheet %s, part %s', (hash, sheet, item) => {
    expect(parseAddress(hash)).toEqual({ sheet, item })
  })

  test('counts parts from 1: there is no part 0', () => {
    expect(parseAddress('#/part/0')).toEqual({ sheet: 'part', item: null })
  })

  test.each([
    '',
    '#',
    '#/',
    '#frame',
    '#/nowhere',
    '#/part/x',
    '#/part/-1',
    '#/part/1.5',
    '#/Frame',
  ])('%s names no sheet and is that of the frame', (hash) => {
    expect(parseAddress(hash)).toEqual({ sheet: 'frame', item: null })
  })

  test('is that of some sheet whatever is typed', () => {
    const sheets: readonly string[] = ['paper', ...SHEETS.map(({ id }) => id)]
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const hash of [text, `#/${text}`, `#/part/${text}`]) {
          const { sheet, item } = parseAddress(hash)
          expect(sheets).toContain(sheet)
          if (item !== null) expect(Number.isInteger(item) && item > 0).toBe(true)
        }
      }),
      { seed: SEED, numRuns: 500 },
    )
  })
})
