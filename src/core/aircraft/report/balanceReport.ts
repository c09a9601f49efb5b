import type { Aircraft, Item } from '../../model/aircraft.ts'
import { framePlaces } from '../../joints/framePlaces.ts'
import type { FrameBalance } from '../balance/frameBalance.ts'
import { frameBalance } from '../balance/frameBalance.ts'
import { shellShare } from '../balance/spreadMass.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import type { ReportPart } from './types.ts'

/**
 * Motors find their own places on their circle; with nothing else placed that says nothing, so
 * there is no balance yet.
 */
export function balanceReport(
  parts: readonly ReportPart[],
  aircraft: Aircraft,
  /** As they count, see `FrameDoubt`. */
  items: readonly Item[],
): FrameBalance | null {
  const { places, motions } = framePlaces(
    parts.map(({ part }) => part),
    aircraft,
  )
  const known = new Set(parts.map(({ part }) => part.id))
  const isPlaced =
    places.some(({ partId }) => known.has(partId)) || items.some((item) => item.positionMm !== null)
  if (!isPlaced) return null
  return frameBalance({
    parts: parts.map(({ part, pieceG, figures, census, traits }) => ({
      partId: part.id,
      name: part.name,
      quantity: part.quantity,
      massG: pieceG.mid,
      moments: traits?.moments ?? null,
      shellShare: census === null || figures === null ? 0 : shellShare(figures, census),
    })),
    places,
    items,
    motions,
    flight: hoveringSetup(aircraft),
  })
}
