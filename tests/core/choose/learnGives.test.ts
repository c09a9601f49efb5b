import { describe, expect, it } from 'vitest'
import { learnGives, type GivesAsks } from '../../../src/core/choose/gives/learnGives.ts'
import type { Gives } from '../../../src/core/choose/gives/types.ts'
import type { ChoiceSetup } from '../../../src/core/choose/partOptions.ts'
import { geometriesOf, usualVariety } from '../../../src/core/choose/variety.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { pricesIn } from '../../../src/core/data/prices.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, type Recipe } from '../../../src/core/model/settings.ts'
import { LOAD_PICK_AUTO } from '../../../src/core/stiffness/part/chooseLoad.ts'
import { partSections, stiffPart } from '../../../src/core/stiffness/part/stiffPart.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { materialOf, printedPart } from '../../support/ledgerParts.ts'
import { box } from '../../support/meshes.ts'

const SETUP: ChoiceSetup = { printer: PRINTER_DEFAULT, prices: pricesIn('EUR'), materialOf }
const LOAD = { loadN: 5, tipG: 20 }
const { part, material } = printedPart('arm', 1, 4)
const FREE = { pose: POSE_AS_DRAWN, jointBores: [], pick: LOAD_PICK_AUTO }

/** The pool, right here, counting what it is asked. */
function asksOf(mesh: Mesh) {
  const told = { sections: 0, solid: 0 }
  const meshes = { part: mesh, zones: [] }
  const solve = (recipe: Recipe, materialId: string, massG: number) =>
    stiffPart(meshes, 1, {
      ...FREE,
      ...LOAD,
      recipe,
      material: materialOf(materialId),
      massG,
      cellMm: 2,
      wantTones: true,
    })
  const asks: GivesAsks = {
    sections: (patch) => {
      told.sections++
      return Promise.resolve(
        partSections(meshes, 1, { ...FREE, geometry: { ...part.recipe, ...patch } }),
      )
    },
    solid: ({ patch, infillPct, material: plastic }, massG) => {
      told.solid++
      return Promise.resolve(solve({ ...part.recipe, ...patch, infillPct }, plastic.id, massG))
    },
  }
  return { asks, told, solve }
}

async function learn(size: readonly [number, number, number], infillPct: readonly number[]) {
  const { asks, told, solve } = asksOf(box(...size))
  const variety = { ...usualVariety(part, new Set()), walls: [1, 2], infillPct }
  const counted = geometriesOf(part.recipe, variety).map((patch) => ({
    patch,
    census: blockCensus(...size, { ...part.recipe, ...patch }),
  }))
  const model = await learnGives({ part, material }, counted, variety, SETUP, LOAD, asks)
  if (model === null) throw new Error('no model')
  const compare = (recipe: Recipe, materialId: string, massG: number) => {
    const { figures } = solve(recipe, materialId, massG)
    const exact: Gives = { deflectionMm: figures.deflectionMm.mid, firstHz: figures.hz[0]!.mid }
    const says = model.givesOf({ recipe, material: materialOf(materialId), massG })!
    return [says.deflectionMm / exact.deflectionMm, says.firstHz! / exact.firstHz!] as const
  }
  return { model, told, compare }
}

describe('learnGives', () => {
  it('tells slender ways by one solid sum and a look at each geometry: within 4 % of their own', async () => {
    const { model, told, compare } = await learn([90, 10, 8], [5, 30, 100])
    expect(model.by).toBe('beam')
    expect(told).toEqual({ sections: 2, solid: 1 })
    const [now] = compare(part.recipe, 'pla', 8)
    expect(Math.abs(now - 1)).toBeLessThan(1e-6)
    for (const [walls, infillPct, materialId] of [
      [1, 10, 'pla'],
      [2, 80, 'petg'],
    ] as const) {
      for (const off of compare({ ...part.recipe, walls, infillPct }, materialId, 7)) {
        expect(Math.abs(off - 1)).toBeLessThan(0.04)
      }
    }
  })

  it('solves what is no beam at three infills: within 5 % between them', async () => {
    const { model, told, compare } = await learn([30, 16, 14], [5, 20, 100])
    expect(model.by).toBe('solid')
    // Two geometries at 5, 30 (as it stands) and 100 %, each once.
    expect(told).toEqual({ sections: 1, solid: 6 })
    const [exact] = compare({ ...part.recipe, walls: 1, infillPct: 100 }, 'pla', 8)
    expect(Math.abs(exact - 1)).toBeLessThan(1e-6)
    const [between, tone] = compare({ ...part.recipe, infillPct: 60 }, 'pla', 8)
    expect(Math.abs(between - 1)).toBeLessThan(0.05)
    expect(Math.abs(tone - 1)).toBeLessThan(0.05)
  })
})
