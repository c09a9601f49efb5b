import { describe, expect, test } from 'vitest'
import { lookAtPart } from '../../../src/core/drawing/lookAtPart.ts'
import { overallSizes } from '../../../src/core/drawing/overallSizes.ts'
import { PART_VIEWS } from '../../../src/core/drawing/partViews.ts'
import { box } from '../../support/meshes.ts'

const SHEET = { widthPx: 600, heightPx: 400, marginPx: 80 }
const SIDES = { x: 60, y: 40, z: 20 } as const
const BLOCK = box(60, 40, 20)
const VIEWS = Object.keys(PART_VIEWS) as (keyof typeof PART_VIEWS)[]

function seen(view: keyof typeof PART_VIEWS) {
  const { drawing, boundsMm } = lookAtPart(BLOCK, [], PART_VIEWS[view], SHEET, 50)!
  return { drawing, sizes: overallSizes(drawing, boundsMm) }
}

describe('overall sizes', () => {
  test.each([
    ['top', ['x', 'y']],
    ['front', ['x', 'z']],
    ['side', ['y', 'z']],
    ['slant', ['x', 'y', 'z']],
    ['below', ['x', 'y', 'z']],
  ] as const)('in the %s view are those that can be seen', (view, axes) => {
    const { sizes } = seen(view)
    expect(sizes.map(({ axis }) => axis)).toEqual(axes)
    for (const { axis, lengthMm } of sizes) expect(lengthMm).toBeCloseTo(SIDES[axis], 6)
  })

  test('are as long as they say at the scale of the drawing, where it shows them in full', () => {
    const { drawing, sizes } = seen('top')
    for (const { from, to, lengthMm } of sizes) {
      expect(Math.hypot(to.x - from.x, to.y - from.y) / drawing.scale).toBeCloseTo(lengthMm, 6)
    }
  })

  test.each(VIEWS)(
    'stand outside of the part in the %s view, on the sheet, and read upright',
    (view) => {
      const { drawing, sizes } = seen(view)
      const [left, top, right, bottom] = drawing.boxPx
      for (const { from, to, extensions, figure } of sizes) {
        const points = [from, to, ...extensions.flat()]
        for (const { x, y } of points) {
          expect(x > 0 && x < SHEET.widthPx && y > 0 && y < SHEET.heightPx).toBe(true)
        }
        // The middle of a line beside a box lies outside of its hull; the hull's own box is enough
        // where it is level.
        if (view === 'top' || view === 'front' || view === 'side') {
          const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
          const isOut = middle.x < left || middle.x > right || middle.y < top || middle.y > bottom
          expect(isOut).toBe(true)
        }
        expect(figure.angleDeg).toBeGreaterThanOrEqual(-90.001)
        expect(figure.angleDeg).toBeLessThan(90)
      }
    },
  )

  test('too short for their figure have it past the lines that lead out', () => {
    const plate = lookAtPart(box(200, 100, 10), [], PART_VIEWS.front, SHEET, 50)!
    const thin = overallSizes(plate.drawing, plate.boundsMm).find(({ axis }) => axis === 'z')!
    const ends = thin.extensions.map(([, end]) => end.x)
    expect(Math.abs(thin.to.y - thin.from.y)).toBeLessThan(30)
    // It stands right of the part and reads from the right: its foot is its right side.
    expect(thin.figure.angleDeg).toBeCloseTo(-90, 6)
    expect(thin.figure.x - 8).toBeGreaterThan(Math.max(...ends))
  })

  test('of what is thin leave out what has no room for arrows', () => {
    const foil = lookAtPart(box(200, 100, 0.2), [], PART_VIEWS.front, SHEET, 50)!
    expect(overallSizes(foil.drawing, foil.boundsMm).map(({ axis }) => axis)).toEqual(['x'])
  })
})
