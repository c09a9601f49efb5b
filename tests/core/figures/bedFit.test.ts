import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bedFit } from '../../../src/core/figures/bedFit.ts'

const BED = [220, 220, 240] as const

test('lets a part lie that is smaller than the bed on each side', () => {
  expect(bedFit([219, 100, 240], BED)).toEqual({ kind: 'fits' })
})

test('lets a part lie that a quarter turn brings onto a long bed', () => {
  expect(bedFit([100, 300, 10], [310, 110, 100])).toEqual({ kind: 'fits' })
})

test('turns a boom of 232 × 18 mm on a bed of 220 × 220 mm onto the diagonal', () => {
  const fit = bedFit([232, 18, 16], BED)
  expect(fit.kind).toBe('turned')
  if (fit.kind !== 'turned') return
  // Symmetric about 45° on a square bed.
  expect((fit.fromDeg + fit.toDeg) / 2).toBeCloseTo(45, 1)
  for (const angle of [fit.fromDeg, fit.toDeg, 45]) {
    const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
    expect(232 * c + 18 * s).toBeLessThanOrEqual(220.011)
    expect(232 * s + 18 * c).toBeLessThanOrEqual(220.011)
  }
})

test('names the side that is too long, and the height first', () => {
  expect(bedFit([330, 18, 16], BED)).toEqual({ kind: 'too-long', partMm: 330, limitMm: 220 })
  expect(bedFit([150, 230, 16], BED)).toEqual({ kind: 'too-long', partMm: 230, limitMm: 220 })
  expect(bedFit([330, 18, 250], BED)).toEqual({ kind: 'too-tall', partMm: 250, limitMm: 240 })
  expect(bedFit([150, 150, 16], [220, 110, 240])).toEqual({
    kind: 'too-long',
    partMm: 150,
    limitMm: 110,
  })
})

test('keeps room for a brim all round', () => {
  expect(bedFit([214, 214, 10], BED, 3).kind).toBe('fits')
  expect(bedFit([214, 214, 10], BED, 4).kind).toBe('too-long')
})

/**
 * Carver 1957, "Solution to problem E 1225", American Mathematical Monthly 64(2), 114–116: a
 * rectangle p × q (p ≥ q) fits a × b (a ≥ b) if and only if p ≤ a and q ≤ b, or p > a, q ≤ b and
 * ((a + b) / (p + q))² + ((a − b) / (p − q))² ≥ 2.
 */
test('agrees with Carver’s inequality for rectangles in rectangles', () => {
  const side = fc.double({ min: 1, max: 400, noNaN: true })
  fc.assert(
    fc.property(side, side, side, side, (w, d, bedW, bedD) => {
      const [p, q] = [Math.max(w, d), Math.min(w, d)]
      const [a, b] = [Math.max(bedW, bedD) + 0.01, Math.min(bedW, bedD) + 0.01]
      const margin = ((a + b) / (p + q)) ** 2 + ((a - b) / (p - q)) ** 2 - 2
      fc.pre(Math.abs(margin) > 1e-9)
      const expected = (p <= a && q <= b) || (p > a && q <= b && margin >= 0)
      const { kind } = bedFit([w, d, 1], [bedW, bedD, 10])
      expect(kind !== 'too-long').toBe(expected)
    }),
    { seed: 1957, numRuns: 5000 },
  )
})

test('really lies within the bed at every angle it names', () => {
  const long = fc.double({ min: 1.001, max: 1.4, noNaN: true })
  const thin = fc.double({ min: 0.01, max: 0.4, noNaN: true })
  let turned = 0
  fc.assert(
    fc.property(long, thin, fc.double({ min: 0, max: 1, noNaN: true }), (p, q, share) => {
      const fit = bedFit([100 * p, 100 * q, 1], [100, 80, 10])
      if (fit.kind !== 'turned') return
      turned++
      const angle = ((fit.fromDeg + share * (fit.toDeg - fit.fromDeg)) * Math.PI) / 180
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      expect(100 * (p * c + q * s)).toBeLessThanOrEqual(100.011)
      expect(100 * (p * s + q * c)).toBeLessThanOrEqual(80.011)
    }),
    { seed: 7, numRuns: 2000 },
  )
  expect(turned).toBeGreaterThan(50)
})
