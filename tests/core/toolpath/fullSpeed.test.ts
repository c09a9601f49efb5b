import { describe, expect, test } from 'vitest'
import { fullSpeed, layerTimes } from '../../../src/core/toolpath/fullSpeed.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import { SMALL_BOX, writeBox } from '../../support/writeToolpath.ts'

const MOTION = { accelMmS2: 1000, wallAccelMmS2: 1000, travelAccelMmS2: 1000, cornerMmS: 8 }

/** A box that is written at 40 mm/s, or at so many where its layers were slowed. */
const boxAt = (sizeMm: readonly [number, number], layers: number, speedMmS = 40): string =>
  writeBox({ ...SMALL_BOX, sizeMm, layers }).text.replaceAll('F2400', `F${60 * speedMmS}`)

function speedsOf(text: string) {
  const reader = toolpathReader({ ...MOTION, diameterMm: 1.75 })
  reader.push(new TextEncoder().encode(text))
  const { outer, inner, skin } = reader.end().kinds
  return [outer, inner, skin].map(({ speedMmS }) => speedMmS ?? 0)
}

describe('the speed of a kind of line', () => {
  test('is that of layers that were not slowed, however many were', () => {
    const text = `${boxAt([44, 40], 12)}G92 E0\n${boxAt([18, 14], 90, 15)}`
    for (const speed of speedsOf(text)) expect(Math.abs(speed / 40 - 1)).toBeLessThan(0.01)
  })

  test('is as written where all layers take as long: the moves do not tell more', () => {
    for (const speed of speedsOf(boxAt([18, 14], 40, 15))) {
      expect(Math.abs(speed / 15 - 1)).toBeLessThan(0.01)
    }
  })

  test('by hand: three layers of 10 s at 20 mm/s, one of 30 s at 50', () => {
    const times = layerTimes()
    const kind = fullSpeed()
    for (const [timeS, speedMmS, lengthMm] of [
      [10, 20, 100],
      [10, 20, 100],
      [11, 22, 100],
      [30, 50, 60],
    ] as const) {
      kind.add(times.add(timeS), speedMmS, lengthMm)
    }
    expect(kind.told(times.slowedUpTo())).toBeCloseTo(50, 0)
    // Of all of them the middle lies at 20.
    expect(kind.told(-Infinity)).toBeCloseTo(20, 0)
    expect(fullSpeed().told(0)).toBeNull()
  })

  test('a few tips of a second are no slowed layers', () => {
    const times = layerTimes()
    const kind = fullSpeed()
    kind.add(times.add(1), 10, 5)
    for (let k = 0; k < 60; k++) kind.add(times.add(8), 20, 100)
    for (let k = 0; k < 30; k++) kind.add(times.add(40), 60, 300)
    expect(kind.told(times.slowedUpTo())).toBeCloseTo(60, 0)
  })
})
