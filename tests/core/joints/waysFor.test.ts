import { expect, test } from 'vitest'
import type { JoinablePart } from '../../../src/core/joints/equalPatterns.ts'
import { jointMotion } from '../../../src/core/joints/jointMotion.ts'
import { jointStrain } from '../../../src/core/joints/jointStrain.ts'
import { keepShapes, offerJoints, type MeetingPart } from '../../../src/core/joints/offerJoints.ts'
import { placePieces } from '../../../src/core/joints/placePieces.ts'
import { repeatsOf } from '../../../src/core/joints/repeatWay.ts'
import { standingPieces } from '../../../src/core/joints/standingPieces.ts'
import { offAxesMm, turnsOver } from '../../../src/core/joints/turnOver.ts'
import { distinctWays, waysFor, type LoosePiece } from '../../../src/core/joints/waysFor.ts'
import { STAY } from '../../../src/core/mesh/rigidMaps.ts'
import type { Place } from '../../../src/core/model/aircraft.ts'
import type { Joint } from '../../../src/core/model/joints.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { rectangle } from '../../support/meshes.ts'
import { circle, type Point } from '../../support/polygon.ts'

/** Two holes 12 apart on each of four spokes. */
const SPOKES = [0, 90, 180, 270].flatMap((degrees): Point[] => {
  const angle = (degrees * Math.PI) / 180
  return [20, 32].map((r): Point => [r * Math.cos(angle), r * Math.sin(angle)])
})
const deckMesh = boredPlate(
  circle(40, 64),
  3,
  SPOKES.map(([x, y]) => straight(x, y, 1.7, 3, 24)),
)
const armMesh = boredPlate(rectangle(90, 12), 6, [
  straight(8, 6, 1.7, 6, 24),
  straight(20, 6, 1.7, 6, 24),
])
const atOrigin = (partId: string): Place => ({
  partId,
  positionMm: [0, 0, 0],
  rotateDeg: [0, 0, 0],
  mirrored: false,
})

function frameOf(meshes: readonly MeetingPart[], joints: readonly Joint[] = []) {
  const shapeFor = keepShapes()
  const offers = offerJoints(meshes, shapeFor)
  const shapes = Object.fromEntries(
    meshes.map(({ partId, mesh }): [string, JoinablePart] => {
      const { mouths, faces, centreMm, moments } = shapeFor(mesh)
      return [partId, { mouths, faces, centresMm: [centreMm, moments.centreMm] }]
    }),
  )
  const parts = meshes.map(({ partId, pieces }) => ({
    id: partId,
    unit: 'millimetre' as const,
    quantity: pieces,
  }))
  const standing = standingPieces(parts, placePieces(parts, [atOrigin('deck')], joints))
  return { parts, standing, offers, joints, shapes }
}

const arms: readonly MeetingPart[] = [
  { partId: 'deck', mesh: deckMesh, pieces: 1 },
  { partId: 'arm', mesh: armMesh, pieces: 4 },
]
const arm = (piece: number): LoosePiece => ({ partId: 'arm', piece, isMirrored: false })

test('four arms of one deck are a handful of ways, and a ring of one of them', () => {
  const frame = frameOf(arms)
  const ways = waysFor(arm(0), frame)
  const distinct = distinctWays(ways)
  // By drawing: four spokes, outwards, above or below; more ways go over the deck's middle.
  expect(ways.length).toBeGreaterThanOrEqual(8)
  expect(distinct.length).toBeLessThanOrEqual(4)
  const way = distinct[0]!
  expect(way.joint.fastener).toEqual({ thread: 'M3', end: 'nut' })
  const repeats = repeatsOf(way, [arm(1), arm(2), arm(3)], frame)
  expect(repeats.map(({ kind, placed }) => [kind, placed.length])).toContainEqual(['ring', 4])
  const ring = repeats.find(({ kind, wanted }) => kind === 'ring' && wanted === 4)!
  expect(ring.missing).toBeNull()
  const made = ring.placed.map(({ joint }, i): Joint => ({ ...joint, id: `j${i}` }))
  const placed = placePieces(frame.parts, [atOrigin('deck')], made)
  expect(placed.loops).toEqual([])
  const tips = standingPieces(frame.parts, placed)
    .filter(({ partId }) => partId === 'arm')
    .map(
      ({ motion: { matrix, move } }) =>
        [90 * matrix[0] + move[0], 90 * matrix[3] + move[1]] as const,
    )
  // A quarter turn apart, all as far out.
  const turns = tips.map(([x, y]) => Math.round((Math.atan2(y, x) * 180) / Math.PI))
  const apart = turns.map((turn) => (((turn - turns[0]!) % 360) + 360) % 360)
  expect(apart.toSorted((one, other) => one - other)).toEqual([0, 90, 180, 270])
  expect(Math.max(...tips.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(
    Math.min(...tips.map(([x, y]) => Math.hypot(x, y))),
    3,
  )
  // What is taken is offered no more from that side.
  const after = frameOf(arms, made)
  const [, , up = 0] = way.joint.a.face?.normal ?? []
  const onDeck = waysFor({ ...arm(0), piece: 9 }, after).filter(
    ({ joint }) => joint.a.partId === 'deck',
  )
  expect(onDeck.length).toBeGreaterThan(0)
  for (const { joint } of onDeck) expect((joint.a.face?.normal[2] ?? 0) * up).toBeLessThan(0)
  expect(repeatsOf(way, [arm(1)], frame).find(({ wanted }) => wanted === 4)?.missing).toBe('pieces')
})

test('a way is turned over where its bores go through, and not where they are blind', () => {
  const frame = frameOf(arms)
  const { joint } = waysFor(arm(0), frame)[0]!
  const over = turnsOver(joint)
  expect(over).toHaveLength(3)
  for (const each of over) {
    expect(offAxesMm(each)).toBeLessThan(1e-6)
    expect(jointStrain(each, STAY, STAY).axesMm).toBeGreaterThan(1)
  }
  const shut = joint.b.bores.map((bore) => ({ ...bore, openLow: false }))
  expect(turnsOver({ ...joint, b: { ...joint.b, bores: shut } })).toHaveLength(1)
})

test('a plate on four posts is joined to all of them by one way', () => {
  const corners: readonly Point[] = [
    [10, 10],
    [70, 10],
    [70, 44],
    [10, 44],
  ]
  const outline = rectangle(80, 54)
  const holes = corners.map(([x, y]) => straight(x, y, 1.7, 3, 24))
  const plate = boredPlate(outline, 3, [...holes, straight(26, 20, 1.7, 3, 24)])
  // Each bar stands on two holes of the lower deck and carries two of the upper one.
  const bar = boredPlate(rectangle(8, 42), 12, [
    straight(4, 4, 1.7, 12, 24),
    straight(4, 38, 1.7, 12, 24),
  ])
  const meshes: readonly MeetingPart[] = [
    { partId: 'deck', mesh: plate, pieces: 2 },
    { partId: 'bar', mesh: bar, pieces: 2 },
  ]
  const bare = frameOf(meshes)
  const loose = (piece: number): LoosePiece => ({ partId: 'bar', piece, isMirrored: false })
  const first = distinctWays(waysFor(loose(0), bare))[0]!
  const repeats = repeatsOf(first, [loose(1)], bare)
  const both = repeats.find(({ placed }) => placed.length === 2)!
  const made = both.placed.map(({ joint }, i): Joint => ({ ...joint, id: `j${i}` }))
  const frame = frameOf(meshes, made)
  const [best] = waysFor({ partId: 'deck', piece: 1, isMirrored: false }, frame)
  expect(best!.also).toHaveLength(1)
  expect(best!.joint.a.partId).toBe('bar')
})

test('the mirror image of a joined piece goes to the mirrored holes, and is told first', () => {
  const left: readonly Point[] = [
    [-10, 20],
    [14, 22],
    [-4, 36],
  ]
  const outline: readonly Point[] = [
    [-40, -50],
    [40, -50],
    [40, 50],
    [-40, 50],
  ]
  const both = left.flatMap(([x, y]): Point[] => [
    [x, y],
    [x, -y],
  ])
  const deck = boredPlate(
    outline,
    3,
    both.map(([x, y]) => straight(x, y, 1.7, 3, 24)),
  )
  const bracket = boredPlate(
    [
      [-16, 14],
      [24, 14],
      [24, 30],
      [4, 42],
      [-16, 42],
    ],
    5,
    left.map(([x, y]) => straight(x, y, 1.7, 5, 24)),
  )
  const meshes: readonly MeetingPart[] = [
    { partId: 'deck', mesh: deck, pieces: 1 },
    { partId: 'bracket', mesh: bracket, pieces: 2, mirrored: 1 },
  ]
  const bare = frameOf(meshes)
  const plain: LoosePiece = { partId: 'bracket', piece: 0, isMirrored: false }
  const image: LoosePiece = { partId: 'bracket', piece: 1, isMirrored: true }
  const way = waysFor(plain, bare)[0]!
  const mirror = repeatsOf(way, [image], bare).find(({ kind }) => kind === 'mirror')!
  expect(mirror.placed.map(({ joint }) => [joint.b.piece, joint.mirrored])).toEqual([
    [0, false],
    [1, true],
  ])
  const made = mirror.placed.map(({ joint }, i): Joint => ({ ...joint, id: `j${i}` }))
  const placed = placePieces(bare.parts, [atOrigin('deck')], made)
  for (const { motion, partId, piece } of standingPieces(bare.parts, placed)) {
    const joint = made.find(({ b }) => b.partId === partId && b.piece === piece)
    if (joint !== undefined) expect(jointStrain(joint, STAY, motion).axesMm).toBeLessThan(1e-6)
  }
  // Once the plain one stands, the first way of its image is across from it.
  const [first] = waysFor(image, frameOf(meshes, made.slice(0, 1)))
  expect(first).toMatchObject({ isLikeAnother: true, joint: { mirrored: true } })
  expect(first!.motion.move.map((mm) => mm.toFixed(3))).toEqual(
    mirror.placed[1]!.motion.move.map((mm) => mm.toFixed(3)),
  )
})

test('a joint tells how far its axes and faces are off', () => {
  const { joint } = waysFor(arm(0), frameOf(arms))[0]!
  const put = jointMotion(joint)
  const off = (by: readonly [number, number, number]) =>
    jointStrain(joint, STAY, {
      ...put,
      move: [put.move[0] + by[0], put.move[1] + by[1], put.move[2] + by[2]],
    })
  expect(off([0, 0, 0]).axesMm).toBeLessThan(1e-9)
  expect(off([0.3, 0.4, 0]).axesMm).toBeCloseTo(0.5, 6)
  const [, , up = 0] = joint.a.face?.normal ?? []
  expect(off([0, 0, 0.7 * up]).gapMm).toBeCloseTo(0.7, 6)
})
