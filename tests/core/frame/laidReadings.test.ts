import { describe, expect, test } from 'vitest'
import { laidReadings } from '../../../src/core/frame/frameReadings.ts'
import { frameDoubt, type DoubtedPart } from '../../../src/core/frame/frameDoubt.ts'
import type { LaidReading } from '../../../src/core/model/readings.ts'
import { doubtedPart } from '../../support/doubtedParts.ts'

/**
 * A part of 10 g with one habit that is not known, packing and density; effects are one deviation.
 */
function part(id: string): DoubtedPart {
  const plain = doubtedPart(id, 10, 1)
  const shared = [
    { id: 'density:pla', name: 'Density', effect: 0.03 },
    { id: 'packing:p/pla', name: 'Packing', effect: 0.03 },
    { id: 'slopeBandMm:p', name: 'Bands under slopes', effect: 0.04 },
  ]
  const { figures } = plain
  const doubt = { ...figures.doubt, mass: { shared, own: 0.01 } }
  return { ...plain, figures: { ...figures, doubt } }
}

const file = (more: Partial<LaidReading> = {}): LaidReading => ({
  id: 'f',
  partId: 'a',
  fileName: 'a.gcode',
  depositMm3: 1060,
  calculatedMm3: 1000,
  timeS: 3600,
  calculatedS: 3600,
  date: null,
  trusted: false,
  ...more,
})

const parts = [part('a'), part('b')]
const width = (sigma: number, mean: number) => sigma / mean

describe('a printer’s file as a reading', () => {
  const before = frameDoubt(parts, [])
  const after = frameDoubt(parts, [], laidReadings([file()], parts, 300))

  test('moves another part by what habits share, by hand', () => {
    // Ratio 1.06 over a habit of 0.04, an own error of 0.01 and a noise of 0.01 · 1.06.
    const noise = (0.01 * 1.06) ** 2
    const gain = 0.04 ** 2 / (0.04 ** 2 + 0.01 ** 2 + noise)
    const { mean, sigma } = after.piece('b')
    expect(mean).toBeCloseTo(10 * (1 + gain * 0.06), 6)
    const was = before.piece('b')
    expect(was.sigma ** 2 - sigma ** 2).toBeCloseTo((10 * 0.04) ** 2 * gain, 6)
    expect(width(sigma, mean)).toBeLessThan(width(was.sigma, was.mean))
  })

  test('teaches nothing of density and packing, which moves do not show', () => {
    const ratio = laidReadings([file()], parts, 300)[0]!
    expect(ratio.of).toMatchObject({ kind: 'laid', shared: [{ id: 'slopeBandMm:p' }] })
    const { sigma } = after.piece('b')
    // What is left is at least density and packing.
    expect(sigma / 10).toBeGreaterThan(Math.hypot(0.03, 0.03))
  })

  test('one far off is set aside, and one of a part that is gone says nothing', () => {
    const odd = frameDoubt(parts, [], laidReadings([file({ depositMm3: 1500 })], parts, 300))
    expect(odd.known.strays.map(({ id }) => id)).toContain('f')
    expect(odd.piece('b').mean).toBeCloseTo(10, 9)
    expect(laidReadings([file({ partId: 'gone' })], parts, 300)).toEqual([])
  })
})
