import { describe, expect, test } from 'vitest'
import { partFigures } from '../../../src/core/figures/part.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { countLayers } from '../../../src/core/census/countLayers.ts'
import { refuseTooOpen } from '../../../src/core/census/refuseTooOpen.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { censusOf, relative } from '../../support/censusCase.ts'
import { box, pickTriangles, sphere, tube } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'
import { problemOf } from '../../support/problemOf.ts'

/** Drops the triangles whose middle satisfies `where`. */
function without(mesh: Mesh, where: (x: number, y: number, z: number) => boolean): Mesh {
  return pickTriangles(mesh, (triangle) => {
    const middle = [0, 1, 2].map(
      (k) => triangle.reduce((sum, corner) => sum + mesh.positions[3 * corner + k]!, 0) / 3,
    )
    return where(middle[0]!, middle[1]!, middle[2]!) ? [] : [triangle]
  })
}

const massOf = (mesh: Mesh) =>
  partFigures(
    censusOf(orientMesh(mesh)),
    RECIPE_DEFAULTS,
    MATERIALS[0]!,
    PRINTER_DEFAULT,
    PRICES_DEFAULTS,
  ).massG

describe('an open mesh', () => {
  test('with a facet missing is counted closed, and its range is wider', () => {
    const sound = tube(12, 5, 10, 48)
    let dropped = 0
    const torn = pickTriangles(sound, (triangle, number) => {
      const drop = number === sound.indices.length / 3 - 5
      if (drop) dropped++
      return drop ? [] : [triangle]
    })
    expect(dropped).toBe(1)
    const census = censusOf(orientMesh(torn))
    expect(census.doubtfulShare).toBeGreaterThan(0)
    expect(census.doubtfulShare).toBeLessThan(0.05)
    expect(relative(census.modelMm3, censusOf(sound).modelMm3)).toBeLessThan(0.01)
    const [wide, narrow] = [massOf(torn), massOf(sound)]
    expect(wide.high / wide.mid).toBeGreaterThan(narrow.high / narrow.mid)
    expect(wide.low / wide.mid).toBeLessThan(narrow.low / narrow.mid)
    expect(() => refuseTooOpen(census)).not.toThrow()
  })

  test('that lacks one side of four is counted with that share in doubt', () => {
    const census = censusOf(orientMesh(without(box(20, 20, 20), (x) => x < 0.1)))
    expect(census.doubtfulShare).toBeCloseTo(0.25, 2)
    expect(relative(census.modelMm3, 8000)).toBeLessThan(0.003)
    expect(() => refuseTooOpen(census)).not.toThrow()
  })

  test('that lacks two sides of four is refused, with the share', () => {
    const census = censusOf(orientMesh(without(box(20, 20, 20), (x) => x < 0.1 || x > 19.9)))
    const problem = problemOf(() => refuseTooOpen(census))
    expect(problem.code).toBe('too-open')
    expect(problem.message).toMatch(/50\s%/)
    expect(problem.message).toMatch(/30\s%/)
  })

  test('that lacks its top and bottom leaves no layer in doubt', () => {
    const census = censusOf(
      orientMesh(without(box(20, 20, 20), (_x, _y, z) => z < 0.1 || z > 19.9)),
    )
    expect(census.doubtfulShare).toBe(0)
    expect(relative(census.modelMm3, 8000)).toBeLessThan(0.003)
  })
})

describe('a large mesh', () => {
  const ball = sphere(60, 500)
  const random = seededRandom(11)
  /** Of every so many triangles one by itself, a corner of it up to half of `mm` away. */
  const torn = (each: number, mm: number): Mesh => {
    const indices = [...ball.indices]
    const positions = [...ball.positions]
    for (let t = 0; t < indices.length; t += 3 * each) {
      const at = 3 * indices[t]!
      indices[t] = positions.length / 3
      for (let k = 0; k < 3; k++) positions.push(ball.positions[at + k]! + mm * (random() - 0.5))
    }
    return { positions: Float64Array.from(positions), indices: Uint32Array.from(indices) }
  }
  const count = (mesh: Mesh, onProgress: () => void) =>
    countLayers(
      { part: mesh, zones: [] },
      1,
      POSE_AS_DRAWN,
      { ...RECIPE_DEFAULTS, layerMm: 2, firstLayerMm: 2 },
      { onProgress },
    )

  test('that is a soup is refused before any of its layers is counted', () => {
    let layers = 0
    expect(problemOf(() => count(torn(20, 40), () => layers++))).toMatchObject({
      code: 'too-open',
      message: expect.stringMatching(/^The mesh leaves about \d\d\s% of its layers’ outlines open/),
    })
    expect(layers).toBe(0)
  })

  test('with some of its triangles torn is counted first', () => {
    let layers = 0
    const census = count(torn(400, 0.1), () => layers++)
    expect(layers).toBeGreaterThan(0)
    expect(census.doubtfulShare).toBeGreaterThan(0)
  })
})
