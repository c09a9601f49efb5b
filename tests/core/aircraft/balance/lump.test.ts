import { describe, expect, it } from 'vitest'
import {
  joinLumps,
  moveLump,
  NO_LUMP,
  pointLump,
  withAmount,
} from '../../../../src/core/aircraft/balance/lump.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { box, merge, translate } from '../../../support/meshes.ts'

describe('lumps', () => {
  it('join by parallel axes: two halves of a box make the box', () => {
    const half = partMoments(box(15, 20, 10), 1).volume
    const whole = partMoments(box(30, 20, 10), 1).volume
    const joined = joinLumps([half, moveLump(half, [15, 0, 0])])
    expect(joined.amount).toBeCloseTo(whole.amount, 9)
    joined.centreMm.forEach((value, k) => expect(value).toBeCloseTo(whole.centreMm[k]!, 9))
    joined.second.forEach((value, k) => expect(value).toBeCloseTo(whole.second[k]!, 5))
  })

  it('join as one mesh of both does', () => {
    const [a, b] = [box(12, 7, 3), translate(box(4, 9, 20), [30, -12, 5])]
    const joined = joinLumps([partMoments(a, 1).volume, partMoments(b, 1).volume])
    const { volume } = partMoments(merge([a, b]), 1)
    joined.second.forEach((value, k) => expect(value).toBeCloseTo(volume.second[k]!, 5))
  })

  it('of two points of 3 g, 10 mm apart: 3 · 5² · 2', () => {
    const joined = joinLumps([pointLump(3, [0, 0, 0]), pointLump(3, [10, 0, 0])])
    expect(joined).toEqual({ amount: 6, centreMm: [5, 0, 0], second: [150, 0, 0, 0, 0, 0] })
  })

  it('of nothing are nothing', () => {
    expect(joinLumps([])).toEqual(NO_LUMP)
    expect(withAmount(NO_LUMP, 5).amount).toBe(0)
  })
})
