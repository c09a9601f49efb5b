import { describe, expect, test } from 'vitest'
import { planLayers } from '../../../../src/core/census/cut/layerPlan.ts'
import { PreweighError } from '../../../../src/core/model/problem.ts'

describe('layers of a 2.00 mm part', () => {
  // K. Sharma et al., IOP Conf. Ser. Mater. Sci. Eng. 1168, 2021, 012022: 2.00 mm at 0.10, 0.15 and
  // 0.20 mm came out 2.00, 2.02 and 2.11 mm thick. At 0.15 mm a 14th layer would have its middle at
  // 2.025 mm, outside.
  test.each([
    [0.1, 20],
    [0.15, 13],
    [0.2, 10],
  ])('%s mm makes %s', (layerMm, count) => {
    expect(planLayers(2, layerMm, layerMm).count).toBe(count)
  })
})

describe('whole layers of 0.2 mm: a layer is laid when its middle is inside', () => {
  test.each([
    [1.49, 7],
    [1.58, 8],
    [1.6, 8],
    [1.62, 8],
    [1.69, 8],
    [1.71, 9],
    [0.01, 1],
  ])('%s mm is %s layers', (heightMm, count) => {
    expect(planLayers(heightMm, 0.2, 0.2).count).toBe(count)
  })

  test.each([1.5, 2.5, Math.fround(2.5), 0.1 + 0.2 * 7])(
    'a tie at %s mm lays the layer in question',
    (heightMm) => {
      const { count } = planLayers(heightMm, 0.2, 0.2)
      expect(count).toBe(Math.round(heightMm / 0.2 + 0.1))
    },
  )

  test('every layer has its full height and is cut half-way up, inside the part', () => {
    for (const height of [0.31, 1, 3.33, 14.0000009, 70.07]) {
      const { heightMm, cutMm } = planLayers(height, 0.2, 0.3)
      let floor = 0
      heightMm.forEach((one, i) => {
        expect(one).toBe(i === 0 ? 0.3 : 0.2)
        expect(cutMm[i]).toBeCloseTo(floor + one / 2, 3)
        expect(cutMm[i]).toBeLessThan(height)
        floor += one
      })
      expect(Math.abs(floor - height)).toBeLessThanOrEqual(0.1 + 1e-6)
    }
  })

  test('a part grows by one layer at most as it grows by one layer’s height, and never shrinks', () => {
    let before = planLayers(0.1, 0.2, 0.2).count
    for (let height = 0.12; height < 6; height += 0.02) {
      const { count } = planLayers(height, 0.2, 0.2)
      expect(count - before).toBeGreaterThanOrEqual(0)
      expect(count - before).toBeLessThanOrEqual(1)
      before = count
    }
  })

  test('0.1995 mm layers make a 5 mm arm as tall as 0.2 mm layers, to 0.5 %', () => {
    const tall = (layerMm: number): number =>
      planLayers(5, layerMm, layerMm).heightMm.reduce((sum, one) => sum + one, 0)
    expect(Math.abs(tall(0.1995) / tall(0.2) - 1)).toBeLessThan(0.005)
  })
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
