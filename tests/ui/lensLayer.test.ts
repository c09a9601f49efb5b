import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { planLayers } from '../../src/core/census/cut/layerPlan.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { inLayer, lensLayer } from '../../src/ui/part/lensLayer.ts'

const partOf = (layerMm: number, firstLayerMm: number) => ({
  recipe: { ...RECIPE_DEFAULTS, layerMm, firstLayerMm },
  pose: POSE_AS_DRAWN,
})
const boxOf = (heightMm: number) => ({
  min: [0, 0, 0] as const,
  max: [10, 20, heightMm] as const,
})

test('a level plane is in the layer whose underside is the last below it, by a walk upwards', () => {
  const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  fc.assert(
    fc.property(
      mm(0.2, 60),
      mm(0.05, 0.4),
      mm(0.05, 0.4),
      mm(0, 1),
      (high, layer, first, share) => {
        const { count, heightMm } = planLayers(high, layer, first)
        const lens = lensLayer(partOf(layer, first), boxOf(high), { axis: 'z', share })
        expect(lens?.layers).toBe(count)
        let bottom = 0
        let at = 0
        let nearest = Infinity
        for (let i = 0; i < count; i++) {
          if (bottom <= share * high) at = i
          if (i > 0) nearest = Math.min(nearest, Math.abs(share * high - bottom))
          bottom += heightMm[i]!
        }
        // In the very face between two, either is right.
        fc.pre(nearest > 1e-6)
        expect(lens?.layer).toBe(at)
        const wanted = { axis: 'z', share } as const
        const inside = inLayer(partOf(layer, first), boxOf(high), wanted)
        expect(lensLayer(partOf(layer, first), boxOf(high), inside)?.layer).toBe(lens?.layer)
      },
    ),
  )
})

test('every layer is reached by its number, and none beyond the part', () => {
  const part = partOf(0.2, 0.3)
  const bounds = boxOf(1.9)
  const lens = lensLayer(part, bounds, { axis: 'z', share: 0.5 })
  expect(lens?.layers).toBe(9)
  for (let layer = 0; layer < 9; layer++) {
    const there = lensLayer(part, bounds, lens!.planeAt(layer))
    expect(there?.layer).toBe(layer)
    expect(there?.topMm).toBeCloseTo(0.3 + 0.2 * layer, 9)
  }
  expect(lensLayer(part, boxOf(0), { axis: 'z', share: 0.5 })).toBeNull()
})
