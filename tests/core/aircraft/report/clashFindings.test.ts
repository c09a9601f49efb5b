import { expect, it } from 'vitest'
import {
  clashAsk,
  clashFindings,
  spaceSolid,
} from '../../../../src/core/aircraft/report/clashFindings.ts'
import { AIRCRAFT_DEFAULTS } from '../../../../src/core/data/aircraft.ts'
import { clashesOf } from '../../../../src/core/joints/clashes.ts'
import { boresOf } from '../../../../src/core/joints/boresOf.ts'
import { itemMesh } from '../../../../src/core/joints/itemMesh.ts'
import { bodiedItems } from '../../../../src/core/joints/itemPieces.ts'
import type { Aircraft, Item } from '../../../../src/core/model/aircraft.ts'
import type { Part } from '../../../../src/core/model/frame.ts'
import type { Joint } from '../../../../src/core/model/joints.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { boredPlate } from '../../../support/boredPlate.ts'
import { box, rectangle } from '../../../support/meshes.ts'
import { reportPart } from '../../../support/reportFrame.ts'

/** Volumes by the same columns that the page's worker and the command look along. */
function found(meshes: Readonly<Record<string, Mesh>>, more: Partial<Aircraft>, soft?: string) {
  const parts = Object.entries(meshes).map(([id, mesh]): Part => ({
    ...reportPart(id, mesh, {}).part,
    ...(id === soft ? { role: 'soft' as const } : {}),
  }))
  const aircraft = { ...AIRCRAFT_DEFAULTS, ...more }
  const all = new Map([
    ...Object.entries(meshes),
    ...bodiedItems(aircraft.items).map(({ id, body }) => [id, itemMesh(body)] as const),
  ])
  const ask = clashAsk(parts, aircraft)
  const solids = [
    ...ask.standing.map(({ partId, motion }) => ({ mesh: all.get(partId)!, motion })),
    ...ask.spaces.map(spaceSolid),
  ]
  return clashFindings(ask, clashesOf(solids, ask.pairs), parts, aircraft)
}
const at = (partId: string, x = 0, y = 0, z = 0) => ({
  partId,
  positionMm: [x, y, z] as const,
  rotateDeg: [0, 0, 0] as const,
  mirrored: false,
})
const prop = (id: string, x: number): Item => ({
  id,
  name: id,
  group: 'drive',
  quantity: 1,
  massG: 5,
  costEach: 0,
  status: 'estimated',
  basis: 'typed',
  positionMm: [x, 0, 53.5],
  body: { kind: 'prop', sizeMm: [127, 127, 7], holes: null, shaftMm: 0 },
})

it('tells the volume of two pieces in each other, none where they touch', () => {
  const meshes = { low: box(20, 20, 10), high: box(10, 10, 10) }
  const places = (z: number) => ({ places: [at('low'), at('high', 5, 5, z)] })
  expect(found(meshes, places(10))).toEqual([])
  const [clash, ...others] = found(meshes, places(8))
  // 10 × 10 × 2 mm.
  expect(clash).toMatchObject({ code: 'clash', a: 'low', b: 'high', count: 1 })
  expect(clash!.volumeMm3).toBeCloseTo(200, 3)
  // From 5 to 15 both ways, from 8 to 10 upwards.
  const [middle] = clash!.atMm
  for (const [k, mm] of [10, 10, 9].entries()) expect(middle![k]).toBeCloseTo(mm, 3)
  expect(clash!.message).toBe('“low” and “high” run into each other by 200 mm³.')
  expect(others).toEqual([])
  expect(found(meshes, places(8), 'high')).toMatchObject([{ code: 'squeeze' }])
})

it('tells where it is, the middle of what is shared', () => {
  const meshes = { bar: box(100, 4, 4), peg: box(6, 6, 20), pin: box(6, 6, 20) }
  const places = [at('bar'), at('peg', 10, -1, -3), at('pin', 80, -1, 2)]
  // 6 × 4 mm of the bar over its whole 4 mm, and over 2 of them.
  const wanted = [
    [13, 2, 2],
    [83, 2, 3],
  ]
  const middles = found(meshes, { places }).flatMap(({ atMm }) => atMm)
  expect(middles).toHaveLength(2)
  middles.forEach((place, i) => {
    place.forEach((mm, k) => {
      expect(mm).toBeCloseTo(wanted[i]![k]!, 3)
    })
  })
})

it('lets propellers sweep through each other, and not through what is printed', () => {
  const meshes = { mast: box(4, 4, 60) }
  const places = [at('mast', -2, -2, 0)]
  expect(found(meshes, { places, items: [prop('one', 80), prop('two', 150)] })).toEqual([])
  const [clash] = found(meshes, { places, items: [prop('one', 40), prop('two', 110)] })
  // The mast stands through all 7 mm of the disc.
  expect(clash).toMatchObject({ a: 'mast', b: 'one' })
  expect(clash!.volumeMm3).toBeCloseTo(4 * 4 * 7, 1)
})

it('tells a head that does not fit into its counterbore, by ISO 4762 5.5 mm across for M3', () => {
  const plate = (seatMm: number) =>
    boredPlate(rectangle(30, 20), 8, [
      {
        x: 15,
        y: 10,
        facets: 64,
        through: true,
        rings: [
          [0, seatMm / 2],
          [4, seatMm / 2],
          [4, 1.6],
          [8, 1.6],
        ],
      },
    ])
  const base = boredPlate(rectangle(30, 20), 8, [
    {
      x: 15,
      y: 10,
      facets: 64,
      through: false,
      rings: [
        [0, 1.25],
        [7.5, 1.25],
      ],
    },
  ])
  const held = (seatMm: number) => {
    const meshes = { base, lid: plate(seatMm) }
    const narrow = (mesh: Mesh) => boresOf(mesh, 1).filter(({ diameterMm }) => diameterMm < 3.5)
    const joint: Joint = {
      id: 'j',
      a: {
        partId: 'base',
        piece: 0,
        bores: narrow(base),
        face: { pointMm: [15, 10, 8], normal: [0, 0, 1] },
      },
      b: {
        partId: 'lid',
        piece: 0,
        bores: narrow(meshes.lid),
        face: { pointMm: [15, 10, 0], normal: [0, 0, -1] },
      },
      kind: 'bores',
      mirrored: false,
      turnDeg: 0,
      slideMm: 0,
      gapMm: 0,
      fastener: { thread: 'M3', end: 'tapped' },
    }
    return found(meshes, { places: [at('base')], joints: [joint] })
  }
  expect(held(6)).toEqual([])
  const [head, ...others] = held(4.5)
  expect(others).toEqual([])
  expect(head).toMatchObject({ code: 'head', a: 'base – lid', b: 'lid', count: 1 })
  // A ring of 4.5 to 5.5 mm, 3 mm high: π/4 (5.5² − 4.5²) · 3 = 23.6 mm³.
  expect(Math.abs(head!.volumeMm3 - 23.6)).toBeLessThan(1.5)
})
