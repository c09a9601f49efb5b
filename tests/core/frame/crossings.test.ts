import { describe, expect, it } from 'vitest'
import type { MassLine } from '../../../src/core/model/aircraft.ts'
import { crossedLines, crossings, crossingWords } from '../../../src/core/frame/crossings.ts'
import { INFORMATION_LINES, MASS_LINES } from '../../../src/core/data/massLines.ts'

const ALL: readonly MassLine[] = [...MASS_LINES, ...INFORMATION_LINES]
const lineOf = (id: string): MassLine => ALL.find((line) => line.id === id)!
const isBelow = (massG: number, id: string): boolean => crossings(massG, [lineOf(id)])[0]!.below

describe('crossings', () => {
  // EU: easa.europa.eu/en/faq/116513 and Del. Reg. (EU) 2019/945. UK: rules from January 2026. US:
  // 14 CFR Part 48, 0.55 lb = 249.48 g.
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

describe('crossingWords', () => {
  const at = (basicMassG: number, limitG: number | null = null, growthG = 0) => ({
    basicMassG,
    limitG,
    marginG: limitG === null ? null : limitG - basicMassG - growthG,
  })
  const words = (before: number, after: number, lines = [lineOf('eu-250')]) =>
    crossingWords(at(before), at(after), lines, 'en')

  it('says which lines a change crossed, and whose rules to check', () => {
    expect(words(200, 300, [lineOf('eu-250'), lineOf('uk-250')])).toBe(
      "300 g all-up: no longer below EU 250 g, UK 250 g. Check your authority's rules.",
    )
    expect(words(300, 200)).toBe("200 g all-up: now below EU 250 g. Check your authority's rules.")
  })

  it('is no bare yes or no within 3 % of the line, both ends counted in', () => {
    expect(words(260, 249.96)).toBe(
      "249.96 g all-up: now below EU 250 g, too close to be sure. Check your authority's rules.",
    )
    for (const after of [242.5, 257.5]) {
      expect(words(after < 250 ? 260 : 240, after)).toContain('too close to be sure')
    }
    for (const after of [242.4, 257.6]) {
      expect(words(after < 250 ? 260 : 240, after)).not.toContain('too close')
    }
  })

  it('tells of the limit with growth counted in, and not as a bare yes near it', () => {
    expect(crossingWords(at(590, 610, 10), at(620, 610, 10), [], 'en')).toBe(
      'Over your mass limit by 20 g, growth included.',
    )
    expect(crossingWords(at(620, 610, 10), at(560, 610, 10), [], 'en')).toBe(
      'Back within your mass limit, 40 g to spare after growth.',
    )
    expect(crossingWords(at(620, 610), at(609, 610), [], 'en')).toBe(
      'Back within your mass limit, 1 g to spare after growth, too close to be sure.',
    )
  })

  it('is silent where nothing is crossed, and where a limit is set or lifted', () => {
    expect(words(250, 260)).toBeNull()
    expect(crossingWords(at(620), at(620, 610), [], 'en')).toBeNull()
    expect(crossingWords(at(620, 610), at(620), [], 'en')).toBeNull()
  })
})

describe('the texts of mass lines', () => {
  it('all end with the same advice', () => {
    for (const line of ALL) {
      expect(line.meaning).toMatch(/; check your authority's rules$/)
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

  it('say that makers’ classes do not apply to a self-built craft', () => {
    expect(INFORMATION_LINES.map(({ thresholdG }) => thresholdG)).toEqual([900, 4000])
    for (const line of INFORMATION_LINES) {
      expect(line.meaning).toContain('does not apply to a self-built craft')
    }
  })
})
