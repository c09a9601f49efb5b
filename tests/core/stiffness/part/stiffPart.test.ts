import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../../src/core/data/materials.ts'
import type { Pose } from '../../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import { LOAD_PICK_AUTO } from '../../../../src/core/stiffness/part/chooseLoad.ts'
import { stiffPart, type StiffPart } from '../../../../src/core/stiffness/part/stiffPart.ts'
import { box } from '../../../support/meshes.ts'

const pla = MATERIALS.find(({ id }) => id === 'pla')!
const AS_DRAWN: Pose = { rotateDeg: [0, 0, 0] }
const bar = box(90, 10, 8)

function lying(rotateDeg: Pose['rotateDeg']): StiffPart {
  return stiffPart({ part: bar, zones: [] }, 1, {
    pose: { rotateDeg },
    pickPose: AS_DRAWN,
    recipe: { ...RECIPE_DEFAULTS, infillPct: 100 },
    material: pla,
    massG: 9,
    jointBores: [],
    pick: LOAD_PICK_AUTO,
    loadN: 5,
    tipG: 0,
    cellMm: 2,
    wantTones: false,
  })
}

describe('one part, laid in several ways', () => {
  const flat = lying([0, 0, 0])

  test('it is held and pushed at the same places, whatever way it is printed', () => {
    // 4.5 mm at each end are held: F L³ / 3 E I over 81 mm, deflection at the middle of the push.
    const E = 1000 * pla.youngsGPa.value
    const exact = (5 * 83.25 ** 3) / (3 * E * ((10 * 8 ** 3) / 12))
    expect(flat.chosen).toEqual({ held: 'x-low', pushed: 'x-high', direction: 'z' })
    expect(Math.abs(flat.figures.deflectionMm.mid / exact - 1)).toBeLessThan(0.05)
    for (const rotateDeg of [
      [180, 0, 0],
      [90, 0, 0],
      [0, 90, 0],
    ] as const) {
      const other = lying(rotateDeg).figures.deflectionMm.mid / flat.figures.deflectionMm.mid
      // Between its two moduli, 3065 of 3427 MPa across (maker's sheet, prints.md T4.1).
      expect(other).toBeGreaterThan(0.99)
      expect(other).toBeLessThan(3427 / 3065 + 0.02)
    }
  })

  test('standing it parts between its layers, lying along them', () => {
    expect(flat.figures.safety?.breaks).toBe('along layers')
    const standing = lying([0, 90, 0])
    expect(standing.figures.safety?.breaks).toBe('between layers')
    // 40.5 of 52.3 MPa, the same stress.
    const ratio = standing.figures.safety!.factor.mid / flat.figures.safety!.factor.mid
    expect(Math.abs(ratio / (40.5 / 52.3) - 1)).toBeLessThan(0.1)
  })
})
