import { describe, expect, test } from 'vitest'
import { cutOutline } from '../../../src/core/drawing/cutOutline.ts'
import { lookAtPart } from '../../../src/core/drawing/lookAtPart.ts'
import { PART_VIEWS } from '../../../src/core/drawing/partViews.ts'
import { box } from '../../support/meshes.ts'

const SHEET = { widthPx: 600, heightPx: 400, marginPx: 80 }

function cut(view: keyof typeof PART_VIEWS, axis: 'x' | 'y' | 'z', share: number) {
  const { drawing, boundsMm } = lookAtPart(box(60, 40, 20), [], PART_VIEWS[view], SHEET, 50)!
  return cutOutline(drawing, boundsMm, axis, share)
}

describe('the cutting line', () => {
  test('goes over the whole part as its plane does', () => {
    const [start, end] = [cut('slant', 'x', 0)!, cut('slant', 'x', 1)!]
    for (const [i, corner] of start.corners.entries()) {
      expect(corner.x + start.reach.x).toBeCloseTo(end.corners[i]!.x, 6)
      expect(corner.y + start.reach.y).toBeCloseTo(end.corners[i]!.y, 6)
    }
    // From above, 440 px (600 less the margins) show 60 mm.
    expect(cut('top', 'x', 0.5)!.reach.x).toBeCloseTo(Math.min(440, (60 * 240) / 40), 6)
  })

  test('is none for a plane that is seen face on', () => {
    expect(cut('top', 'z', 0.5)).toBeNull()
    expect(cut('side', 'x', 0.5)).toBeNull()
    expect(cut('front', 'x', 0.5)).not.toBeNull()
  })
})
