import { lengthDoubt, printedDoubt, spoolDoubt } from '../doubt/printed.ts'
import { doubtMore, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { Material, PartFigures, Prices, Printer, Range, TravelPath } from '../model/figures.ts'
import type { Deposit } from './deposit.ts'
import type { HabitDoubt } from './habitErrors.ts'
import { leastShare } from './leastShare.ts'
import { costOf } from './cost.ts'
import { filamentLengthM } from './filament.ts'
import { massOfG, plasticMm3 } from './mass.ts'

/** Hours, s, how far they may be off, and the way without plastic that they hold. */
export interface TimeFigure extends Range {
  readonly doubt: FigureDoubt
  readonly travel: TravelPath | null
}

/**
 * Figures from laid volumes. `count` is how far the volumes themselves may be off, as a share that
 * holds 95 % of cases, and `habits` what they owe to habits that are not known; the errors of
 * plastic and printer are added here. Metres are what the printer is told to push: toolpaths lay
 * out the whole deposit, channels between lines or not (solid plates of 27 real ones come to
 * 1.005–1.015 of their volume), so that neither density and diameter nor packing widens them.
 */
export function assembleFigures(
  deposit: Deposit,
  count: number,
  habits: HabitDoubt,
  time: TimeFigure,
  material: Material,
  printer: Printer,
  prices: Prices,
): PartFigures {
  const { wallMm3, gapMm3, skinMm3, strandMm3, infillMm3, turnMm3, supportMm3, brimMm3 } = deposit
  const solidMm3 = wallMm3 + skinMm3
  const keptMm3 = solidMm3 + infillMm3
  const depositMm3 = keptMm3 + supportMm3 + brimMm3
  const perKept = keptMm3 > 0 ? 1 / keptMm3 : 0
  const shares = {
    packed: deposit.packedMm3 * perKept,
    firstLayer: deposit.firstMm3 * perKept,
    turns: deposit.unsureTurnMm3 * perKept,
    habits: habits.shared,
    count,
  }
  const removed = depositMm3 > 0 ? (supportMm3 + brimMm3) / depositMm3 : 0
  const support = depositMm3 > 0 ? supportMm3 / depositMm3 : 0
  const errors = printedDoubt(material, printer.id, shares)
  const keptPlasticMm3 = plasticMm3(keptMm3, shares.packed, material)
  const massG = massOfG(keptPlasticMm3, material)
  const least = leastShare(deposit, massG, habits.wallsLess, count, material, printer.id)
  const mass = { shared: errors.shared, own: errors.own, least }
  const unsure = depositMm3 > 0 ? deposit.unsureSupportMm3 / depositMm3 : 0
  const spool = doubtMore(spoolDoubt(mass, printer.id, removed, support), unsure)
  const filament = lengthDoubt(spool)
  const allPlasticMm3 = keptPlasticMm3 + plasticMm3(supportMm3 + brimMm3, 0, material)
  const spoolG = massOfG(allPlasticMm3, material)
  const { doubt: costDoubt, ...cost } = costOf(
    spoolG,
    time.mid,
    { spool, time: time.doubt },
    material,
    printer,
    prices,
  )
  return {
    depositMm3,
    wallMm3,
    gapMm3,
    skinMm3,
    strandMm3,
    infillMm3,
    turnShare: infillMm3 > 0 ? turnMm3 / infillMm3 : 0,
    supportMm3,
    brimMm3,
    solidShare: keptMm3 > 0 ? solidMm3 / keptMm3 : 1,
    massG: rangeOfFigure(massG, mass),
    spoolG: rangeOfFigure(spoolG, spool),
    filamentM: rangeOfFigure(
      filamentLengthM(depositMm3 * material.flow, material.diameterMm),
      filament,
    ),
    cost,
    timeS: { low: time.low, mid: time.mid, high: time.high },
    travel: time.travel,
    doubt: { mass, spool, filament, time: time.doubt, cost: costDoubt },
  }
}
