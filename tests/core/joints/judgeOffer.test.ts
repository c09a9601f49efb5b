import { describe, expect, test } from 'vitest'
import { judgeOffer } from '../../../src/core/joints/judgeOffer.ts'
import { shapeOf } from '../../../src/core/joints/shapeOf.ts'
import type { Candidate } from '../../../src/core/joints/types.ts'
import type { Vec3 } from '../../../src/core/model/mesh.ts'
import { box, translate } from '../../support/meshes.ts'

/** b's box stays turned as drawn and is moved. */
const moved = (move: Vec3, planeMm: number | null = 10): Candidate => ({
  kind: 'drawn',
  pairs: [],
  motion: { matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1], move },
  direction: [0, 0, 1],
  planeMm,
  offMm: 0,
  areaMm2: 0,
  isDrawn: true,
})

// A cube of 10 under a box of 8 × 8 × 6: what both share, and where they touch, by hand.
const cube = shapeOf(box(10, 10, 10))
const block = shapeOf(box(8, 8, 6))

describe('what speaks for a way to meet', () => {
  test('boxes that touch share nothing at all, and touch over their common side', () => {
    const verdict = judgeOffer(cube, block, moved([1, 1, 10]))
    expect(verdict).toMatchObject({ clashMm3: 0, covered: 0, headsInside: 0 })
    expect(verdict!.contactMm2).toBeCloseTo(64, 6)
    const half = judgeOffer(cube, block, moved([6, 1, 10]))
    expect(half!.clashMm3).toBe(0)
    expect(half!.contactMm2).toBeCloseTo(4 * 8, 6)
  })

  test('boxes side by side touch, and share nothing, along the other axis', () => {
    const beside = { ...moved([10, 1, 2]), direction: [1, 0, 0] as Vec3 }
    const verdict = judgeOffer(cube, block, beside)
    expect(verdict!.clashMm3).toBe(0)
    expect(verdict!.contactMm2).toBeCloseTo(8 * 6, 6)
  })

  test('boxes in each other are refused, by little told', () => {
    // 8 · 8 · 0.015 = 0.96 mm³ within what counts as touching.
    expect(judgeOffer(cube, block, moved([1, 1, 9.985]))!.clashMm3).toBe(0)
    // 0.5 mm³ of clash: 0.25 × 8 × 0.25 of a corner.
    const corner = judgeOffer(cube, block, { ...moved([9.75, 1, 9.75], null), kind: 'shaft' })
    expect(corner!.clashMm3).toBeCloseTo(0.25 * 8 * 0.25, 6)
    expect(judgeOffer(cube, block, moved([1, 1, 9]))).toBeNull()
    expect(judgeOffer(cube, block, moved([1, 1, 2]))).toBeNull()
  })

  test('boxes that stand apart, or touch by a sliver, do not meet', () => {
    expect(judgeOffer(cube, block, moved([1, 1, 12]))).toBeNull()
    expect(judgeOffer(cube, block, moved([9, 1, 10]))).toBeNull()
    const far = shapeOf(translate(box(8, 8, 6), [100, 0, 0]))
    expect(judgeOffer(cube, far, moved([0, 0, 10]))).toBeNull()
  })
})
