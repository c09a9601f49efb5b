import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { screwMass, threadLengthMm } from '../../../../src/core/aircraft/hardware/screw.ts'
import { stockedLengths } from '../../../../src/core/aircraft/hardware/data.ts'
import type {
  HardwareMaterial,
  MetricSize,
  ScrewStandard,
} from '../../../../src/core/aircraft/hardware/types.ts'

const socket = (size: MetricSize, lengthMm: number, material: HardwareMaterial = 'steel') =>
  screwMass({ standard: 'ISO 4762', size, lengthMm, material })

/**
 * Fuller fastener weight chart "DIN 912" (fullerkr.com/collections/din-912-weight-chart), kg per
 * 1000 of steel.
 */
const CHART = {
  M3: { 5: 0.7, 6: 0.7, 8: 0.8, 10: 0.9, 12: 1, 16: 1.2, 20: 1.4, 25: 1.6, 30: 1.9 },
  M4: { 6: 1.5, 8: 1.7, 10: 1.8, 12: 2, 16: 2.3, 20: 2.7, 25: 3.2, 30: 3.7, 35: 4.2, 40: 4.7 },
  M5: { 8: 2.5, 10: 2.7, 12: 3, 16: 3.5, 20: 4, 25: 4.8, 30: 5.6, 35: 6.3, 40: 7.1 },
} as const
/** The same chart, read elsewhere in it; weaker, so wider. */
const allowedG = {
  M3: (g: number) => Math.max(0.12 * g, 0.06),
  M4: (g: number) => 0.08 * g,
  M5: (g: number) => 0.2 * g,
} as const

describe('screwMass', () => {
  for (const size of ['M3', 'M4', 'M5'] as const) {
    it.each(Object.entries(CHART[size]))(
      `weighs a steel ISO 4762 ${size} × %s as the chart does`,
      (length, chartG) => {
        const { massG } = socket(size, Number(length))
        expect(Math.abs(massG - chartG)).toBeLessThanOrEqual(allowedG[size](chartG))
      },
    )
  }

  it('meets the M4 rows by shape alone within 5 %, so that shapes can be trusted where no row is', () => {
    // The chart row over its own shape: M4 differs by −2.4 to +3.4 % with ρ 7.85.
    for (const [length, chartG] of Object.entries(CHART.M4)) {
      const head = (Math.PI / 4) * 49 * 4 - (Math.sqrt(3) / 2) * 9 * 2
      const thread = Math.min(20, Number(length)) * (Math.PI / 4) * (4 - 0.6495 * 0.7) ** 2
      const shank = Math.max(0, Number(length) - 20) * (Math.PI / 4) * 16
      expect(((head + thread + shank) * 7.85) / 1000 / chartG).toBeGreaterThan(0.95)
      expect(((head + thread + shank) * 7.85) / 1000 / chartG).toBeLessThan(1.05)
    }
  })

  it.each([
    ['M4', 20, 40, 0.1, 0.05],
    ['M3', 8, 20, 0.05, 0.15],
  ] as const)('gains per mm of %s what the chart gains', (size, from, to, slope, within) => {
    const found = (socket(size, to).massG - socket(size, from).massG) / (to - from)
    expect(Math.abs(found / slope - 1)).toBeLessThanOrEqual(within)
  })

  it('says published only where it returns the row itself', () => {
    for (const [length, chartG] of Object.entries(CHART.M4)) {
      const found = socket('M4', Number(length))
      expect(found).toMatchObject({ massG: chartG, basis: 'published' })
      expect(found.source).toContain('DIN 912')
    }
    expect(socket('M3', 10)).toMatchObject({ massG: 0.9, basis: 'published' })
    expect(socket('M3', 6).basis).toBe('computed')
    expect(socket('M3', 14).basis).toBe('computed')
    expect(socket('M5', 16).basis).toBe('computed')
    expect(socket('M3', 10, 'titanium').basis).toBe('computed')
  })

  it('grows with every bit of length, on and between the rows', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<MetricSize>('M2', 'M2.5', 'M3', 'M4', 'M5'),
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (size, lengthMm, more) => {
          expect(socket(size, lengthMm + more).massG).toBeGreaterThan(socket(size, lengthMm).massG)
        },
      ),
      { seed: 4762, numRuns: 500 },
    )
  })

  it('grows from every stocked length to the next', () => {
    for (const standard of ['ISO 4762', 'ISO 7380-1', 'ISO 10642'] as const) {
      for (const size of ['M3', 'M4', 'M5'] as const) {
        const masses = stockedLengths(size).map(
          (lengthMm) => screwMass({ standard, size, lengthMm, material: 'steel' }).massG,
        )
        for (let i = 1; i < masses.length; i++) expect(masses[i]).toBeGreaterThan(masses[i - 1]!)
      }
    }
  })

  // Densities ÷ 7.85: handbook values.
  it.each([
    ['stainless', 1.006],
    ['titanium', 0.564],
    ['aluminium-7075', 0.358],
    ['aluminium', 0.344],
    ['brass', 1.079],
    ['nylon', 0.145],
  ] as const)('weighs %s by its density', (material, ratio) => {
    for (const lengthMm of [6, 10, 14]) {
      const found = socket('M3', lengthMm, material).massG / socket('M3', lengthMm).massG
      expect(Math.abs(found / ratio - 1)).toBeLessThan(0.005)
    }
  })

  it.each([
    ['titanium', 0.51],
    ['aluminium', 0.32],
    ['aluminium-7075', 0.32],
    ['nylon', 0.13],
  ] as const)('makes an M3 × 10 of %s weigh about %s g', (material, massG) => {
    expect(Math.abs(socket('M3', 10, material).massG / massG - 1)).toBeLessThan(0.12)
  })

  it('threads to the head up to 2d + 12 (ISO 4762, b)', () => {
    expect(threadLengthMm('M3')).toBe(18)
    expect(threadLengthMm('M4')).toBe(20)
    expect(threadLengthMm('M2.5')).toBe(17)
  })

  // By hand, mm³ × 7.85: M3 × 10, thread 10 (8.14) × 5.621; cap of 5.7 × 1.65 23.40 less socket
  // 3.60; cone 36.19 less socket 3.81.
  it.each([
    ['ISO 7380-1', (23.4 - 3.6 + 56.21) * 0.00785],
    ['ISO 10642', (36.19 - 3.81 + 45.76) * 0.00785],
  ] as const)('weighs a steel %s M3 × 10 as its shape worked out by hand', (standard, massG) => {
    const found = screwMass({ standard, size: 'M3', lengthMm: 10, material: 'steel' })
    expect(Math.abs(found.massG / massG - 1)).toBeLessThan(0.002)
  })

  it('says what of a mass rests on memory: densities but steel’s, sockets of countersunk heads', () => {
    expect(socket('M5', 16).source).not.toContain('memory')
    expect(socket('M3', 10, 'titanium').source).toContain('titanium at 4.43 g/cm³ (from memory)')
    const sunk = screwMass({ standard: 'ISO 10642', size: 'M3', lengthMm: 10, material: 'steel' })
    expect(sunk.source).toContain('socket depth from memory')
  })

  it('computes button and countersunk heads by shape, lighter than a socket head of the same length', () => {
    for (const standard of ['ISO 7380-1', 'ISO 10642'] as const) {
      const found = screwMass({ standard, size: 'M3', lengthMm: 10, material: 'steel' })
      expect(found).toMatchObject({ basis: 'computed', spreadPct: 15 })
      expect(found.massG).toBeLessThan(0.9)
      expect(found.massG).toBeGreaterThan(0.45)
    }
  })

  it('names the size a standard does not have', () => {
    const make = (standard: ScrewStandard, size: MetricSize, lengthMm: number) => () =>
      screwMass({ standard, size, lengthMm, material: 'steel' })
    expect(make('ISO 7380-1', 'M2.5', 6)).toThrow('ISO 7380-1 has no M2.5.')
    expect(make('ISO 10642', 'M2', 6)).toThrow('ISO 10642 has no M2.')
    expect(make('ISO 4762', 'M3', 0)).toThrow('0 mm')
    expect(make('ISO 10642', 'M3', 1.5)).toThrow('1.5 mm')
    expect(make('ISO 4762', 'M3', Number.NaN)).toThrow('NaN mm')
  })
})
