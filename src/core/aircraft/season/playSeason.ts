import type { SeasonSetup } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { exactRange, scaleRange } from '../../model/ranges.ts'
import type { SeasonSide } from './side.ts'
import { seasonSide } from './side.ts'

/** A part of the frame, as printed and as carbon. */
export interface SeasonPart {
  readonly partId: string
  readonly name: string
  readonly spares: number
  /** Of one piece. */
  readonly printed: { readonly cost: Range; readonly timeS: Range }
  /** Price of one carbon piece; null when the part stays printed on the carbon frame too. */
  readonly carbonPrice: number | null
}

/** The same season on both frames. */
export interface SeasonPair {
  readonly printed: SeasonSide
  readonly carbon: SeasonSide
}

const SECONDS_PER_DAY = 86_400

/**
 * Plays `setup` on the printed frame and on the carbon one. A printed piece keeps the aircraft down
 * for its printer hours, a carbon one for its lead time; carbon pieces are bought when needed, none
 * kept. `firstCost` is what flies at first, spares left out.
 */
export function playSeason(
  setup: SeasonSetup,
  parts: readonly SeasonPart[],
  firstCost: { readonly printed: Range; readonly carbon: Range },
): SeasonPair {
  const breakable = parts.filter(({ partId }) => (setup.breakShare[partId] ?? 0) > 0)
  const printedLine = (part: SeasonPart) => ({
    partId: part.partId,
    name: part.name,
    breaksPerCrash: setup.breakShare[part.partId] ?? 0,
    spares: part.spares,
    pieceCost: part.printed.cost,
    waitDays: scaleRange(part.printed.timeS, 1 / SECONDS_PER_DAY),
  })
  const carbonLine = (part: SeasonPart) =>
    part.carbonPrice === null
      ? printedLine(part)
      : {
          ...printedLine(part),
          breaksPerCrash: (setup.breakShare[part.partId] ?? 0) * (setup.carbonBreakFactor ?? 1),
          spares: 0,
          pieceCost: exactRange(part.carbonPrice),
          waitDays: exactRange(setup.carbonLeadDays),
        }
  return {
    printed: seasonSide(setup, breakable.map(printedLine), firstCost.printed),
    carbon: seasonSide(setup, breakable.map(carbonLine), firstCost.carbon),
  }
}
