import fc from 'fast-check'
import { expect, test } from 'vitest'
import { project } from '../../src/core/drawing/project.ts'
import type { DrawnPiece, View } from '../../src/core/drawing/types.ts'
import { nearOf, shiftBy, zoomBy } from '../../src/ui/drawing/sight.ts'
import { box } from '../support/meshes.ts'

const SHEET = { widthPx: 640, heightPx: 480, marginPx: 40 }
const PIECES: readonly DrawnPiece[] = [
  { item: 'a', mesh: box(80, 30, 20), motion: [1, 0, 0, -10, 0, 1, 0, 25, 0, 0, 1, 4] },
]
const views = fc.record<View>({
  azimuthDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  elevationDeg: fc.double({ min: -90, max: 90, noNaN: true }),
})
const px = fc.integer({ min: -300, max: 300 })

/** Where the first corner lands, px from the sheet's middle. */
function cornerPx(view: View, more: object): [number, number] {
  const { pieces } = project(PIECES, view, { ...SHEET, ...more })!
  return [pieces[0]!.x[0]! - SHEET.widthPx / 2, pieces[0]!.y[0]! - SHEET.heightPx / 2]
}

function lie(view: View) {
  return { ...SHEET, ...project(PIECES, view, SHEET)!, view }
}

test('what lies under the fingers stays there, however they come nearer', () => {
  fc.assert(
    fc.property(
      views,
      px,
      px,
      fc.double({ min: 1.01, max: 7, noNaN: true }),
      (view, dx, dy, by) => {
        const near = shiftBy(nearOf(lie(view)), view, dx, dy)
        const before = cornerPx(view, { scale: near.fitScale, middleMm: near.middleMm })
        const at = zoomBy(near, view, by, before)!
        const after = cornerPx(view, { scale: at.fitScale * at.zoom, middleMm: at.middleMm })
        expect(Math.hypot(after[0] - before[0], after[1] - before[1])).toBeLessThan(1e-6)
      },
    ),
  )
})

test('what is shifted goes as far as the hand, and coming back far enough fits it again', () => {
  fc.assert(
    fc.property(views, px, px, (view, dx, dy) => {
      const near = nearOf(lie(view))
      const still = cornerPx(view, {})
      const moved = shiftBy(near, view, dx, dy)
      const after = cornerPx(view, { scale: moved.fitScale, middleMm: moved.middleMm })
      expect(after[0] - still[0]).toBeCloseTo(dx, 6)
      expect(after[1] - still[1]).toBeCloseTo(dy, 6)
      expect(zoomBy(zoomBy(moved, view, 4)!, view, 0.2)).toBeNull()
    }),
  )
})
