import { describe, expect, it } from 'vitest'
import { isWithin, PRINTER_MORE_LIMITS } from '../../../src/core/data/limits.ts'
import { MORE_FIELDS, moreOf } from '../../../src/core/data/printerMore.ts'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'

describe('speeds that may be left out', () => {
  it('follow the speed of wall or skin, alone typed, by the ratio that is told', () => {
    const slow = moreOf({ ...PRINTER_DEFAULT, wallMmS: 30, skinMmS: 40 })
    expect(slow).toEqual({
      outerWallMmS: 24,
      smallLoopMmS: 18,
      gapMmS: 18,
      topSkinMmS: 32,
      strandMmS: 24,
      floorMmS: 10,
    })
  })

  it('hold as typed, whatever the others are', () => {
    const more = moreOf({ ...PRINTER_DEFAULT, wallMmS: 30, outerWallMmS: 55, floorMmS: 3 })
    expect(more).toMatchObject({ outerWallMmS: 55, smallLoopMmS: 18, floorMmS: 3 })
  })

  it.each(PRINTERS.map((printer) => [printer.name, printer] as const))(
    'of %s stay inside what may be typed',
    (_, printer) => {
      const more = moreOf(printer)
      const outside = MORE_FIELDS.filter(
        ({ key }) => !isWithin(PRINTER_MORE_LIMITS[key], more[key]),
      )
      expect(outside).toEqual([])
    },
  )

  it('say what they are, and follow by a ratio inside the range of printers', () => {
    for (const { explain, follows } of MORE_FIELDS) {
      expect(explain).toMatch(/^[A-Z].{20,}\.$/)
      if (follows === null) continue
      expect(follows.low).toBeLessThanOrEqual(follows.ratio)
      expect(follows.high).toBeGreaterThanOrEqual(follows.ratio)
    }
  })
})
