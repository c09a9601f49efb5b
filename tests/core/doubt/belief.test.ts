import { describe, expect, it } from 'vitest'
import { believe, foretellEach } from '../../../src/core/doubt/belief.ts'
import type { Observation } from '../../../src/core/doubt/belief.ts'
import { covarianceOf, effectOf, formOf, sumForms } from '../../../src/core/doubt/form.ts'
import { seededNormal } from '../../support/random.ts'

const a = formOf(30, [
  ['spool', 1.5],
  ['own a', 0.4],
])
const b = formOf(80, [
  ['spool', 4],
  ['own b', 1],
])
const c = formOf(50, [
  ['other spool', 2.5],
  ['own c', 0.7],
])
const all = sumForms([
  [a, 1],
  [b, 1],
  [c, 1],
])
const observations: readonly Observation[] = [
  { id: 'a', form: a, value: 31.8, noise: 0.3 },
  { id: 'all', form: all, value: 158, noise: 2 },
]

describe('believe', () => {
  it('is what was known before where nothing was observed', () => {
    expect(believe([]).of(b)).toEqual({ mean: 80, sigma: Math.hypot(4, 1), least: 0 })
  })

  it('gives the mean of two readings, weighed by their precision', () => {
    // Two readings of one thing: the textbook case (JCGM 100:2008 has it as the weighted mean).
    const thing = formOf(100, [['thing', 100]])
    const belief = believe([
      { id: '1', form: thing, value: 104, noise: 1 },
      { id: '2', form: thing, value: 109, noise: 2 },
    ])
    const precision = 1 + 1 / 4 + 1e-4
    expect(belief.of(thing).mean).toBeCloseTo((104 + 109 / 4 + 100e-4) / precision, 6)
    expect(belief.of(thing).sigma).toBeCloseTo(1 / Math.sqrt(precision), 6)
  })

  it('agrees with 400,000 draws, each counted by how well it explains the readings', () => {
    const { ids } = all
    const normal = seededNormal(11)
    const sums = { weight: 0, square: 0, b: 0, bb: 0, c: 0, bc: 0 }
    for (let draw = 0; draw < 400_000; draw++) {
      const z = new Map(ids.map((id) => [id, normal()]))
      const at = (form: typeof a): number =>
        form.ids.reduce((sum, id) => sum + effectOf(form, id) * z.get(id)!, form.mid)
      const off = observations.map(({ form, value, noise }) => (value - at(form)) / noise)
      const weight = Math.exp(-off.reduce((sum, one) => sum + one ** 2, 0) / 2)
      const [mb, mc] = [at(b), at(c)]
      sums.weight += weight
      sums.square += weight ** 2
      sums.b += weight * mb
      sums.c += weight * mc
      sums.bb += weight * mb ** 2
      sums.bc += weight * mb * mc
    }
    const meanB = sums.b / sums.weight
    const meanC = sums.c / sums.weight
    const belief = believe(observations)
    // So many equal draws are these weighted ones worth; four standard errors are allowed.
    const allowed = 4 / Math.sqrt(sums.weight ** 2 / sums.square)
    const [bellB, bellC] = [belief.of(b), belief.of(c)]
    expect(Math.abs(bellB.mean - meanB)).toBeLessThan(allowed * bellB.sigma)
    expect(Math.abs(bellC.mean - meanC)).toBeLessThan(allowed * bellC.sigma)
    const sigmaB = Math.sqrt(sums.bb / sums.weight - meanB ** 2)
    expect(Math.abs(bellB.sigma / sigmaB - 1)).toBeLessThan(allowed)
    const covariance = sums.bc / sums.weight - meanB * meanC
    const off = Math.abs(belief.covariance(b, c) - covariance)
    expect(off).toBeLessThan(allowed * bellB.sigma * bellC.sigma)
    expect(allowed).toBeLessThan(0.05)
  })

  it('agrees with hearing one reading after the other, error by error', () => {
    // The slow obvious way: the whole matrix of all errors, updated once a reading (R. E. Kalman
    // 1960).
    const { ids } = all
    let mean: number[] = ids.map(() => 0)
    let cov: number[][] = ids.map((_, i) => ids.map((_other, j) => (i === j ? 1 : 0)))
    const vectorOf = (form: typeof a) => ids.map((id) => effectOf(form, id))
    const times = (m: number[][], v: number[]) =>
      m.map((row) => row.reduce((sum, x, j) => sum + x * v[j]!, 0))
    const inner = (u: number[], v: number[]) => u.reduce((sum, x, i) => sum + x * v[i]!, 0)
    for (const { form, value, noise } of observations) {
      const h = vectorOf(form)
      const ph = times(cov, h)
      const variance = inner(h, ph) + noise ** 2
      const miss = value - form.mid - inner(h, mean)
      mean = mean.map((x, i) => x + (ph[i]! * miss) / variance)
      cov = cov.map((row, i) => row.map((x, j) => x - (ph[i]! * ph[j]!) / variance))
    }
    const belief = believe(observations)
    for (const form of [a, b, c, all]) {
      const v = vectorOf(form)
      expect(belief.of(form).mean).toBeCloseTo(form.mid + inner(v, mean), 9)
      expect(belief.of(form).sigma).toBeCloseTo(Math.sqrt(inner(v, times(cov, v))), 9)
    }
    expect(belief.covariance(a, c)).toBeCloseTo(inner(vectorOf(a), times(cov, vectorOf(c))), 9)
  })

  it('takes the same reading twice without falling over', () => {
    const twice = [observations[0]!, { ...observations[0]!, id: 'again' }]
    expect(believe(twice).of(a).mean).toBeGreaterThan(believe([observations[0]!]).of(a).mean)
  })
})

describe('foretellEach', () => {
  it('foretells each reading as if it had never been heard', () => {
    for (const [i, one] of foretellEach(observations).entries()) {
      const others = observations.filter((_, k) => k !== i)
      const { mean, sigma } = believe(others).of(observations[i]!.form)
      expect(one.foretold.mean).toBeCloseTo(mean, 9)
      expect(one.foretold.sigma).toBeCloseTo(Math.hypot(sigma, observations[i]!.noise), 9)
      expect(one.off).toBeCloseTo((one.value - mean) / one.foretold.sigma, 9)
    }
  })
})

describe('forms', () => {
  it('add like the quantities they stand for', () => {
    expect(all.mid).toBe(160)
    expect(covarianceOf(all, all)).toBeCloseTo(5.5 ** 2 + 0.16 + 1 + 6.25 + 0.49, 9)
    expect(covarianceOf(a, b)).toBe(6)
    expect(covarianceOf(a, c)).toBe(0)
  })
})
