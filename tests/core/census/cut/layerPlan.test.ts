import { describe, expect, test } from 'vitest'
import { planLayers } from '../../../../src/core/census/cut/layerPlan.ts'
import { PreweighError } from '../../../../src/core/model/problem.ts'

describe('layers of a 2.00 mm part', () => {
  // K. Sharma et al., IOP Conf. Ser. Mater. Sci. Eng. 1168, 2021, 012022: 2.00 mm at 0.10, 0.15 and 0.20 mm.
  test.each([
    [0.1, 20],
    [0.15, 14],
    [0.2, 10],
  ])('%s mm makes %s', (layerMm, count) => {
    expect(planLayers(2, layerMm, layerMm).count).toBe(count)
  })
})

test('heights sum to the part and every cut lies in its layer', () => {
  for (const height of [0.05, 1, 3.33, 14.0000009, 70.07]) {
    const plan = planLayers(height, 0.2, 0.3)
    let floor = 0
    plan.cutMm.forEach((cut, i) => {
      expect(cut).toBeGreaterThan(floor)
      floor += plan.heightMm[i]!
      expect(cut).toBeLessThan(floor)
    })
    expect(floor).toBeCloseTo(height, 9)
  }
})

test('rounding in the file makes no extra layer', () => {
  expect(planLayers(Math.fround(14.000001), 0.2, 0.2).count).toBe(70)
})

test.each([
  [10, 0, 0.2, 'bad-settings'],
  [10, 0.2, Number.NaN, 'bad-settings'],
  [1e6, 0.2, 0.2, 'too-many-layers'],
])('height %s at %s / %s mm is refused', (height, layer, first, code) => {
  try {
    planLayers(height, layer, first)
    expect.unreachable()
  } catch (error) {
    expect(error).toBeInstanceOf(PreweighError)
    expect((error as PreweighError).problem.code).toBe(code)
  }
})
