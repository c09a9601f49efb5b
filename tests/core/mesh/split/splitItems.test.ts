import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { frameBalance } from '../../../../src/core/aircraft/balance/frameBalance.ts'
import { placesAsDrawn } from '../../../../src/core/mesh/split/drawnPlace.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { readMesh } from '../../../../src/core/formats/read.ts'
import { inspectMesh } from '../../../../src/core/mesh/inspect.ts'
import { orientMesh } from '../../../../src/core/mesh/orient.ts'
import { splitItems } from '../../../../src/core/mesh/split/splitItems.ts'
import type { Mesh, ReadMesh, Vec3 } from '../../../../src/core/model/mesh.ts'
import { unitToMm } from '../../../../src/core/model/units.ts'
import { box, prism, rotate, translate } from '../../../support/meshes.ts'
import { meshXml, modelXml, pack3mf, write3mf, writeStlBinary } from '../../../support/writeMesh.ts'

/** A wedge without any symmetry, and a bar. */
const WEDGE = prism(
  [
    [0, 0],
    [30, 2],
    [12, 17],
  ],
  9,
)
const BAR = box(40, 6, 4)

const object = (id: number, name: string, mesh: Mesh) =>
  `<object id="${id}" name="${name}" type="model">${meshXml(mesh)}</object>`
const OBJECTS = object(1, 'wedge', WEDGE) + object(2, 'bar', BAR)

/**
 * A build item as 3MF writes it: rows are where x, y and z go, then the shift (3MF Core
 * Specification, "3D Matrices").
 */
function item(id: number, turn: Vec3, move: Vec3, mirrored = false): string {
  const axes = rotate(
    {
      positions: Float64Array.of(mirrored ? -1 : 1, 0, 0, 0, 1, 0, 0, 0, 1),
      indices: Uint32Array.of(0, 1, 2),
    },
    turn,
  ).positions
  return `<item objectid="${id}" transform="${[...axes, ...move].join(' ')}"/>`
}

const read = (build: string, unit: Parameters<typeof modelXml>[2] = 'millimetre'): ReadMesh =>
  readMesh(pack3mf(modelXml(OBJECTS, build, unit)), 'frame.3mf')

/**
 * The build taken apart and put together again by its places: every piece as heavy as it is large.
 */
function balanceOfSplit(whole: ReadMesh) {
  const { groups } = splitItems(whole)!
  const unit = whole.unit ?? 'millimetre'
  const parts = groups.map(({ count, mesh, places }, i) => ({
    id: `part-${i}`,
    unit,
    quantity: count,
    drawnPlaces: places!,
    moments: partMoments(mesh, unitToMm(unit)),
  }))
  return frameBalance({
    parts: parts.map(({ id, quantity, moments }) => ({
      partId: id,
      name: id,
      quantity,
      massG: moments.volume.amount,
      moments,
      shellShare: 0,
    })),
    places: placesAsDrawn(parts),
    items: [],
    flight: null,
  })!
}

const angle = fc.oneof(
  fc.double({ min: -360, max: 360, noNaN: true }),
  fc.constantFrom(0, 90, -90, 180, 270),
)
const length = fc.double({ min: -200, max: 200, noNaN: true })
const vector = (value: fc.Arbitrary<number>): fc.Arbitrary<Vec3> => fc.tuple(value, value, value)

describe('splitItems', () => {
  test('puts the pieces back where the build had them: centre of gravity and inertia of the whole file', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(1, 2), vector(angle), vector(length), fc.boolean()), {
          minLength: 2,
          maxLength: 8,
        }),
        (builds) => {
          const whole = read(builds.map((build) => item(...build)).join(''))
          const split = balanceOfSplit(whole)
          const { volume } = partMoments(whole.mesh, 1)
          expect(split.unplaced).toEqual([])
          expect(Math.abs(split.massG / volume.amount - 1)).toBeLessThan(1e-9)
          split.cgMm.forEach((value, k) =>
            expect(Math.abs(value - volume.centreMm[k]!)).toBeLessThan(1e-6),
          )
          const [xx, yy, zz] = volume.second
          const wanted = [yy + zz, zz + xx, xx + yy]
          split.inertiaKgM2.forEach((value, k) =>
            expect(Math.abs((value * 1e9) / wanted[k]! - 1)).toBeLessThan(1e-6),
          )
          // Rows are kinds: all wedges one, all bars one.
          expect(splitItems(whole)!.groups).toHaveLength(new Set(builds.map(([id]) => id)).size)
        },
      ),
      { seed: 3, numRuns: 60 },
    )
  })

  test('counts mirrored builds of a handed part, and gives the first its place exactly', () => {
    const whole = read(
      item(1, [0, 0, 30], [100, 0, 0]) +
        item(1, [0, 0, 0], [-50, 20, 5], true) +
        item(2, [0, 90, 0], [0, 0, 0]),
    )
    const { groups, leftOut } = splitItems(whole)!
    expect(groups.map(({ count, mirrored, name }) => [name, count, mirrored])).toEqual([
      ['wedge', 2, 1],
      ['bar', 1, 0],
    ])
    expect(leftOut).toBe(0)
    expect(groups[0]?.places?.[0]).toEqual({
      position: [0, 0, 0],
      rotateDeg: [0, 0, 0],
      mirrored: false,
    })
    expect(groups[0]?.places?.map(({ mirrored }) => mirrored)).toEqual([false, true])
  })

  test('keeps touching items apart, which bodies alone would not', () => {
    const whole = read(item(2, [0, 0, 0], [0, 0, 0]) + item(2, [0, 0, 0], [40, 0, 0]))
    const inspection = inspectMesh(whole, orientMesh(whole.mesh), 'millimetre')
    expect(inspection.plate?.groups).toMatchObject([{ count: 2, mirrored: 0, volumeMm3: 960 }])
  })

  test('puts equal objects together that a program wrote out twice, turned in their coordinates', () => {
    const twice =
      object(1, 'a', WEDGE) + object(2, 'b', translate(rotate(WEDGE, [0, 0, 77]), [90, 5, 0]))
    const whole = readMesh(
      pack3mf(modelXml(twice, '<item objectid="1"/><item objectid="2"/>')),
      'frame.3mf',
    )
    const { groups } = splitItems(whole)!
    expect(groups.map(({ count }) => count)).toEqual([2])
    const place = groups[0]?.places?.[1]
    expect(place?.rotateDeg[2]).toBeCloseTo(77, 6)
    place?.position.forEach((value, k) => expect(value).toBeCloseTo([90, 5, 0][k]!, 6))
  })

  test('holds a scaled build apart as a part of its own', () => {
    const whole = read(
      '<item objectid="1"/><item objectid="1" transform="2 0 0 0 2 0 0 0 2 100 0 0"/>',
    )
    expect(splitItems(whole)!.groups.map(({ count }) => count)).toEqual([1, 1])
  })

  test('gives places in the file’s unit, and the aircraft’s in millimetres', () => {
    const whole = read(item(1, [0, 0, 0], [0, 0, 0]) + item(1, [0, 0, 0], [3, 0, 0]), 'inch')
    expect(splitItems(whole)!.groups[0]?.places?.[1]?.position[0]).toBeCloseTo(3, 9)
    const { volume } = partMoments(whole.mesh, 25.4)
    balanceOfSplit(whole).cgMm.forEach((value, k) =>
      expect(value).toBeCloseTo(volume.centreMm[k]!, 6),
    )
  })

  test('has nothing to say of one item, nor of other files', () => {
    expect(splitItems(readMesh(write3mf(WEDGE), 'a.3mf'))).toBeNull()
    expect(splitItems(readMesh(writeStlBinary(WEDGE), 'a.stl'))).toBeNull()
  })
})
