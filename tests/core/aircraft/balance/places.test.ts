import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Place } from '../../../../src/core/model/aircraft.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { armPattern, placeLump } from '../../../../src/core/aircraft/balance/places.ts'
import type { Vec3 } from '../../../../src/core/model/mesh.ts'
import { box, mirror, prism, rotate, translate } from '../../../support/meshes.ts'

const place = (changes: Partial<Place>): Place => ({
  partId: 'arm',
  positionMm: [0, 0, 0],
  rotateDeg: [0, 0, 0],
  mirrored: false,
  ...changes,
})

/** A wedge without any symmetry. */
const WEDGE = prism(
  [
    [0, 0],
    [30, 2],
    [12, 17],
  ],
  9,
)

const angle = fc.double({ min: -360, max: 360, noNaN: true })
const length = fc.double({ min: -200, max: 200, noNaN: true })
const vector = (value: fc.Arbitrary<number>): fc.Arbitrary<Vec3> => fc.tuple(value, value, value)

describe('places', () => {
  it('move a lump as they would move the mesh: mirrored, turned, moved', () => {
    const lump = partMoments(WEDGE, 1).volume
    fc.assert(
      fc.property(
        vector(angle),
        vector(length),
        fc.boolean(),
        (rotateDeg, positionMm, mirrored) => {
          const moved = placeLump(lump, place({ rotateDeg, positionMm, mirrored }))
          const mesh = translate(rotate(mirrored ? mirror(WEDGE) : WEDGE, rotateDeg), positionMm)
          const { volume } = partMoments(mesh, 1)
          expect(moved.amount).toBeCloseTo(volume.amount, 6)
          moved.centreMm.forEach((value, k) => expect(value).toBeCloseTo(volume.centreMm[k]!, 6))
          moved.second.forEach((value, k) => expect(value).toBeCloseTo(volume.second[k]!, 2))
        },
      ),
      { seed: 21, numRuns: 60 },
    )
  })

  it('of an arm pattern stand evenly round the circle, each turned outwards', () => {
    const places = armPattern({
      partId: 'arm',
      count: 4,
      radiusMm: 50,
      firstDeg: 45,
      positionMm: [10, 0, 5],
    })
    expect(places.map(({ rotateDeg }) => rotateDeg[2])).toEqual([45, 135, 225, 315])
    const at = 50 * Math.SQRT1_2
    expect(places[0]?.positionMm[0]).toBeCloseTo(10 + at, 12)
    expect(places[0]?.positionMm[1]).toBeCloseTo(at, 12)
    expect(places[2]?.positionMm[0]).toBeCloseTo(10 - at, 12)
    expect(places.every(({ partId, mirrored }) => partId === 'arm' && !mirrored)).toBe(true)
    // An arm drawn from its root along x ends further out.
    const arm = partMoments(box(100, 10, 4), 1).volume
    for (const each of places) {
      const [x, y] = placeLump(arm, { ...each, positionMm: each.positionMm }).centreMm
      expect(Math.hypot(x - 10, y)).toBeGreaterThan(99)
    }
  })

  it('of no pieces are none', () => {
    const none = {
      partId: 'arm',
      count: 0,
      radiusMm: 50,
      firstDeg: 0,
      positionMm: [0, 0, 0],
    } as const
    expect(armPattern(none)).toEqual([])
  })
})
