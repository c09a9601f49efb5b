import { describe, expect, test } from 'vitest'
import { findNecks } from '../../../../src/core/mesh/holes/findNecks.ts'
import { wallRound } from '../../../../src/core/mesh/holes/wallRound.ts'
import { wholeHoles, type WholeHole } from '../../../../src/core/mesh/holes/wholeHoles.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { boredPlate, type Boring } from '../../../support/boredPlate.ts'
import { lay, layPoint, randomLay } from '../../../support/jointShapes.ts'
import { circle, merge, prism, rectangle, translate, type Loop } from '../../../support/meshes.ts'
import { seededRandom } from '../../../support/random.ts'

const FACETS = [8, 12, 16, 24, 32, 48, 64, 128]

/** A slot along x with round ends of so many facets each. */
function slot(width: number, stretch: number, half: number, x: number, y: number): Loop {
  const end = (from: number, at: number): Loop =>
    Array.from({ length: half + 1 }, (_, i) => {
      const angle = from + (Math.PI * i) / half
      return [at + (width / 2) * Math.cos(angle), y + (width / 2) * Math.sin(angle)]
    })
  return [...end(-Math.PI / 2, x + stretch / 2), ...end(Math.PI / 2, x - stretch / 2)]
}

/** A hexagon by its flats. */
const hexagon = (flats: number, x: number, y: number): Loop => circle(flats / Math.sqrt(3), 6, x, y)

const bore = (facets: number, rings: Boring['rings'], through = true): Mesh =>
  boredPlate(rectangle(40, 30), 10, [{ x: 14, y: 12, facets, rings, through }])

function only(mesh: Mesh): WholeHole {
  const found = wholeHoles(mesh)
  expect(found).toHaveLength(1)
  return found[0]!
}

describe.each(FACETS)('of %i facets, turned anyhow', (facets) => {
  const random = seededRandom(facets)
  const turned = (mesh: Mesh): Mesh => lay(mesh, randomLay(random))

  test('a bore passes as much as its polygon’s inscribed circle', () => {
    const hole = only(
      turned(
        bore(facets, [
          [0, 1.6],
          [10, 1.6],
        ]),
      ),
    )
    expect(hole.diameterMm).toBeCloseTo(3.2, 6)
    // Apothem of a regular polygon: r · cos(π ÷ n).
    expect(hole.clearMm).toBeCloseTo(3.2 * Math.cos(Math.PI / facets), 6)
    expect(hole).toMatchObject({ shape: 'round', seats: [], openLow: true, openHigh: true })
    expect(hole.depthMm).toBeCloseTo(10, 6)
  })

  test('a countersink is a seat of its mouth’s width', () => {
    const hole = only(
      turned(
        bore(facets, [
          [0, 3.36],
          [1.7, 1.66],
          [10, 1.66],
        ]),
      ),
    )
    expect(hole.seats).toHaveLength(1)
    expect(hole.seats[0]!.kind).toBe('countersink')
    expect(hole.seats[0]!.diameterMm).toBeCloseTo(6.72, 5)
    expect(hole.seats[0]!.depthMm).toBeCloseTo(1.7, 5)
    expect(hole.depthMm).toBeCloseTo(8.3, 5)
    expect(hole.openLow && hole.openHigh).toBe(true)
  })

  test('a chamfer is none', () => {
    const hole = only(
      turned(
        bore(facets, [
          [0, 1.9],
          [0.3, 1.6],
          [10, 1.6],
        ]),
      ),
    )
    expect(hole.seats).toEqual([])
  })

  test('a counterbore is a seat, on its own side', () => {
    const laid = randomLay(random)
    const mesh = lay(
      bore(facets, [
        [0, 3],
        [3.2, 3],
        [3.2, 1.7],
        [10, 1.7],
      ]),
      laid,
    )
    const hole = only(mesh)
    expect(hole.diameterMm).toBeCloseTo(3.4, 6)
    expect(hole.seats).toHaveLength(1)
    expect(hole.seats[0]).toMatchObject({ kind: 'counterbore' })
    expect(hole.seats[0]!.diameterMm).toBeCloseTo(6, 6)
    expect(hole.seats[0]!.depthMm).toBeCloseTo(3.2, 6)
    const up = layPoint([14, 12, 10], laid).map((value, k) => value - hole.centreMm[k]!)
    const along = up.reduce((sum, value, k) => sum + value * hole.axis[k]!, 0)
    expect(hole.seats[0]!.end).toBe(along > 0 ? 'high' : 'low')
  })

  test('a web of one layer over a counterbore is told', () => {
    const lower = bore(
      facets,
      [
        [0, 3],
        [3, 3],
      ],
      false,
    )
    expect(only(turned(lower)).webMm).toBeNull()
    const webbed = turned(webbedPlate(facets, 0.2))
    const hole = only(webbed)
    expect(hole.webMm).toBeCloseTo(0.2, 6)
    expect(hole.diameterMm).toBeCloseTo(3.4, 6)
    expect(hole.seats).toMatchObject([{ kind: 'counterbore' }])
  })

  test('a slot is found by width and length', () => {
    const half = facets / 2
    const mesh = prism(rectangle(40, 30), 4, [slot(3.2, 6, half, 18, 14)])
    const hole = only(turned(mesh))
    expect(hole.shape).toBe('slot')
    expect(hole.diameterMm).toBeCloseTo(3.2, 5)
    expect(hole.stretchMm).toBeCloseTo(6, 5)
    expect(hole.openLow && hole.openHigh).toBe(true)
  })

  test('the wall round a bore is what stands to the nearest side', () => {
    const mesh = bore(facets, [
      [0, 1.6],
      [10, 1.6],
    ])
    const laid = turned(mesh)
    // 12 from the long side, 14 from the short one.
    expect(wallRound(laid, only(laid))).toBeCloseTo(12 - 1.6, 5)
  })
})

test('a nut pocket over a bore is a seat; a hexagon alone is a hole of its own', () => {
  const random = seededRandom(5)
  const lower = boredPlate(rectangle(30, 20), 4, [
    {
      x: 10,
      y: 8,
      facets: 32,
      through: true,
      rings: [
        [0, 1.6],
        [4, 1.6],
      ],
    },
  ])
  const upper = prism(rectangle(30, 20), 2.4, [hexagon(5.6, 10, 8)])
  const nut = only(lay(hexSeat(), randomLay(random)))
  expect(nut).toMatchObject({ shape: 'round', openLow: true, openHigh: true })
  expect(nut.seats).toHaveLength(1)
  expect(nut.seats[0]).toMatchObject({ kind: 'nut pocket' })
  expect(nut.seats[0]!.diameterMm).toBeCloseTo(5.6, 5)
  expect(nut.seats[0]!.depthMm).toBeCloseTo(2.4, 5)
  const alone = only(lay(upper, randomLay(random)))
  expect(alone.shape).toBe('hexagon')
  expect(alone.diameterMm).toBeCloseTo(5.6, 6)
  expect(only(lower).seats).toEqual([])
})

test('a boss wears thin: the wall is that of the boss, not of the plate', () => {
  const boss = prism(circle(3.3, 64, 0, 0), 8, [circle(2, 32, 0, 0)])
  // Inscribed: at the facets the boss is 3.3 · cos(π ÷ 64) wide.
  expect(wallRound(boss, only(boss))).toBeCloseTo(3.3 * Math.cos(Math.PI / 64) - 2, 4)
})

test('square pockets, rounded windows and round outsides are no holes', () => {
  const window: Loop = [
    ...slot(3, 6, 8, 0, 0)
      .slice(0, 9)
      .map(([x, y]): [number, number] => [x + 15, y + 20]),
    ...slot(3, 6, 8, 0, 0)
      .slice(9)
      .map(([x, y]): [number, number] => [x + 15, y + 12]),
  ]
  const square: Loop = [
    [3, 3],
    [7, 3],
    [7, 7],
    [3, 7],
  ]
  expect(wholeHoles(prism(rectangle(40, 30), 3, [square, window]))).toEqual([])
  expect(wholeHoles(prism(circle(9, 48), 4))).toEqual([])
  expect(wholeHoles(prism(circle(9, 6), 4))).toEqual([])
})

/** A counterbore from the top and a bore from below, with so much between. */
function webbedPlate(facets: number, web: number): Mesh {
  const outline = rectangle(40, 30)
  const top = boredPlate(outline, 4, [
    {
      x: 14,
      y: 12,
      facets,
      through: false,
      rings: [
        [0, 3],
        [4 - web, 3],
      ],
    },
  ])
  const below = prism(outline, 6, [circle(1.7, facets, 14, 12)])
  // The faces between them lie on each other: the cut is the same, and the bores are each whole.
  return merge([translate(top, [0, 0, 6]), below])
}

/**
 * A bore of 3.2 below a hexagon of 5.6, corners shared by hand: two prisms and the ring between
 * them.
 */
function hexSeat(): Mesh {
  return merge([
    translate(prism(rectangle(30, 20), 2.4, [hexagon(5.6, 10, 8)]), [0, 0, 4]),
    prism(rectangle(30, 20), 4, [circle(1.6, 32, 10, 8)]),
  ])
}

test('a damper’s neck is the waist between its two flanges', () => {
  // From below: a flange of 12, a neck of 8.2 and 2.5 long, a flange of 11; bored through.
  const cup = merge([
    prism(circle(6, 64), 1.7, [circle(1.2, 32)]),
    translate(prism(circle(4.1, 64), 2.5, [circle(1.2, 32)]), [0, 0, 1.7]),
    translate(prism(circle(5.5, 64), 1.5, [circle(1.2, 32)]), [0, 0, 4.2]),
  ])
  const random = seededRandom(3)
  const [neck, ...more] = findNecks(lay(cup, randomLay(random)))
  expect(more).toEqual([])
  expect(neck?.diameterMm).toBeCloseTo(8.2, 5)
  expect(neck?.widthMm).toBeCloseTo(2.5, 5)
  expect(findNecks(prism(circle(4, 64), 10))).toEqual([])
})
