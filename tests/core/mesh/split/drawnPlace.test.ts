import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DrawnPlace } from '../../../../src/core/model/aircraft.ts'
import {
  drawnPlaceOf,
  nestPlaces,
  placesAsDrawn,
} from '../../../../src/core/mesh/split/drawnPlace.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { placeLump } from '../../../../src/core/aircraft/balance/places.ts'
import type { Vec3 } from '../../../../src/core/model/mesh.ts'
import { mirror, prism, rotate, translate } from '../../../support/meshes.ts'

const WEDGE = prism(
  [
    [0, 0],
    [30, 2],
    [12, 17],
  ],
  9,
)
const LUMP = partMoments(WEDGE, 1).volume

const angle = fc.oneof(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.constantFrom(90, -90, 180, 89.999_999_9),
)
const length = fc.double({ min: -200, max: 200, noNaN: true })
const vector = (value: fc.Arbitrary<number>): fc.Arbitrary<Vec3> => fc.tuple(value, value, value)
const drawn: fc.Arbitrary<DrawnPlace> = fc.record({
  position: vector(length),
  rotateDeg: vector(angle),
  mirrored: fc.boolean(),
})
const part = (...drawnPlaces: readonly DrawnPlace[]) =>
  ({ id: 'a', unit: 'millimetre', quantity: 9, drawnPlaces }) as const

/** The wedge where the places put it, one after the other from the inside out. */
const moved = (...places: readonly DrawnPlace[]) =>
  places.reduce((mesh, { position, rotateDeg, mirrored }) => {
    return translate(rotate(mirrored ? mirror(mesh) : mesh, rotateDeg), position)
  }, WEDGE)

describe('drawn places', () => {
  it('in one another do what one move after the other does to a mesh, at the poles too', () => {
    fc.assert(
      fc.property(drawn, drawn, (outer, inner) => {
        const [place] = placesAsDrawn([part(...nestPlaces([outer], [inner]))])
        const found = placeLump(LUMP, place!)
        const { volume } = partMoments(moved(inner, outer), 1)
        found.centreMm.forEach((value, k) =>
          expect(Math.abs(value - volume.centreMm[k]!)).toBeLessThan(1e-6),
        )
        found.second.forEach((value, k) =>
          expect(Math.abs(value - volume.second[k]!)).toBeLessThan(1e-6 * volume.amount * 100),
        )
      }),
      { seed: 12, numRuns: 200 },
    )
  })

  it('read a quarter turn as 90° to the last digit', () => {
    const place = drawnPlaceOf({ matrix: [0, -1, 0, 1, 0, 0, 0, 0, 1], move: [5, 0, 0] }, [0, 0, 0])
    expect(place).toEqual({ position: [5, 0, 0], rotateDeg: [0, 0, 90], mirrored: false })
  })

  it('turn the file’s nose forward about its middle', () => {
    const place = { position: [10, 100, 7], rotateDeg: [0, 0, 0], mirrored: false } as const
    // Nose along y: what lies 100 along y, seen from (10, 0, 5), is 100 forward.
    const [ahead] = placesAsDrawn([part(place)], 'y', [10, 0, 5])
    expect(ahead).toEqual({
      partId: 'a',
      positionMm: [100, 0, 2],
      rotateDeg: [0, 0, -90],
      mirrored: false,
    })
    for (const [nose, forward] of [
      ['x', [1, 0]],
      ['-x', [-1, 0]],
      ['y', [0, 1]],
      ['-y', [0, -1]],
    ] as const) {
      const tip = { ...place, position: [forward[0], forward[1], 0] as const }
      expect(placesAsDrawn([part(tip)], nose)[0]?.positionMm.map(Math.round)).toEqual([1, 0, 0])
    }
  })

  it('place as many pieces as fly, in millimetres, and none of parts without', () => {
    const one = { position: [1, 0, 0], rotateDeg: [0, 0, 0], mirrored: false } as const
    const inches = { ...part(one, one, one), unit: 'inch', quantity: 2 } as const
    const places = placesAsDrawn([inches, { id: 'b', unit: 'millimetre', quantity: 1 }])
    expect(places.map(({ partId, positionMm }) => [partId, positionMm[0]])).toEqual([
      ['a', 25.4],
      ['a', 25.4],
    ])
  })
})
