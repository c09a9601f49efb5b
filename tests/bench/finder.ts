import { runToEnd } from '../../src/core/model/runToEnd.ts'
import { findFront } from '../../src/core/choose/findFront.ts'
import { layerStiffness } from '../../src/core/choose/layerStiffness.ts'
import {
  partOptions,
  type ChoiceSetup,
  type CountedGeometry,
} from '../../src/core/choose/partOptions.ts'
import type { PartOptions, Worth } from '../../src/core/choose/types.ts'
import { allWorths } from '../support/allWorths.ts'
import { geometriesOf, usualVariety, type Setting } from '../../src/core/choose/variety.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { pricesIn } from '../../src/core/data/prices.ts'
import { laidRecipe } from '../../src/core/figures/laidRecipe.ts'
import { partFigures } from '../../src/core/figures/part.ts'
import { weighFrame } from '../../src/core/frame/weighFrame.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { blockCensus } from '../support/blockCensus.ts'
import { bareFrame, materialOf, printedPart } from '../support/ledgerParts.ts'

const FREE: ReadonlySet<Setting> = new Set(['walls', 'infill', 'skins'])
const SETUP: ChoiceSetup = { printer: PRINTER_DEFAULT, prices: pricesIn('EUR'), materialOf }

/**
 * Blocks of a frame's sizes with the layers of 25 geometries each counted: what a search starts
 * from.
 */
export function countedBlocks(parts: number) {
  return Array.from({ length: parts }, (_, i) => {
    const [w, d, h] = [40 + 13 * i, 12 + 5 * (i % 4), 6 + 2 * (i % 5)]
    const recipe = { ...RECIPE_DEFAULTS, walls: 3, infillPct: 22 }
    const { part } = printedPart(`part ${i}`, 1, 1 + (i % 3), { recipe })
    const variety = usualVariety(part, FREE)
    const counted = geometriesOf(recipe, variety).map((patch): CountedGeometry => ({
      patch,
      census: blockCensus(w, d, h, { ...recipe, ...patch }),
    }))
    return { part, variety, counted, outline: { areaMm2: w * d, longDeg: 0 } }
  })
}

type Block = ReturnType<typeof countedBlocks>[number]

/** All recipes priced, from censuses. */
export function blockOptions(blocks: readonly Block[]): readonly PartOptions[] {
  const { printer, prices } = SETUP
  const material = materialOf('pla')
  const frame = weighFrame(
    blocks.map(({ part, counted }) => {
      const laid = laidRecipe(part, printer)
      const figures = partFigures(counted[0]!.census, laid, material, printer, prices)
      return { part, material, figures, failed: false }
    }),
    bareFrame(),
  )
  return blocks.map(({ variety, counted, outline }, i) => {
    const { stiffnessOf } = layerStiffness(counted[0]!.census, outline)
    return partOptions(frame.rows[i]!, counted, variety, SETUP, stiffnessOf)
  })
}

export const searchAll = (parts: readonly PartOptions[]) => runToEnd(findFront(parts))

/** The first options of the first parts: as many assignments as trying all of them can do. */
export function smallFrame(parts: readonly PartOptions[]): readonly PartOptions[] {
  return parts.slice(0, 4).map(({ partId, options }) => ({
    partId,
    options: options.filter((_, i) => i % 33 === 0),
  }))
}

/** Every assignment there is, and of them those that no other beats. */
export function tryAll(parts: readonly PartOptions[]): readonly Worth[] {
  const front: Worth[] = []
  for (const one of allWorths(parts).toSorted((a, b) => a.massG - b.massG || a.timeS - b.timeS)) {
    const isBeaten = front.some(
      (other) =>
        other.timeS <= one.timeS && other.cost <= one.cost && other.stiffness >= one.stiffness,
    )
    if (!isBeaten) front.push(one)
  }
  return front
}
