import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { readMesh } from '../../../src/core/formats/read.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import { takeCensus } from '../../../src/core/census/takeCensus.ts'
import { takeCoarseCensus } from '../../../src/core/census/takeCoarseCensus.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box, cone, rotate, sphere, torus } from '../../support/meshes.ts'

const demo = (name: string): Mesh =>
  readMesh(new Uint8Array(readFileSync(`public/demo/${name}`)), name).mesh

const PARTS: readonly (readonly [string, Mesh])[] = [
  ['box', box(30, 20, 40)],
  ['ball', sphere(20, 64)],
  ['cone', cone(15, 50, 96)],
  ['standing ring', rotate(torus(20, 5, 64, 32), [90, 0, 0])],
  ...['front-arm.stl', 'tail-boom.stl', 'tail-yoke.stl', 'gps-mast.stl', 'feet.stl'].map(
    (name) => [name, demo(name)] as const,
  ),
]

describe('every 8th layer', () => {
  test.each(PARTS)('of %s: its range holds the full count and is wider', (_name, mesh) => {
    const recipe = { ...RECIPE_DEFAULTS, supports: true }
    const placed = placeMesh(mesh, 1, POSE_AS_DRAWN)
    const [full, coarse] = [takeCensus(placed, recipe), takeCoarseCensus(placed, recipe)].map(
      (census) => partFigures(census, recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS),
    )
    for (const key of ['massG', 'timeS', 'cost'] as const) {
      expect(full![key].mid).toBeGreaterThan(coarse![key].low)
      expect(full![key].mid).toBeLessThan(coarse![key].high)
      const width = (range: { low: number; mid: number; high: number }): number =>
        (range.high - range.low) / range.mid
      expect(width(full![key])).toBeLessThanOrEqual(width(coarse![key]) + 1e-9)
    }
  })

  test('counts as many layers as the full count, and says what it may be wrong by', () => {
    const ball = placeMesh(sphere(20, 64), 1, POSE_AS_DRAWN)
    const coarse = takeCoarseCensus(ball, RECIPE_DEFAULTS)
    const full = takeCensus(ball, RECIPE_DEFAULTS)
    expect(coarse.layers.count).toBe(full.layers.count)
    expect(full.coarseShare).toBe(0)
    expect(coarse.coarseShare).toBeGreaterThan(
      Math.abs(coarse.modelMm3 - full.modelMm3) / full.modelMm3,
    )
  })
})
