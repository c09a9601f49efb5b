import type { Aircraft } from '../../model/aircraft.ts'
import type { FrameBalance } from '../balance/frameBalance.ts'
import { wingBalance } from '../balance/wingBalance.ts'
import { cruise } from '../flight/cruise.ts'
import { hoverFigures } from '../flight/hover.ts'
import { wingLoading } from '../flight/wing.ts'
import type { Frame } from '../../model/frame.ts'
import { costBlame } from '../../frame/costBlame.ts'
import { crossings } from '../../frame/crossings.ts'
import type { PrintedPart } from '../../frame/ledger.ts'
import { aircraftLedger } from '../../frame/ledger.ts'
import { massDoubt } from '../../frame/massDoubt.ts'
import { massOdds } from '../../frame/odds.ts'
import { balanceReport } from './balanceReport.ts'
import { cautionsOf } from './cautions.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import { seasonReport } from './seasonReport.ts'
import { twinReport } from './twinReport.ts'
import type { AircraftReport, OddsEntry, ReportPart, WingReport } from './types.ts'

/**
 * Everything about the aircraft from its parts with figures, in the frame's order; parts without any are left out by the
 * caller and named in the cautions. All-up mass is the ledger's basic mass throughout: growth is kept apart, as a reserve.
 */
export function aircraftReport(parts: readonly ReportPart[], frame: Frame): AircraftReport {
  const { aircraft } = frame
  const hovering = hoveringSetup(aircraft)
  const printed = parts.map(({ part, material, figures }): PrintedPart => {
    const { id, name, quantity } = part
    return { id, name, quantity, material, figures }
  })
  const ledger = aircraftLedger(printed, aircraft)
  const auwG = ledger.basicMassG

  const balance = balanceReport(parts, aircraft)
  const twin = twinReport(parts, frame)
  return {
    ledger,
    standings: crossings(auwG, aircraft.massLines),
    odds: oddsOf(printed, aircraft),
    twin,
    season: seasonReport(aircraft.season, parts, twin.parts, twin.sides, frame.carbon),
    balance,
    wing: wingOf(aircraft, auwG, balance),
    flight: hovering === null ? null : hoverFigures(hovering, auwG),
    costBlame: costBlame(
      parts.map(({ part, figures }) => ({ pieces: part.quantity + part.spares, figures })),
    ),
    cautions: cautionsOf(frame, parts, twin.parts, balance),
  }
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

function wingOf(
  { wing, flight }: Aircraft,
  auwG: number,
  balance: FrameBalance | null,
): WingReport | null {
  if (wing === null) return null
  return {
    loading: wingLoading(wing, auwG),
    balance: balance === null ? null : wingBalance(wing, balance.cgMm[0]),
    cruise: cruise(wing, flight, auwG),
  }
}
