import type { Material, PartFigures, Prices, Printer, Range } from '../model/figures.ts'
import type { Deposit } from './deposit.ts'
import { costOf } from './cost.ts'
import { filamentLengthM } from './filament.ts'
import { massOfG, plasticSpreads } from './mass.ts'
import { combineSpreads, rangeAbout } from './spread.ts'
import type { Spread } from './spread.ts'

/**
 * Figures from laid volumes. `countSpreads` are the errors of the volumes themselves; the errors of the plastic are added
 * here, in quadrature. Metres are what the printer pushes, so density, diameter and oversize do not widen them.
 */
export function assembleFigures(
  deposit: Deposit,
  countSpreads: readonly Spread[],
  timeS: Range,
  material: Material,
  printer: Printer,
  prices: Prices,
): PartFigures {
  const { wallMm3, skinMm3, infillMm3, turnMm3, supportMm3, brimMm3 } = deposit
  const solidMm3 = wallMm3 + skinMm3
  const keptMm3 = solidMm3 + infillMm3
  const depositMm3 = keptMm3 + supportMm3 + brimMm3
  const spread = combineSpreads([...plasticSpreads(material), ...countSpreads])
  const spoolG = rangeAbout(massOfG(depositMm3, material), spread)
  const pushedM = filamentLengthM(depositMm3 * material.flow, material.diameterMm)
  return {
    depositMm3,
    wallMm3,
    skinMm3,
    infillMm3,
    turnShare: infillMm3 > 0 ? turnMm3 / infillMm3 : 0,
    supportMm3,
    brimMm3,
    solidShare: keptMm3 > 0 ? solidMm3 / keptMm3 : 1,
    massG: rangeAbout(massOfG(keptMm3, material), spread),
    spoolG,
    filamentM: rangeAbout(pushedM, combineSpreads(countSpreads)),
    cost: costOf(spoolG, timeS, material, printer, prices),
    timeS,
  }
}
