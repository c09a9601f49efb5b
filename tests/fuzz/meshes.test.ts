import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { weldSoup } from '../../src/core/model/weld.ts'
import { measureMesh } from '../../src/core/mesh/measure.ts'
import { orientMesh } from '../../src/core/mesh/orient.ts'
import { splitPlate } from '../../src/core/mesh/split/splitPlate.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { PreweighError } from '../../src/core/model/problem.ts'
import { endingsOf } from '../support/endsWell.ts'
import { box, merge, prism, rectangle, soupOf, sphere, translate, tube } from '../support/meshes.ts'
import { writeObj, writeStlBinary, write3mf } from '../support/writeMesh.ts'

/*
 * Property-based: meshes nobody would draw, and sound ones damaged in every way at once, go the
 * whole way from bytes to grams.
 */

const LONG = process.env['PREWEIGH_LONG'] === '1'
const SEED = Number(process.env['PREWEIGH_SEED'] ?? (LONG ? Date.now() % 1e9 : 20_257))
const RUNS = LONG ? 4000 : 120

vi.setConfig({ testTimeout: LONG ? 1_200_000 : 120_000 })

/** Corners on a coarse grid: many coincide, lie in one plane or on one line. */
const gridSoup = fc
  .array(
    fc.tuple(
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 3 }),
    ),
    {
      minLength: 3,
      maxLength: 60,
    },
  )
  .map((corners): Mesh => {
    const whole = corners.slice(0, corners.length - (corners.length % 3))
    return weldSoup(Float64Array.from(whole.flat()))
  })

const solid = fc.constantFrom(
  box(6, 4, 3),
  tube(5, 2, 3, 12),
  sphere(3, 8),
  prism(rectangle(8, 5), 2),
  merge([box(4, 4, 4), translate(box(4, 4, 4), [2, 2, 2])]),
  merge([box(6, 6, 6), translate(box(2, 2, 2), [2, 2, 2])]),
)

type Damage = 'drop' | 'turn' | 'double' | 'back' | 'flatten'
const damages = fc.array(
  fc.tuple(fc.constantFrom<Damage>('drop', 'turn', 'double', 'back', 'flatten'), fc.nat(10_000)),
  { maxLength: 12 },
)

function damaged(mesh: Mesh, wounds: readonly (readonly [Damage, number])[]): Mesh {
  let triangles = Array.from({ length: mesh.indices.length / 3 }, (_, t) =>
    Array.from(mesh.indices.slice(3 * t, 3 * t + 3)),
  )
  for (const [how, where] of wounds) {
    const at = where % triangles.length
    const [a, b, c] = triangles[at] as [number, number, number]
    if (how === 'drop' && triangles.length > 4) triangles = triangles.toSpliced(at, 1)
    if (how === 'turn') triangles[at] = [a, c, b]
    if (how === 'double') triangles.push([a, b, c])
    if (how === 'back') triangles.push([a, c, b])
    if (how === 'flatten') triangles[at] = [a, b, b]
  }
  return { positions: mesh.positions, indices: Uint32Array.from(triangles.flat()) }
}

describe('meshes of any kind', () => {
  test(`${RUNS} soups on a grid end in figures or a problem (seed ${SEED})`, () => {
    fc.assert(
      fc.property(gridSoup, fc.constantFrom('stl', 'obj', '3mf'), (mesh, format) => {
        const bytes =
          format === 'stl'
            ? writeStlBinary(mesh)
            : format === 'obj'
              ? writeObj(mesh)
              : write3mf(mesh)
        expect(endingsOf(bytes, `a.${format}`)).toHaveLength(1)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test(`${RUNS} damaged solids end in figures or a problem (seed ${SEED})`, () => {
    fc.assert(
      fc.property(solid, damages, (mesh, wounds) => {
        expect(endingsOf(writeStlBinary(damaged(mesh, wounds)), 'a.stl')).toHaveLength(1)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test(`turning and doubling a few triangles never changes the volume (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.constantFrom(box(6, 4, 3), tube(5, 2, 3, 12)), damages, (mesh, wounds) => {
        const harmless = wounds.filter(([how]) => how === 'turn' || how === 'double').slice(0, 3)
        const hurt = weldSoup(soupOf(damaged(mesh, harmless)))
        const sound = measureMesh(mesh, 1).volumeMm3
        expect(Math.abs(measureMesh(hurt, 1).volumeMm3 / sound - 1)).toBeLessThan(1e-9)
        expect(Math.abs(measureMesh(orientMesh(hurt), 1).volumeMm3 / sound - 1)).toBeLessThan(1e-9)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test(`orienting twice is orienting once, and pieces hold every triangle (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.oneof(gridSoup, solid), damages, (mesh, wounds) => {
        if (mesh.indices.length < 15) return
        const once = orientMesh(damaged(mesh, wounds))
        expect(soupOf(orientMesh(once)).length).toBeLessThanOrEqual(soupOf(once).length)
        try {
          const plate = splitPlate(once)
          expect(plate.groups.length).toBeGreaterThan(0)
        } catch (error) {
          expect(error).toBeInstanceOf(PreweighError)
        }
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })
})
