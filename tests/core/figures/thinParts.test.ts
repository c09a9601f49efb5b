import { beforeAll, describe, expect, it } from 'vitest'
import type { ManifoldToplevel } from 'manifold-3d'
import { depositOf } from '../../../src/core/figures/deposit.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box, cone, prism } from '../../support/meshes.ts'
import { thinFrame } from '../../support/motionParts.ts'
import { cutLayers, layLines } from '../../support/simulate.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'
import { loadManifold } from '../../support/solidCensus.ts'

/*
 * Plastic by regions against lines laid one by one in exact polygons (manifold-3d). The oracle lays whole lines only.
 */
const RECIPE: Recipe = { ...RECIPE_DEFAULTS, pattern: 'lines', habits: PLAIN_HABITS }
const BEAD_MM2 = RECIPE.lineMm * RECIPE.layerMm

let wasm: ManifoldToplevel
beforeAll(async () => {
  wasm = await loadManifold()
})

const laidOf = (mesh: Mesh, recipe = RECIPE) =>
  layLines(cutLayers(wasm, mesh, recipe, PLAIN_HABITS.smallRoomMm2), recipe).lengthMm

/** Plastic by regions ÷ plastic by lines, less one. */
function difference(mesh: Mesh): number {
  const { wallMm3, skinMm3, infillMm3 } = depositOf(countAllLayers(mesh, RECIPE), RECIPE)
  const laid = laidOf(mesh)
  return (wallMm3 + skinMm3 + infillMm3) / ((laid.wall + laid.skin + laid.infill) * BEAD_MM2) - 1
}

const taper = prism(
  [
    [0, -3],
    [60, -0.4],
    [60, 0.4],
    [0, 3],
  ],
  4,
)

describe('plastic of thin things by regions and by lines laid one by one', () => {
  it.each([
    { name: 'a tip', mesh: cone(5, 10, 48) },
    { name: 'a needle', mesh: cone(2.5, 30, 48) },
    { name: 'a thinner needle', mesh: cone(1, 30, 48) },
    { name: 'an arm that tapers to two lines', mesh: taper },
    { name: 'a narrow arm', mesh: box(60, 4, 4) },
    { name: 'a narrower arm', mesh: box(60, 3, 4) },
    { name: 'an arm hardly wider than its walls', mesh: box(60, 2.2, 4) },
  ])('agrees to 5 percent on $name', ({ mesh }) => {
    expect(Math.abs(difference(mesh))).toBeLessThan(0.05)
  })

  it.each([[0.8], [1.6]])('agrees to 0.5 percent on walls of %s mm, whole lines', (wallMm) => {
    expect(Math.abs(difference(thinFrame(wallMm)))).toBeLessThan(0.005)
  })

  // A region holds wallMm / lineMm lines; whole lines come in pairs, one from either side.
  it.each([[0.6], [0.7], [0.9], [1], [1.1], [1.2], [1.3], [1.4], [1.5]])(
    'is within one line on walls of %s mm, where lines do not fit',
    (wallMm) => {
      const oneLine = RECIPE.lineMm / wallMm
      const lines = 1 / (1 + difference(thinFrame(wallMm)))
      expect(Math.abs(1 - lines)).toBeLessThan(oneLine)
    },
  )
})

describe('turns of infill in a narrow arm', () => {
  const mesh = box(60, 4, 4)
  it.each([[20], [30], [45]])(
    'at %s percent are as long as lines laid end to end make them',
    (infillPct) => {
      const recipe = { ...RECIPE, infillPct }
      const { infillMm3, turnMm3 } = depositOf(countAllLayers(mesh, recipe), recipe)
      expect(Math.abs(infillMm3 / (laidOf(mesh, recipe).infill * BEAD_MM2) - 1)).toBeLessThan(0.12)
      // By hand, the room is 58.4 × 2.4 mm: lines s apart across it on one layer, along it on the
      // next, a turn fewer.
      const s = (recipe.lineMm * 100) / infillPct
      const turnsMm = (58.4 / s - 1 + (2.4 / s - 1)) * (s - recipe.lineMm)
      const linesMm = (2 * 58.4 * 2.4) / s
      // The census scans 3.7° askew and so sees a little of the long edges from the side: 6 % of
      // the turns, 1 % of the infill.
      const byHand = turnsMm / (turnsMm + linesMm)
      expect(turnMm3 / infillMm3 / byHand).toBeGreaterThan(0.97)
      expect(turnMm3 / infillMm3 / byHand).toBeLessThan(1.08)
    },
  )

  it('add half the room’s boundary across the lines at a low infill share', () => {
    const recipe = { ...RECIPE, infillPct: 10 }
    const census = countAllLayers(mesh, recipe)
    const { turnMm3 } = depositOf(census, recipe)
    const boundaryMm3 = census.layers.roomSeenMm.reduce((sum, mm) => sum + mm, 0) * BEAD_MM2
    expect(turnMm3 / boundaryMm3).toBeGreaterThan(0.3)
    expect(turnMm3 / boundaryMm3).toBeLessThan(0.5)
  })
})
