import { expect } from 'vitest'
import { partFigures } from '../../src/core/figures/part.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { listMeshFiles } from '../../src/core/formats/archive.ts'
import type { CountWatch } from '../../src/core/census/countLayers.ts'
import { layerFindings } from '../../src/core/figures/layerFindings.ts'
import type { FindingCode, LengthUnit } from '../../src/core/model/mesh.ts'
import { PreweighError, type ProblemCode } from '../../src/core/model/problem.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { weighPart } from '../../src/core/weighPart.ts'

/** How one mesh file ended: with grams, or refused. */
export type Ending =
  | { readonly kind: 'figures'; readonly massG: number; readonly findings: readonly FindingCode[] }
  | { readonly kind: 'refused'; readonly code: ProblemCode; readonly message: string }

/**
 * The whole way from bytes to grams, as the worker goes it, for each mesh in a file. Fails the test
 * on anything but figures that are finite and above 0, or a problem with words in it.
 */
export function endingsOf(bytes: Uint8Array, name: string, watch?: CountWatch): readonly Ending[] {
  try {
    return listMeshFiles(bytes, name).map((file) =>
      file.problem === undefined ? endingOf(file.bytes, file.name, watch) : refused(file.problem),
    )
  } catch (error) {
    return [refusedBy(error)]
  }
}

function endingOf(bytes: Uint8Array, name: string, watch?: CountWatch): Ending {
  try {
    const settings = { ...RECIPE_DEFAULTS, supports: true }
    const how = {
      unitOf: (stated: LengthUnit | null) => stated ?? 'millimetre',
      keepsHairs: true,
      pose: POSE_AS_DRAWN,
      geometry: settings,
    }
    const { inspection, census } = weighPart({ name, bytes }, [], how, watch)
    const { measure } = inspection
    const figures = partFigures(census, settings, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)
    for (const range of [figures.massG, figures.spoolG, figures.timeS, figures.cost]) {
      if (!(range.low >= 0 && range.low <= range.mid && range.mid <= range.high)) {
        throw new Error(`a range that is none: ${range.low} ${range.mid} ${range.high}`)
      }
      if (!Number.isFinite(range.high)) throw new Error('a figure without end')
    }
    if (!(figures.massG.mid > 0)) throw new Error('a part that weighs nothing')
    if (!(measure.volumeMm3 > 0)) throw new Error('a volume that is none')
    return {
      kind: 'figures',
      massG: figures.massG.mid,
      findings: layerFindings(measure.findings, census).map(({ code }) => code),
    }
  } catch (error) {
    return refusedBy(error)
  }
}

function refusedBy(error: unknown): Ending {
  if (error instanceof PreweighError) return refused(error.problem)
  throw error
}

function refused({ code, message, advice }: PreweighError['problem']): Ending {
  expect(message).toMatch(/\.$/s)
  expect(advice).not.toBe('')
  return { kind: 'refused', code, message }
}
