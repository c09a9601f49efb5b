import { describe, expect, it } from 'vitest'
import type { MassLine } from '../../../src/core/aircraft.ts'
import { crossedLines, crossings, standingText } from '../../../src/core/ledger/crossings.ts'
import { INFORMATION_LINES, MASS_LINES } from '../../../src/core/ledger/massLines.ts'

const ALL: readonly MassLine[] = [...MASS_LINES, ...INFORMATION_LINES]
const lineOf = (id: string): MassLine => ALL.find((line) => line.id === id)!
const isBelow = (massG: number, id: string): boolean => crossings(massG, [lineOf(id)])[0]!.below

describe('crossings', () => {
  // EU: easa.europa.eu/en/faq/116513 and Del. Reg. (EU) 2019/945. UK: rules from January 2026. US: 14 CFR Part 48, 0.55 lb = 249.48 g.
  it.each([
    ['eu-250', 249.9, 250],
    ['eu-250', 249.999, 250],
    ['eu-25000', 24_999, 25_000],
    ['eu-c1-900', 899, 900],
    ['eu-c2-4000', 3999, 4000],
    ['uk-100', 99, 100],
    ['uk-250', 249.9, 250],
    ['us-250', 249.4, 249.6],
    ['us-25000', 24_947, 24_948],
    ['jp-100', 99, 100],
  ] as const)('puts %s between %s g and %s g', (id, belowG, notBelowG) => {
    expect(isBelow(belowG, id)).toBe(true)
    expect(isBelow(notBelowG, id)).toBe(false)
  })

  it('takes the pound as 453.59237 g (international yard and pound agreement, 1959)', () => {
    expect(lineOf('us-250').thresholdG).toBeCloseTo(249.475_803_5, 7)
    expect(lineOf('us-25000').thresholdG).toBeCloseTo(24_947.580_35, 5)
  })

  it('says how much is left', () => {
    expect(crossings(240, [lineOf('eu-250')])[0]?.leftG).toBe(10)
    expect(crossings(255, [lineOf('eu-250')])[0]?.leftG).toBe(-5)
  })
})

describe('crossedLines', () => {
  it('names the lines a change crosses, both ways', () => {
    const up = crossedLines(249, 250.5, ALL)
    expect(up.map(({ line, below }) => [line.id, below])).toEqual([
      ['eu-250', false],
      ['uk-250', false],
      ['us-250', false],
    ])
    const down = crossedLines(250.5, 249.45, ALL)
    expect(down.map(({ line, below }) => [line.id, below])).toEqual([
      ['eu-250', true],
      ['uk-250', true],
      ['us-250', true],
    ])
  })

  it('is silent while no line is crossed, also when one is touched from above', () => {
    expect(crossedLines(250, 260, ALL)).toEqual([])
    expect(crossedLines(250.1, 250, [lineOf('eu-250')])).toEqual([])
    expect(crossedLines(250, 250, ALL)).toEqual([])
  })
})

describe('the texts of mass lines', () => {
  const text = (massG: number, line: MassLine) => standingText(crossings(massG, [line])[0]!, 'en')

  it('all end with the same advice', () => {
    for (const line of ALL) {
      expect(line.meaning).toMatch(/; check your authority's rules$/)
      expect(text(249.9, line)).toMatch(/; check your authority's rules$/)
    }
  })

  it('carry a date and a source', () => {
    for (const line of ALL) {
      expect(line.readOn).toMatch(/^\d{4}-\d\d-\d\d$/)
      expect(line.source.length).toBeGreaterThan(10)
    }
  })

  it('have ids of their own', () => {
    expect(new Set(ALL.map(({ id }) => id)).size).toBe(ALL.length)
  })

  it('show tenths of a gram beside a line and never round onto it', () => {
    expect(text(249.9, lineOf('eu-250'))).toMatch(
      /^249\.9\u00a0g is 0\.1\u00a0g below EU 250 g \(read 2026-11-25\)\./,
    )
    expect(text(250, lineOf('eu-250'))).toMatch(/^250\u00a0g is exactly on, and so not below,/)
    expect(text(249.999, lineOf('eu-250'))).toContain('just below')
  })

  it('add the advice to a line the user rewrote', () => {
    const own = { ...lineOf('eu-250'), meaning: 'Club field closes.' }
    expect(text(251, own)).toMatch(/Club field closes; check your authority's rules$/)
  })

  it('say that makers’ classes do not apply to a self-built craft', () => {
    expect(INFORMATION_LINES.map(({ thresholdG }) => thresholdG)).toEqual([900, 4000])
    for (const line of INFORMATION_LINES) {
      expect(line.meaning).toContain('does not apply to a self-built craft')
    }
  })
})
