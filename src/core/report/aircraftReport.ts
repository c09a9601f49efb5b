import type { Aircraft, FlightSetup } from '../aircraft.ts'
import type { FrameBalance } from '../balance/frameBalance.ts'
import { frameBalance } from '../balance/frameBalance.ts'
import { shellShare } from '../balance/spreadMass.ts'
import { wingBalance } from '../balance/wingBalance.ts'
import { hoverFigures } from '../flight/hover.ts'
import { wingLoading } from '../flight/wing.ts'
import type { Frame } from '../frame.ts'
import { crossings } from '../ledger/crossings.ts'
import type { PrintedPart } from '../ledger/ledger.ts'
import { aircraftLedger, weighedMassG } from '../ledger/ledger.ts'
import { massDoubt } from '../ledger/massDoubt.ts'
import { massOdds } from '../ledger/odds.ts'
import { exactRange } from '../ranges.ts'
import { frameSides } from '../twin/sides.ts'
import { cautionsOf } from './cautions.ts'
import { seasonReport } from './seasonReport.ts'
import { twinEntry } from './twinEntry.ts'
import type { AircraftReport, OddsEntry, ReportPart, WingReport } from './types.ts'

/**
 * Everything about the aircraft from its parts with figures, in the frame's order; parts without any are left out by the
 * caller and named in the cautions. All-up mass is the ledger's basic mass throughout: growth is kept apart, as a reserve.
 */
export function aircraftReport(parts: readonly ReportPart[], frame: Frame): AircraftReport {
  const { aircraft, carbon } = frame
  // A plane hangs on its wing: no hover, and its motors stand on no circle.
  const hovering = aircraft.wing === null ? aircraft.flight : null
  const printed = parts.map(({ part, material, figures }): PrintedPart => {
    const { id, name, quantity } = part
    return { id, name, quantity, material, figures }
  })
  const ledger = aircraftLedger(printed, aircraft)
  const auwG = ledger.basicMassG

  const twins = parts.flatMap((one) => twinEntry(one, aircraft.twin) ?? [])
  const sides = frameSides({
    lines: parts.map(({ part, figures }) => ({
      quantity: part.quantity,
      printed: { ...figures, massG: massOf(aircraft, part.id) ?? figures.massG },
      twin: twins.find(({ partId }) => partId === part.id)?.twin ?? null,
    })),
    bought: carbon,
    restG: aircraft.items.reduce((sum, item) => sum + item.quantity * item.massG, 0),
    deliveryDays: aircraft.twin.deliveryDays,
    flight: hovering,
  })
  const balance = balanceOf(parts, aircraft, hovering)
  return {
    ledger,
    standings: crossings(auwG, aircraft.massLines),
    odds: oddsOf(printed, aircraft),
    twin: { plate: aircraft.twin.plate, parts: twins, sides },
    season: seasonReport(aircraft.season, parts, twins, sides, carbon),
    balance,
    wing: wingOf(aircraft, auwG, balance),
    flight: hovering === null ? null : hoverFigures(hovering, auwG),
    cautions: cautionsOf(frame, parts, twins, balance),
  }
}

function massOf(aircraft: Aircraft, partId: string) {
  const weighedG = weighedMassG(aircraft.weighedG, partId)
  return weighedG === null ? null : exactRange(weighedG)
}

function oddsOf(printed: readonly PrintedPart[], aircraft: Aircraft): readonly OddsEntry[] {
  const doubt = massDoubt(printed, aircraft)
  const { limitG, massLines } = aircraft
  const own = limitG === null ? [] : [{ id: 'limit', name: 'Your own limit', thresholdG: limitG }]
  return [...own, ...massLines].map(({ id, name, thresholdG }) => ({
    id,
    name,
    odds: massOdds(doubt, thresholdG),
  }))
}

/** Motors find their own places on their circle; with nothing else placed that says nothing, so there is no balance yet. */
function balanceOf(
  parts: readonly ReportPart[],
  { places, items, weighedG }: Aircraft,
  flight: FlightSetup | null,
): FrameBalance | null {
  const known = new Set(parts.map(({ part }) => part.id))
  const isPlaced =
    places.some(({ partId }) => known.has(partId)) || items.some((item) => item.positionMm !== null)
  if (!isPlaced) return null
  return frameBalance({
    parts: parts.map(({ part, figures, census, facts }) => ({
      partId: part.id,
      name: part.name,
      quantity: part.quantity,
      massG: weighedMassG(weighedG, part.id) ?? figures.massG.mid,
      moments: facts?.moments ?? null,
      shellShare: census === null ? 0 : shellShare(figures, census),
    })),
    places,
    items,
    flight,
  })
}

function wingOf({ wing }: Aircraft, auwG: number, balance: FrameBalance | null): WingReport | null {
  if (wing === null) return null
  return {
    loading: wingLoading(wing, auwG),
    balance: balance === null ? null : wingBalance(wing, balance.cgMm[0]),
  }
}
