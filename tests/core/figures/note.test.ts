import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { infillNote } from '../../../src/core/figures/note.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'
import { blockCensus } from '../../support/blockCensus.ts'

const noteOf = (w: number, d: number, h: number, recipe: Recipe): string | null => {
  const census = blockCensus(w, d, h, recipe)
  const figures = partFigures(census, recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)
  return infillNote(figures, census, recipe, 'en-GB')
}

/** 1 mm of skin above and below, no side walls, 30 % inside. */
const DECK: Recipe = {
  ...RECIPE_DEFAULTS,
  walls: 0,
  topSkins: 5,
  bottomSkins: 5,
  infillPct: 30,
  pattern: 'lines',
}

describe('infillNote', () => {
  // Arithmetic: (2 + 0.3)/3 = 77 % solid before side walls; turns at the ends of the lines come on
  // top.
  it('says that a 3 mm deck with 1 mm skins at 30 % is already 77 % solid', () => {
    const note = noteOf(136, 98, 3, DECK)
    expect(note).toMatch(/Walls and skins alone fill 67\s% of this part/)
    expect(note).toMatch(/at 30\s% infill it is 77\s% solid/)
    expect(note).toMatch(/only about 4\.3\s%/)
  })

  it.each([20, 40, 60])('says at %i per cent what ten points more then do', (infillPct) => {
    const census = blockCensus(136, 98, 3, DECK)
    const at = (pct: number) => {
      const recipe = { ...DECK, infillPct: pct }
      return partFigures(census, recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)
    }
    const now = at(infillPct)
    const note = infillNote(now, census, { ...DECK, infillPct }, 'en-GB')
    const said = Number(/about ([\d.]+)/.exec(note ?? '')?.[1])
    const done = 100 * (at(infillPct + 10).massG.mid / now.massG.mid - 1)
    expect(Math.abs(said - done)).toBeLessThan(0.5)
  })

  it('says nothing of a deck that is nearly half room', () => {
    // 3 mm in layers of 0.2 with four skins above and below: 1.4 of 3 mm are room.
    expect(noteOf(136, 98, 3, RECIPE_DEFAULTS)).toBeNull()
  })

  it('keeps quiet where infill decides the mass', () => {
    expect(noteOf(60, 60, 40, RECIPE_DEFAULTS)).toBeNull()
  })

  it('says so where there is no room for infill at all', () => {
    expect(noteOf(60, 60, 1.6, RECIPE_DEFAULTS)).toMatch(/infill changes nothing/)
  })

  it('has nothing to say of nothing', () => {
    expect(noteOf(0, 0, 0, RECIPE_DEFAULTS)).toBeNull()
  })
})
