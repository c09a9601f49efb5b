import type { SeasonSetup } from '../../model/aircraft.ts'
import type { CarbonFrame } from '../../model/frame.ts'
import { cheaperFrom } from '../season/breakEven.ts'
import type { SeasonPart } from '../season/playSeason.ts'
import { playSeason } from '../season/playSeason.ts'
import type { FrameSides } from '../twin/sides.ts'
import { isSoft } from './twinEntry.ts'
import type { BreakReport, ReportPart, SeasonReport, TwinEntry } from './types.ts'

/**
 * The season on the printed frame and on carbon: the bought frame where there is one, its broken
 * parts at the typed price of a carbon part; else the frame with its flat parts cut, each broken
 * one cut anew. Soft parts stay printed on both.
 */
export function seasonReport(
  setup: SeasonSetup,
  parts: readonly ReportPart[],
  twins: readonly TwinEntry[],
  sides: FrameSides,
  bought: CarbonFrame | null,
): SeasonReport {
  const carbonSide = sides.bought ?? sides.cut
  const cutPrice = (id: string): number | null =>
    twins.find(({ partId }) => partId === id)?.twin?.cost ?? null
  const carbonPrice = (one: ReportPart): number | null => {
    if (bought !== null) return isSoft(one) ? null : setup.carbonPartPrice
    return cutPrice(one.part.id)
  }
  // What a part that only the scale knows would cost and take to print again nobody can say.
  const lines = parts.flatMap((one): SeasonPart[] => {
    if (one.figures === null) return []
    const { id: partId, name, spares } = one.part
    const { cost, timeS } = one.figures
    return [{ partId, name, spares, printed: { cost, timeS }, carbonPrice: carbonPrice(one) }]
  })
  const first = sides.printed.cost
  const pair = playSeason(setup, lines, { printed: first, carbon: carbonSide?.cost ?? first })
  if (carbonSide === null) {
    return { printed: pair.printed, carbon: null, carbonFrame: null, breaks: null }
  }
  const breaks = breakReport(setup, lines, first.mid, carbonSide.cost.mid)
  return {
    ...pair,
    carbonFrame: sides.bought === null ? 'cut' : 'bought',
    breaks: breaks && { ...breaks, cutPiece: bought === null ? null : cutPrice(breaks.partId) },
  }
}

/** For the part that breaks most of those that are carbon on the other frame. */
function breakReport(
  { breakShare }: SeasonSetup,
  lines: readonly SeasonPart[],
  printedFirst: number,
  carbonFirst: number,
): Omit<BreakReport, 'cutPiece'> | null {
  const share = ({ partId }: SeasonPart): number => breakShare[partId] ?? 0
  const [worst] = lines
    .filter((line) => line.carbonPrice !== null && share(line) > 0)
    .toSorted((a, b) => share(b) - share(a))
  if (worst === undefined || worst.carbonPrice === null) return null
  const printed = { first: printedFirst, perBreak: worst.printed.cost.mid }
  const carbon = { first: carbonFirst, perBreak: worst.carbonPrice }
  return {
    partId: worst.partId,
    name: worst.name,
    printed,
    carbon,
    printedCheaperFrom: cheaperFrom(printed, carbon),
    carbonCheaperFrom: cheaperFrom(carbon, printed),
  }
}
