import { describe, expect, test } from 'vitest'
import { arrange } from '../../../src/core/drawing/arrange.ts'
import { boxInView } from '../../../src/core/drawing/boxInView.ts'
import type { DrawnPiece } from '../../../src/core/drawing/types.ts'
import { VIEWS } from '../../../src/core/drawing/viewAxes.ts'
import { box } from '../../support/meshes.ts'

const deck: DrawnPiece = {
  item: 'deck',
  mesh: box(80, 40, 4),
  motion: [1, 0, 0, -40, 0, 1, 0, -20, 0, 0, 1, 0],
}
const loose = [20, 30, 50].map((side, i) => ({
  item: `loose ${i}`,
  mesh: box(side, side, 2),
  scaleToMm: 1,
}))

describe('arrange', () => {
  test.each(Object.entries(VIEWS))('in the %s view loose pieces touch nothing', (_, view) => {
    const boxes = arrange([deck], loose, view, 0).map((piece) => boxInView([piece], view))
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) {
        const apart =
          a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom
        expect(apart).toBe(true)
      }
    }
    for (const below of boxes.slice(1)) expect(below.top).toBeLessThan(boxes[0]!.bottom)
  })

  test('a loose piece drawn in inches has its true size', () => {
    const inches = { item: 'collar', mesh: box(1, 1, 1), scaleToMm: 25.4 }
    const [piece] = arrange([], [inches], VIEWS.top, 0)
    const { left, right } = boxInView([piece!], VIEWS.top)
    expect(right - left).toBeCloseTo(25.4, 9)
  })

  test('drawn apart, pieces stand farther from each other and nothing else changes', () => {
    const upper: DrawnPiece = {
      ...deck,
      item: 'upper',
      motion: [1, 0, 0, -40, 0, 1, 0, -20, 0, 0, 1, 20],
    }
    expect(arrange([deck, upper], [], VIEWS.side, 0)).toEqual([deck, upper])
    const [low, high] = arrange([deck, upper], [], VIEWS.side, 1)
    expect(high!.motion[11] - low!.motion[11]).toBeCloseTo(20 * 1.9, 9)
    expect(high!.motion.toSpliced(11, 1)).toEqual(upper.motion.toSpliced(11, 1))
  })

  test('a piece with a way of its own goes along it, as far as the frame is large', () => {
    const upper: DrawnPiece = {
      ...deck,
      item: 'upper',
      motion: [1, 0, 0, 60, 0, 1, 0, 0, 0, 0, 1, 80],
      way: [0, 0, 2],
    }
    const low = { ...deck, way: [0, 0, 0] as const }
    const apartBy = (share: number) => {
      const [still, high] = arrange([low, upper], [], VIEWS.side, share)
      expect(still!.motion).toEqual(deck.motion)
      expect(high!.motion.toSpliced(11, 1)).toEqual(upper.motion.toSpliced(11, 1))
      return high!.motion[11] - upper.motion[11]
    }
    expect(apartBy(1)).toBeGreaterThan(20)
    expect(apartBy(0.5)).toBeCloseTo(apartBy(1) / 2, 9)
    // Away from the middle as ever, where no joint tells.
    const { way: _way, ...free } = upper
    const [, radial] = arrange([low, free], [], VIEWS.side, 1)
    expect(radial!.motion[3]).not.toBeCloseTo(upper.motion[3], 3)
  })
})
