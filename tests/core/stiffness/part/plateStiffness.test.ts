import { describe, expect, test } from 'vitest'
import { solidBendingNm } from '../../../../src/core/aircraft/report/twinEntry.ts'
import { plateBendingNm, printedBendingNm } from '../../../../src/core/aircraft/twin/bending.ts'
import { MATERIALS } from '../../../../src/core/data/materials.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import { LOAD_PICK_AUTO } from '../../../../src/core/stiffness/part/chooseLoad.ts'
import type { PlateStock } from '../../../../src/core/stiffness/part/plateStiffness.ts'
import { stiffPart } from '../../../../src/core/stiffness/part/stiffPart.ts'
import { blockCensus } from '../../../support/blockCensus.ts'
import { box } from '../../../support/meshes.ts'

const pla = MATERIALS.find(({ id }) => id === 'pla')!
const SIDES = [120, 20, 4] as const
const E = pla.youngsGPa.value

function solve(
  infillPct: number,
  plate: PlateStock,
  direction: 'auto' | 'y' = 'auto',
  part = box(...SIDES),
) {
  return stiffPart({ part, zones: [] }, 1, {
    pose: POSE_AS_DRAWN,
    recipe: { ...RECIPE_DEFAULTS, infillPct },
    material: pla,
    massG: 10,
    jointBores: [],
    pick: { ...LOAD_PICK_AUTO, direction },
    loadN: 5,
    tipG: 0,
    cellMm: 2,
    wantTones: false,
    plate,
  })
}

describe('a plate beside the part', () => {
  test('of the same plastic and as thick, it is the part laid solid: E t³ / 12', () => {
    const stock = { youngsGPa: E, thicknessMm: SIDES[2] }
    const bendingNm = solidBendingNm(solve(100, stock), stock)!
    expect(Math.abs(bendingNm / plateBendingNm(E, SIDES[2]) - 1)).toBeLessThan(0.02)
  })

  test('half as thick it gives eight times as far (handbook; 1 : 8 of prints of plate sellers)', () => {
    const [full, half] = [4, 2].map(
      (thicknessMm) => solve(100, { youngsGPa: 50, thicknessMm }).plateNMm!,
    )
    expect(Math.abs(full! / half! / 8 - 1)).toBeLessThan(0.03)
  })

  test('sparse, its solid model is a little softer than strips of its layers: they know no shear', () => {
    const stock = { youngsGPa: 50, thicknessMm: 1.5 }
    const recipe = { ...RECIPE_DEFAULTS, infillPct: 30 }
    const { layers } = blockCensus(...SIDES, recipe)
    const strips = printedBendingNm(layers, recipe, E, { areaMm2: 120 * 20, longDeg: 0 })
    const solid = solidBendingNm(solve(30, stock), stock)!
    expect(solid / strips).toBeLessThan(1.02)
    expect(solid / strips).toBeGreaterThan(0.75)
  })

  test('pushed sideways no plate is compared', () => {
    expect(solve(100, { youngsGPa: 50, thicknessMm: 2 }, 'y').plateNMm).toBeNull()
  })

  // What is kept by mesh beside what a mesh that was never seen comes to.
  test('kept for a part whose infill changes, reckoned anew for another plate or load', () => {
    const [thin, thick] = [1.5, 2].map((thicknessMm) => ({ youngsGPa: 50, thicknessMm }))
    const short = () => box(40, 10, 4)
    const part = short()
    for (const [infillPct, plate, direction] of [
      [30, thin!, 'auto'],
      [100, thin!, 'auto'],
      [100, thick!, 'auto'],
      [100, thick!, 'y'],
      [30, thin!, 'auto'],
    ] as const) {
      const seen = solve(infillPct, plate, direction, part)
      expect(seen).toEqual(solve(infillPct, plate, direction, short()))
    }
  })
})
