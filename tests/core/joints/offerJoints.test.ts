import { describe, expect, test } from 'vitest'
import { jointMotion } from '../../../src/core/joints/jointMotion.ts'
import { offerJoints } from '../../../src/core/joints/offerJoints.ts'
import { turnEnds } from '../../../src/core/joints/turnEnds.ts'
import { itemMesh } from '../../../src/core/joints/itemMesh.ts'
import { inverse, mapPoint, STAY } from '../../../src/core/mesh/rigidMaps.ts'
import type { ItemBody } from '../../../src/core/model/aircraft.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { blind, holed, lay, layPoint, outlineOf, randomLay } from '../../support/jointShapes.ts'
import { box, merge, prism, rectangle, translate } from '../../support/meshes.ts'
import { circle, type Point } from '../../support/polygon.ts'
import { seededRandom } from '../../support/random.ts'

const part = (partId: string, mesh: Mesh, pieces = 1) => ({ partId, mesh, pieces })
const distance = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** No two distances among them alike, so only one way fits. */
const ODD: readonly Point[] = [
  [20, 15],
  [58, 20],
  [30, 44],
  [64, 41],
]

/** The first of them, on the plates' undersides. */
const ODD3: Vec3 = [20, 15, 0]

describe('offers', () => {
  test('of two plates drilled alike: first the four holes, with the joint and the place it makes', () => {
    const random = seededRandom(3)
    const ways = [randomLay(random), randomLay(random)] as const
    const a = holed(outlineOf('plate', 24), 4, ODD, 1.7, 24)
    const under = boredPlate(
      outlineOf('arm', 24),
      6,
      ODD.map(([x, y]) => blind(x, y, 2, 5, 24)),
    )
    const b = translate(under, [0, 0, -6])
    const offers = offerJoints([part('deck', lay(a, ways[0])), part('arm', lay(b, ways[1]))])
    expect(offers.length).toBeLessThanOrEqual(5)
    const { joint, verdict, motion } = offers[0]!
    const [middle, goal] = ways.map((way) => layPoint([40, 30, -3], way)).toReversed()
    expect(distance(mapPoint(motion, middle!), goal!)).toBeLessThan(1e-5)
    expect(joint).toMatchObject({ kind: 'bores', a: { partId: 'deck' }, b: { partId: 'arm' } })
    expect(joint.a.bores).toHaveLength(4)
    expect(verdict).toMatchObject({ clashMm3: 0, covered: 0, headsInside: 0, seated: 1 })
    // Bores of both ends in the same order: they come to lie on each other's axes.
    joint.b.bores.forEach(({ centreMm }, i) => {
      const { centreMm: own, axis } = joint.a.bores[i]!
      const at = mapPoint(motion, centreMm)
      const off: Vec3 = [at[0] - own[0], at[1] - own[1], at[2] - own[2]]
      const along = off[0] * axis[0] + off[1] * axis[1] + off[2] * axis[2]
      expect(Math.hypot(...off) - Math.abs(along)).toBeLessThan(1e-5)
    })
    // And the faces on each other.
    expect(distance(mapPoint(motion, joint.b.face!.pointMm), joint.a.face!.pointMm)).toBeLessThan(
      1e-5,
    )
  })

  test('a motor is offered by its holes, a pack on a face, a propeller on the motor’s shaft', () => {
    const spots: readonly Point[] = [
      [32, 22],
      [48, 22],
      [48, 38],
      [32, 38],
    ]
    const plate = part('plate', holed(outlineOf('plate', 24), 4, spots, 1.7, 24))
    const bought = (partId: string, body: ItemBody) => ({ ...part(partId, itemMesh(body)), body })
    const holes = { layout: 'rectangle', aMm: 16, bMm: 16, thread: 'M3', depthMm: 4 } as const
    const motor = bought('motor', { kind: 'motor', sizeMm: [28, 28, 18], holes, shaftMm: 5 })
    const pack = bought('pack', { kind: 'pack', sizeMm: [70, 35, 25], holes: null, shaftMm: 0 })
    const prop = bought('prop', { kind: 'prop', sizeMm: [127, 127, 7], holes: null, shaftMm: 5 })
    const offersOf = (...parts: Parameters<typeof offerJoints>[0]) =>
      offerJoints(parts).map(({ joint, motion, isDrawn }) => ({
        joint,
        motion,
        isDrawn,
        at: motion.move,
      }))
    // Both sides of the plate; nothing of what is bought lies as a file has it.
    const onPlate = offersOf(plate, motor)
    expect(onPlate.map(({ joint }) => joint.a.bores.length)).toEqual([4, 4])
    expect(onPlate.some(({ isDrawn }) => isDrawn)).toBe(false)
    for (const { joint, at } of onPlate) {
      expect(joint.fastener).toEqual({ thread: 'M3', end: 'tapped' })
      expect([at[0], at[1]].map(Math.round)).toEqual([40, 30])
    }
    const [rest] = offersOf(plate, pack)
    expect(rest?.joint).toMatchObject({ kind: 'faces', fastener: null, a: { bores: [] } })
    expect(distance(rest!.at, [40, 30, rest!.at[2] > 2 ? 4 : 0])).toBeLessThan(1e-6)
    expect(offersOf(plate, prop)).toEqual([])
    const [spins] = offersOf(motor, prop)
    // Whichever way up: on top of the motor, its middle over the motor's.
    expect(distance(mapPoint(spins!.motion, [0, 0, 3.5]), [0, 0, 21.5])).toBeLessThan(1e-6)
  })

  test('plates that cannot touch by their four holes are offered on posts, below all that touch', () => {
    // A window with a wall round it stands 7 mm over the lower plate.
    const lower = merge([
      holed(outlineOf('plate', 24), 4, ODD, 1.6, 24),
      translate(box(8, 8, 7), [40, 24, 4]),
    ])
    const upper = holed(outlineOf('plate', 24), 3, ODD, 1.6, 24)
    const offers = offerJoints([part('lower', lower), part('upper', upper)])
    const places = offers.map(({ joint }) => joint.gapMm)
    expect(places).toEqual(places.toSorted((one, other) => one - other))
    const posts = offers.filter(({ joint }) => joint.gapMm > 0)
    expect(posts.length).toBeGreaterThan(0)
    expect(posts.length).toBeLessThanOrEqual(4)
    for (const { joint, motion } of posts) {
      expect(joint.fastener).toEqual({ thread: 'M3', end: 'post' })
      expect(joint.a.bores).toHaveLength(4)
      // As the joint alone puts it: on the four axes.
      expect(distance(mapPoint(jointMotion(joint), ODD3), mapPoint(motion, ODD3))).toBeLessThan(
        1e-5,
      )
    }
    // Above, the shortest post that is longer than the wall is high; below the shortest of all.
    const above = posts.find(({ motion }) => mapPoint(motion, ODD3)[2] > 4)
    expect(above!.joint.gapMm).toBe(8)
    expect(mapPoint(above!.motion, ODD3)[2]).toBeCloseTo(4 + 8, 5)
    const below = posts.find(({ motion }) => mapPoint(motion, ODD3)[2] < 0)
    expect(below!.joint.gapMm).toBe(5)
    // Three holes that meet across a gap are chance.
    const three = holed(outlineOf('plate', 24), 3, ODD.slice(0, 3), 1.6, 24)
    const left = offerJoints([part('lower', lower), part('three', three)])
    expect(left.every(({ joint }) => joint.gapMm === 0)).toBe(true)
  })

  test('a way in which parts would run into each other is none', () => {
    const deck = boredPlate(
      rectangle(80, 60),
      4,
      ODD.map(([x, y]) => straight(x, y, 1.7, 4, 16)),
    )
    const arm = boredPlate(
      rectangle(80, 60),
      6,
      ODD.map(([x, y]) => blind(x, y, 2, 5, 16)),
    )
    const walled = (z: number) => merge([deck, translate(box(4, 40, 30), [72, 10, z])])
    const offersOn = (mesh: Mesh) => offerJoints([part('a', mesh), part('b', arm)])
    const byFour = (offers: ReturnType<typeof offerJoints>) =>
      offers
        .filter(({ joint }) => joint.a.bores.length === 4)
        .map(({ motion }) => Math.round(mapPoint(motion, [40, 30, 3])[2]))
    // Its mouths up, the arm goes below the deck, whatever stands on that; beside a wall below it
    // goes nowhere.
    expect(byFour(offersOn(deck))).toEqual([-3])
    expect(byFour(offersOn(walled(3)))).toEqual([-3])
    const left = offersOn(walled(-29))
    expect(left.length).toBeGreaterThan(0)
    expect(byFour(left)).toEqual([])
    // And no point of the wall comes to lie in the arm.
    for (const { motion } of left) {
      const back = inverse(motion)
      for (let n = 0; n < 5 * 41 * 30; n++) {
        const x = 72 + (n % 5)
        const y = 10 + (Math.floor(n / 5) % 41)
        const at = mapPoint(back, [x, y, -29 + Math.floor(n / 205)])
        const isInside = at.every((value, k) => value > 0.1 && value < [80, 60, 6][k]! - 0.1)
        expect(isInside).toBe(false)
      }
    }
  })

  test('parts that the files put in place come first, as drawn', () => {
    const lower = box(40, 30, 5)
    const upper = translate(box(20, 30, 5), [0, 0, 5])
    const [first] = offerJoints([part('lower', lower), part('upper', upper)])
    expect(first).toMatchObject({
      isDrawn: true,
      joint: { kind: 'drawn' },
      motion: STAY,
    })
    expect(first!.verdict.contactMm2).toBeCloseTo(20 * 30, 4)
    const far = offerJoints([part('lower', lower), part('far', translate(upper, [90, 0, 0]))])
    expect(far.some(({ isDrawn }) => isDrawn)).toBe(false)
  })

  test('a tube goes into its collar as far as the bore', () => {
    const boom = translate(prism(circle(6, 48), 90), [200, 0, 40])
    const collar = boredPlate(rectangle(24, 24), 20, [blind(12, 12, 6.1, 15, 48)])
    const offers = offerJoints([part('collar', collar), part('boom', boom)])
    const shafts = offers.filter(({ joint }) => joint.kind === 'shaft')
    expect(shafts.length).toBeGreaterThan(0)
    const [{ motion }] = shafts as [(typeof shafts)[number]]
    // By drawing: its end on the bore's floor, 5 above the collar's bottom, in the middle.
    const ends = [mapPoint(motion, [200, 0, 40]), mapPoint(motion, [200, 0, 130])]
    const inner = ends.toSorted((p, q) => p[2] - q[2])[0]!
    expect(distance(inner, [12, 12, 5])).toBeLessThan(1e-6)
  })

  test('what is offered is kept: the joint alone puts the piece where it was matched', () => {
    const boom = translate(prism(circle(6, 48), 90), [200, 0, 40])
    const collar = boredPlate(rectangle(24, 24), 20, [blind(12, 12, 6.1, 15, 48)])
    const panel = box(60, 20, 9)
    const deck = holed(outlineOf('plate', 24), 4, ODD, 1.7, 24)
    const random = seededRandom(21)
    const meshes = [
      boom,
      collar,
      panel,
      box(40, 20, 9),
      deck,
      holed(rectangle(80, 60), 3, ODD, 1.7, 24),
    ]
    const parts = meshes.map((mesh, i) => ({
      ...part(`p${i}`, lay(mesh, randomLay(random)), 3),
      mirrored: i % 2,
    }))
    const offers = offerJoints(parts)
    expect(new Set(offers.map(({ joint }) => joint.kind))).toEqual(
      new Set(['bores', 'shaft', 'faces']),
    )
    expect(offers.some(({ joint }) => joint.mirrored)).toBe(true)
    for (const { joint, motion } of offers) {
      const put = jointMotion(joint)
      for (const point of [
        [0, 0, 0],
        [90, 0, 0],
        [0, 80, 30],
      ] as const) {
        expect(distance(mapPoint(put, point), mapPoint(motion, point))).toBeLessThan(0.05)
      }
      // Told from the other piece it is the same joint.
      const back = jointMotion(turnEnds(joint))
      expect(distance(mapPoint(back, mapPoint(put, [50, 20, 10])), [50, 20, 10])).toBeLessThan(0.05)
    }
  })

  test('rib faces of two wing panels meet one way round', () => {
    // A rib like a drop: longer than high, blunt before, so that no other turn fits.
    const rib: Point[] = Array.from({ length: 40 }, (_, i) => {
      const t = (2 * Math.PI * i) / 40
      return [60 * (1 - Math.cos(t)), 9 * Math.sin(t) * Math.sin(t / 2) + 3 * Math.sin(t / 2)]
    })
    const random = seededRandom(9)
    const ways = [randomLay(random), randomLay(random)] as const
    const [root, tip] = [prism(rib, 70), translate(prism(rib, 50), [0, 0, 70])]
    const offers = offerJoints([part('root', lay(root, ways[0])), part('tip', lay(tip, ways[1]))])
    const goal = layPoint([30, 2, 90], ways[0])
    const off = offers.map(({ motion }) =>
      distance(mapPoint(motion, layPoint([30, 2, 90], ways[1])), goal),
    )
    expect(Math.min(...off)).toBeLessThan(1e-5)
    // Both panels are alike at both ends and from both sides of their span.
    expect(offers.length).toBeLessThanOrEqual(4)
  })

  test('a symmetric part is offered once, not once for each way it looks the same', () => {
    const square: Point[] = [
      [30, 20],
      [50, 20],
      [50, 40],
      [30, 40],
    ]
    const deck = boredPlate(
      rectangle(80, 60),
      4,
      square.map(([x, y]) => blind(x, y, 1.25, 3, 16)),
    )
    const mount = translate(
      boredPlate(
        rectangle(28, 28),
        3,
        square.map(([x, y]) => straight(x - 26, y - 16, 1.7, 3, 16)),
      ),
      [0, 0, 100],
    )
    const offers = offerJoints([part('deck', deck), part('mount', mount)])
    const four = offers.filter(({ joint }) => joint.a.bores.length === 4)
    expect(four).toHaveLength(1)
  })

  test('a loop that closes speaks for its ways', () => {
    // Two blocks side by side under one plate, by two holes each, and equal faces between them.
    const [left, right]: [Point[], Point[]] = [
      [
        [5, 6],
        [14, 15],
      ],
      [
        [26, 5],
        [33, 16],
      ],
    ]
    const block = (holes: readonly Point[], from: number, long: number) =>
      translate(
        boredPlate(
          rectangle(long, 18),
          10,
          holes.map(([x, y]) => blind(x - from, y, 1.25, 6, 16)),
        ),
        [from, 0, 0],
      )
    const plate = translate(holed(rectangle(46, 18), 3, [...left, ...right], 1.7, 16), [0, 0, 10])
    const random = seededRandom(4)
    const ways = [randomLay(random), randomLay(random), randomLay(random)] as const
    const offers = offerJoints([
      part('plate', lay(plate, ways[0])),
      part('left', lay(block(left, 0, 20), ways[1])),
      part('right', lay(block(right, 20, 26), ways[2])),
    ])
    const first = offers.find(
      ({ joint }) => joint.b.partId === 'right' && joint.a.partId === 'plate',
    )
    expect(first!.loops).toBeGreaterThan(0)
    const at: Vec3 = [31, 4, 7]
    const off = offers
      .filter(
        ({ joint, loops }) => joint.b.partId === 'right' && joint.a.partId === 'plate' && loops > 0,
      )
      .map(({ motion }) => distance(mapPoint(motion, layPoint(at, ways[2])), layPoint(at, ways[0])))
    expect(Math.min(...off)).toBeLessThan(1e-5)
  })
})
