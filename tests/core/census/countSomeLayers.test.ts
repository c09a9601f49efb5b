import { readFileSync } from 'node:fs'
import type { Manifold } from 'manifold-3d'
import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { readMesh } from '../../../src/core/formats/read.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { countSomeLayers } from '../../../src/core/census/countSomeLayers.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box, cone, merge, rotate, sphere, tetrahedron, torus } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'
import { loadManifold } from '../../support/solidCensus.ts'

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

describe.each([
  { every: 8, isWider: true },
  // So few layers may miss what makes the full count unsure, supports above all.
  { every: 65, isWider: false },
])('about every $every th layer', ({ every, isWider }) => {
  test.each(PARTS)('of %s: its range holds the full count', (_name, mesh) => {
    const recipe = { ...RECIPE_DEFAULTS, supports: true }
    const placed = placeMesh(mesh, 1, POSE_AS_DRAWN)
    const [full, coarse] = [
      countAllLayers(placed, recipe),
      countSomeLayers(placed, recipe, [], every),
    ].map((census) => partFigures(census, recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS))
    for (const key of ['massG', 'timeS', 'cost'] as const) {
      expect(full![key].mid).toBeGreaterThan(coarse![key].low)
      expect(full![key].mid).toBeLessThan(coarse![key].high)
      const width = (range: { low: number; mid: number; high: number }): number =>
        (range.high - range.low) / range.mid
      if (isWider) expect(width(full![key])).toBeLessThanOrEqual(width(coarse![key]) + 1e-9)
    }
  })
})

describe('about every 8th layer', () => {
  test('counts as many layers as the full count, and says what it may be wrong by', () => {
    const ball = placeMesh(sphere(20, 64), 1, POSE_AS_DRAWN)
    const coarse = countSomeLayers(ball, RECIPE_DEFAULTS)
    const full = countAllLayers(ball, RECIPE_DEFAULTS)
    expect(coarse.layers.count).toBe(full.layers.count)
    expect(full.coarseMm3).toBe(0)
    for (const kind of ['wallMm3', 'skinMm3', 'roomMm3', 'strandMm3'] as const) {
      expect(coarse.coarseMm3).toBeGreaterThan(Math.abs(coarse[kind] - full[kind]))
    }
  })

  test.each([1, 2, 3])('a few layers of a crowd of bodies hold the full count, seed %i', (seed) => {
    const random = seededRandom(seed)
    const bodies = Array.from({ length: 150 }, () => {
      const by = [25 * random(), 25 * random(), 30 * random()]
      const body = tetrahedron(3 + 4 * random())
      return { ...body, positions: body.positions.map((mm, i) => mm + by[i % 3]!) }
    })
    const crowd = placeMesh(merge(bodies), 1, POSE_AS_DRAWN)
    const coarse = countSomeLayers(crowd, RECIPE_DEFAULTS, [], 65)
    const full = countAllLayers(crowd, RECIPE_DEFAULTS)
    for (const kind of ['wallMm3', 'skinMm3', 'roomMm3'] as const) {
      expect(coarse.coarseMm3).toBeGreaterThan(Math.abs(coarse[kind] - full[kind]))
    }
  })

  test('knows gap lines and strands', () => {
    const ribbed = placeMesh(comb(9, 2), 1, POSE_AS_DRAWN)
    const thin = placeMesh(lattice(8, 1.2), 1, POSE_AS_DRAWN)
    const [coarse, full] = [countSomeLayers, countAllLayers].map((take) =>
      take(ribbed, RECIPE_DEFAULTS),
    )
    expect(coarse!.strandMm3 / full!.strandMm3).toBeCloseTo(1, 0)
    const gaps = [countSomeLayers, countAllLayers].map((take) => take(thin, RECIPE_DEFAULTS).gapMm3)
    expect(gaps[1]).toBeGreaterThan(0)
    expect(gaps[0]! / gaps[1]!).toBeCloseTo(1, 1)
  })
})

const wasm = await loadManifold()
const { Manifold: Solid, CrossSection } = wasm
const taken = (solid: Manifold): Mesh => {
  const { vertProperties, triVerts } = solid.getMesh()
  return { positions: vertProperties, indices: triVerts }
}
const block = (x: number, y: number, z: number): Manifold => Solid.cube([x, y, z], true)
const repeated = (period: number, phase: number, heightMm: number, one: Manifold): Manifold[] =>
  Array.from({ length: Math.floor((heightMm - phase) / period) }, (_, i) =>
    one.translate([0, 0, phase + i * period]),
  )
/** A post with shelves one layer thick. */
const shelves = (period: number, phase: number): Mesh =>
  taken(
    Solid.union([
      block(4, 4, 40).translate([0, 0, 20]),
      ...repeated(period, phase, 40, block(40, 40, 0.2)),
    ]),
  )
/** A back with ribs 1 mm thick. */
const comb = (period: number, phase: number): Mesh =>
  taken(
    Solid.union([
      block(40, 3, 60).translate([0, 0, 30]),
      ...repeated(period, phase, 60, block(40, 30, 1).translate([0, 15, 0.5])),
    ]),
  )
const lattice = (cell: number, bar: number): Mesh => {
  const bars: Manifold[] = []
  for (let a = 0; a <= 16; a += cell) {
    for (let b = 0; b <= 16; b += cell) {
      bars.push(
        block(16 + bar, bar, bar).translate([8, a, b]),
        block(bar, 16 + bar, bar).translate([a, 8, b]),
        block(bar, bar, 16 + bar).translate([a, b, 8]),
      )
    }
  }
  return taken(Solid.union(bars))
}
/** A round rod that winds about an axis off its own. */
const screw = (pitch: number): Mesh =>
  taken(
    CrossSection.circle(8, 32)
      .translate([3, 0])
      .extrude(24, Math.round((24 / pitch) * 24), (360 * 24) / pitch),
  )

describe('no period fools it: mass, hours and cost of the full count lie within its range', () => {
  const random = seededRandom(9)
  const periods = Array.from({ length: 7 }, () => 0.4 * 40 ** random())
  const cases: [string, () => Mesh][] = [
    ['ribs every 16 mm', () => comb(16, 0)],
    ['shelves every 1.6 mm', () => shelves(1.6, 0.1)],
    ...[0.3, 0.7, 1.1, 1.5].map((phase): [string, () => Mesh] => [
      `shelves every 1.6 mm from ${phase} mm on`,
      () => shelves(1.6, phase),
    ]),
    ...periods.map((period): [string, () => Mesh] => {
      const phase = period * random()
      return [`shelves every ${period.toFixed(2)} mm`, () => shelves(period, phase)]
    }),
    ...periods.map((period): [string, () => Mesh] => {
      const phase = period * random()
      return [`ribs every ${(period + 1.4).toFixed(2)} mm`, () => comb(period + 1.4, phase)]
    }),
    ...[3.2, 4, 6, 8].map((cell): [string, () => Mesh] => [
      `a lattice of ${cell} mm`,
      () => lattice(cell, 0.4 * cell),
    ]),
    ...[0.8, 1, 1.2, 1.6, 2.4, 3.3, 5, 6.4].map((pitch): [string, () => Mesh] => [
      `a screw of ${pitch} mm`,
      () => screw(pitch),
    ]),
  ]
  test.each(cases)('%s', (_name, make) => {
    const placed = placeMesh(make(), 1, POSE_AS_DRAWN)
    for (const supports of [false, true]) {
      const recipe = { ...RECIPE_DEFAULTS, supports }
      const [full, coarse] = [countAllLayers, countSomeLayers].map((take) =>
        partFigures(take(placed, recipe), recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS),
      )
      for (const key of ['massG', 'spoolG', 'timeS', 'cost'] as const) {
        expect(full![key].mid).toBeGreaterThan(coarse![key].low)
        expect(full![key].mid).toBeLessThan(coarse![key].high)
      }
      // Far from the end of a range that could be wide for other reasons.
      expect(coarse!.massG.mid / full!.massG.mid).toBeGreaterThan(0.93)
      expect(coarse!.massG.mid / full!.massG.mid).toBeLessThan(1.07)
    }
  })
})
