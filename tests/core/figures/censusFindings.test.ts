import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { censusFindings } from '../../../src/core/figures/censusFindings.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { blockCensus } from '../../support/blockCensus.ts'

function findingsOf(h: number, doubtfulShare: number) {
  const census = { ...blockCensus(60, 60, h, RECIPE_DEFAULTS), doubtfulShare }
  const figures = partFigures(
    census,
    RECIPE_DEFAULTS,
    MATERIALS[0]!,
    PRINTER_DEFAULT,
    PRICES_DEFAULTS,
  )
  return censusFindings([], figures, census, RECIPE_DEFAULTS, 'en-GB')
}

describe('censusFindings', () => {
  it('has nothing to say of a sound thick part', () => {
    expect(findingsOf(40, 0)).toEqual([])
  })

  it('tells how much of the outline was bridged', () => {
    const [finding] = findingsOf(40, 0.034)
    expect(finding).toMatchObject({ code: 'doubtful-layers', grade: 'changes the grams' })
    expect(finding!.message).toMatch(/leaves 3\.4\s% of its layers’ outlines open/)
    expect(findingsOf(40, 0.0001)).toEqual([])
  })

  it('notes that a thin deck is mostly skin', () => {
    expect(findingsOf(2, 0).map(({ code }) => code)).toEqual(['mostly-skin'])
  })
})
