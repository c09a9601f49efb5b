import { describe, expect, it } from 'vitest'
import { flowMm3S, meltSpeedMmS } from '../../../src/core/figures/flow.ts'

describe('flowMm3S', () => {
  // V. E. Kuznetsov et al., Polymers 2018, 10(3), 313, doi 10.3390/polym10030313, table 1: nozzle,
  // layer, mm³/s at 25 mm/s.
  it.each([
    [0.8, 0.15, 3],
    [0.8, 0.2, 4],
    [0.8, 0.4, 8],
    [0.8, 0.6, 12],
    [0.6, 0.1, 1.5],
    [0.6, 0.15, 2.2],
    [0.6, 0.2, 3],
    [0.6, 0.25, 3.8],
    [0.6, 0.3, 4.5],
    [0.6, 0.35, 5.2],
    [0.6, 0.4, 6],
    [0.6, 0.45, 6.8],
    [0.6, 0.5, 7.5],
    [0.6, 0.6, 9],
    [0.4, 0.06, 0.6],
    [0.4, 0.1, 1],
    [0.4, 0.2, 2],
    [0.4, 0.3, 3],
    [0.4, 0.35, 3.5],
    [0.4, 0.4, 4],
  ])('a %s mm line %s mm high at 25 mm/s lays %s mm³/s', (lineMm, layerMm, published) => {
    expect(Math.abs(flowMm3S(lineMm, layerMm, 25) - published)).toBeLessThanOrEqual(0.06)
  })
})

describe('meltSpeedMmS', () => {
  it('leaves a line alone that melts in time', () => {
    expect(meltSpeedMmS(60, 11, 0.4, 0.2, 1)).toBe(60)
  })

  it('slows a thick line to what melts', () => {
    expect(meltSpeedMmS(60, 11, 0.8, 0.4, 1)).toBeCloseTo(11 / 0.32, 10)
  })

  it('lets foaming filament, laid with less, go faster', () => {
    expect(meltSpeedMmS(60, 11, 0.8, 0.4, 0.6)).toBeCloseTo(11 / 0.192, 10)
  })
})
