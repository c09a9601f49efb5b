import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { relative } from '../../../support/censusCase.ts'
import {
  box,
  flip,
  merge,
  rotate,
  sphere,
  tetrahedron,
  torus,
  translate,
} from '../../../support/meshes.ts'

/*
 * Closed forms: any mechanics text (solid box m a²/12 per axis, ball m r²/5 per axis, thin
 * spherical shell m r²/3 per axis).
 */
describe('mesh moments', () => {
  it('of a box are exact: centre and a²/12 along each side', () => {
    const { volume } = partMoments(box(30, 20, 10), 1)
    expect(volume.amount).toBeCloseTo(6000, 9)
    expect(volume.centreMm.map((value) => Number(value.toFixed(9)))).toEqual([15, 10, 5])
    const expected = [900 / 12, 400 / 12, 100 / 12, 0, 0, 0].map((value) => value * 6000)
    volume.second.forEach((value, k) => expect(value).toBeCloseTo(expected[k]!, 6))
  })

  it('of the surface of a box are those of its six faces', () => {
    const { surface } = partMoments(box(30, 20, 10), 1)
    expect(surface.amount).toBeCloseTo(2 * (600 + 300 + 200), 9)
    // Along x: the two end faces sit at ±15, the other four spread evenly over 30.
    const xx = 2 * 200 * 15 ** 2 + (2 * 600 + 2 * 300) * (900 / 12)
    expect(surface.second[0]).toBeCloseTo(xx, 6)
  })

  it('of a regular tetrahedron of edge a are a²/40 along every direction', () => {
    // Solid tetrahedron about any axis through its centre: I = m a²/20, twice the spread along one
    // direction.
    const { volume } = partMoments(tetrahedron(10), 1)
    expect(relative(volume.amount, 1000 / (6 * Math.SQRT2))).toBeLessThan(1e-12)
    for (const k of [0, 1, 2] as const) {
      expect(relative(volume.second[k] / volume.amount, 100 / 40)).toBeLessThan(1e-12)
    }
    for (const k of [3, 4, 5] as const) expect(Math.abs(volume.second[k])).toBeLessThan(1e-9)
  })

  it('of a fine ball approach r²/5, of its skin r²/3', () => {
    const { volume, surface } = partMoments(sphere(10, 256), 1)
    for (const k of [0, 1, 2] as const) {
      expect(relative(volume.second[k] / volume.amount, 20)).toBeLessThan(5e-4)
      expect(relative(surface.second[k] / surface.amount, 100 / 3)).toBeLessThan(5e-4)
    }
  })

  it('of a fine ring approach R²/2 + 3r²/8 level and r²/4 upright', () => {
    const { volume } = partMoments(torus(20, 4, 256, 96), 1)
    expect(relative(volume.second[0] / volume.amount, 200 + (3 * 16) / 8)).toBeLessThan(1e-3)
    expect(relative(volume.second[2] / volume.amount, 4)).toBeLessThan(2e-3)
  })

  it('scale with the unit: inches to mm', () => {
    const inch = partMoments(box(1, 2, 3), 25.4)
    const mm = partMoments(box(25.4, 50.8, 76.2), 1)
    expect(relative(inch.volume.amount, mm.volume.amount)).toBeLessThan(1e-12)
    expect(relative(inch.volume.second[0], mm.volume.second[0])).toBeLessThan(1e-12)
    expect(relative(inch.surface.amount, mm.surface.amount)).toBeLessThan(1e-12)
  })

  it('are the same inside out', () => {
    const askew = rotate(box(30, 20, 10), [20, 30, 40])
    const right = partMoments(askew, 1)
    const wrong = partMoments(flip(askew), 1)
    expect(wrong.volume.amount).toBeCloseTo(right.volume.amount, 9)
    wrong.volume.second.forEach((value, k) =>
      expect(Math.abs(value - right.volume.second[k]!)).toBeLessThan(1e-6),
    )
  })

  it('keep their digits far from the origin', () => {
    const near = partMoments(box(30, 20, 10), 1).volume
    const far = partMoments(translate(box(30, 20, 10), [1e6, -1e6, 1e6]), 1).volume
    expect(relative(far.second[0], near.second[0])).toBeLessThan(1e-6)
    expect(far.centreMm[0] - 1e6).toBeCloseTo(15, 6)
  })

  it('of a body with a cavity take the cavity off', () => {
    const hollow = merge([box(30, 20, 10), translate(flip(box(20, 10, 4)), [5, 5, 3])])
    const { volume } = partMoments(hollow, 1)
    expect(volume.amount).toBeCloseTo(6000 - 800, 9)
    expect(volume.second[0]).toBeCloseTo((6000 * 900 - 800 * 400) / 12, 6)
  })

  it('do not depend on how the box is turned: the trace stays, the volume stays', () => {
    fc.assert(
      fc.property(
        fc.tuple(
          fc.double({ min: -180, max: 180, noNaN: true }),
          fc.double({ min: -180, max: 180, noNaN: true }),
          fc.double({ min: -180, max: 180, noNaN: true }),
        ),
        (turn) => {
          const { volume } = partMoments(rotate(box(30, 20, 10), turn), 1)
          expect(relative(volume.amount, 6000)).toBeLessThan(1e-9)
          const trace = volume.second[0] + volume.second[1] + volume.second[2]
          expect(relative(trace, (6000 * 1400) / 12)).toBeLessThan(1e-9)
        },
      ),
      { seed: 9, numRuns: 40 },
    )
  })

  it('of nothing are nothing', () => {
    const empty = partMoments({ positions: new Float64Array(0), indices: new Uint32Array(0) }, 1)
    expect(empty.volume.amount).toBe(0)
    expect(empty.surface.amount).toBe(0)
  })
})
