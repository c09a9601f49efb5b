import { describe, expect, test } from 'vitest'
import { findMouths } from '../../../src/core/joints/findMouths.ts'
import type { Vec3 } from '../../../src/core/model/mesh.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { blind, lay, layPoint, randomLay, type Lay } from '../../support/jointShapes.ts'
import { prism, rectangle, translate } from '../../support/meshes.ts'
import { circle } from '../../support/polygon.ts'
import { seededRandom } from '../../support/random.ts'

const FLAT: Lay = { degrees: [0, 0, 0], by: [0, 0, 0] }
const sheet = rectangle(60, 40)

/** Of each mouth: out up or down as if the part still lay flat, and the bore's diameter. */
function told(mouths: ReturnType<typeof findMouths>, way: Lay) {
  const up = layPoint([0, 0, 1], { ...way, by: [0, 0, 0] })
  return mouths.map(({ out, bore }) => [
    Math.round(out[0] * up[0] + out[1] * up[1] + out[2] * up[2]),
    Number(bore.diameterMm.toFixed(4)),
  ])
}

describe('mouths of bores', () => {
  test.each([8, 19, 64, 128])('stand in the faces they open into, %i facets', (facets) => {
    const random = seededRandom(facets)
    const part = boredPlate(sheet, 6, [
      straight(10, 10, 1.7, 6, facets),
      blind(40, 25, 2, 4, facets),
    ])
    for (const way of [FLAT, randomLay(random), randomLay(random)]) {
      const mouths = findMouths(lay(part, way))
      expect(mouths).toHaveLength(3)
      // By drawing: the straight bore opens above and below, the blind one above.
      for (const at of [
        [10, 10, 6],
        [10, 10, 0],
        [40, 25, 6],
      ] as const) {
        const goal = layPoint(at, way)
        const off = mouths.map(({ atMm }) => Math.hypot(...atMm.map((v, k) => v - goal[k]!)))
        expect(Math.min(...off)).toBeLessThan(1e-6)
      }
      expect(told(mouths, way).toSorted((a, b) => a[1]! - b[1]! || a[0]! - b[0]!)).toEqual([
        [-1, 3.4],
        [1, 3.4],
        [1, 4],
      ])
      expect(mouths.every(({ sunk }) => !sunk)).toBe(true)
    }
  })

  test('a countersink and a counterbore are one bore with a sunk mouth, past the cone', () => {
    const part = boredPlate(sheet, 6, [
      {
        x: 15,
        y: 20,
        facets: 24,
        rings: [
          [0, 3.4],
          [1.7, 1.7],
          [6, 1.7],
        ],
        through: true,
      },
      {
        x: 45,
        y: 20,
        facets: 24,
        rings: [
          [0, 3],
          [3, 3],
          [3, 1.7],
          [6, 1.7],
        ],
        through: true,
      },
    ])
    const mouths = findMouths(part)
    expect(mouths).toHaveLength(4)
    for (const { atMm, out, bore, sunk, lengthMm } of mouths) {
      expect(bore.diameterMm).toBeCloseTo(3.4, 6)
      expect(sunk).toBe(out[2] > 0)
      expect(atMm[2]).toBeCloseTo(out[2] > 0 ? 6 : 0, 6)
      if (sunk) expect(lengthMm).toBeCloseTo(6, 6)
    }
  })

  test('the seat of a heat-set insert takes no head, and is what the screw bites in', () => {
    // M3: a hole of 4.0 mm (Accu hole charts) over one of 3.2 (ISO 273 fine); the head is 5.5
    // across (ISO 4762).
    const [seat, under] = [4, 3.2]
    const part = boredPlate(sheet, 14, [
      {
        x: 15,
        y: 20,
        facets: 48,
        rings: [
          [0, seat / 2],
          [5, seat / 2],
          [5, under / 2],
          [14, under / 2],
        ],
        through: true,
      },
    ])
    const mouths = findMouths(part)
    expect(mouths.map(({ sunk }) => sunk)).toEqual([false, false])
    const top = mouths.find(({ out }) => out[2] > 0)
    expect(top?.bore.diameterMm).toBeCloseTo(seat, 6)
    expect(top?.bore.depthMm).toBeCloseTo(5, 6)
    expect(mouths.find(({ out }) => out[2] < 0)?.bore.diameterMm).toBeCloseTo(under, 6)
  })
})

describe('feet of pegs', () => {
  test('a boss on a plate stands on its foot, a rod has two free ends, a disc has none', () => {
    const boss = boredPlate(sheet, 5, [])
    const pin = translate(prism(circle(3, 32), 8), [20, 20, 0])
    expect(findMouths(boss)).toEqual([])
    const rod = findMouths(pin)
    expect(rod.map(({ bore }) => [bore.kind, bore.openLow, bore.openHigh])).toEqual([
      ['peg', true, true],
      ['peg', true, true],
    ])
    expect(rod.map(({ atMm, out }) => [atMm[2], out[2]] as const)).toEqual(
      expect.arrayContaining([
        [0, 1],
        [8, -1],
      ]),
    )
    expect(findMouths(prism(circle(20, 64), 5))).toEqual([])
  })

  test('a pin that grows out of a plate has one mouth, at its foot', () => {
    // A blind bore turned inside out and boxed in: the plate's top with a pin standing on it.
    const height = 7
    const pinned = pinOnPlate(3, height, 24)
    const mouths = findMouths(pinned)
    expect(mouths).toHaveLength(1)
    const [foot] = mouths
    expect(foot!.bore).toMatchObject({ kind: 'peg' })
    expect(foot!.bore.diameterMm).toBeCloseTo(6, 6)
    expect(foot!.out[2]).toBeCloseTo(1, 9)
    const at: Vec3 = [30, 20, 4]
    expect(Math.hypot(...foot!.atMm.map((v, k) => v - at[k]!))).toBeLessThan(1e-6)
    expect(foot!.lengthMm).toBeCloseTo(height, 6)
  })
})

/** The floor of a blind bore lifted above the plate. */
function pinOnPlate(radius: number, height: number, facets: number) {
  const plate = boredPlate(sheet, 4, [blind(30, 20, radius, 2, facets)])
  const positions = plate.positions.slice()
  for (let v = 0; v < positions.length; v += 3)
    if (positions[v + 2] === 2) positions[v + 2] = 4 + height
  return { positions, indices: plate.indices }
}
