import type { Aircraft } from '../../model/aircraft.ts'
import type { BoxedPart } from '../assembly/assemblySteps.ts'
import { assemblyWords } from '../assembly/assemblyWords.ts'
import { wingBalance } from '../balance/wingBalance.ts'
import { cruise } from '../flight/cruise.ts'
import { hoverFigures } from '../flight/hover.ts'
import { wingLoading } from '../flight/wing.ts'
import type { Frame } from '../../model/frame.ts'
import { costBlame } from '../../frame/costBlame.ts'
import { crossings } from '../../frame/crossings.ts'
import { massOdds } from '../../frame/odds.ts'
import type { FrameSum } from '../../frame/types.ts'
import { balanceReport } from './balanceReport.ts'
import { cautionsOf } from './cautions.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import { jointFindings } from './jointFindings.ts'
import { seasonReport } from './seasonReport.ts'
import { twinReport } from './twinReport.ts'
import type { AircraftReport, OddsEntry, PartLook, ReportPart, WingReport } from './types.ts'

/**
 * Everything about the aircraft, from the one sum of its frame and what is known of each part's
 * mesh. All-up mass is the ledger's basic mass throughout: growth is kept apart, as a reserve.
 * Blocks are worked out when they are first read, so that a page can ask for one without waiting
 * for the others; asked again, each is the same object.
 */
export function aircraftReport(
  sum: FrameSum,
  lookOf: (partId: string) => PartLook,
  frame: Pick<Frame, 'aircraft' | 'carbon'>,
): AircraftReport {
  const { aircraft, carbon } = frame
  const auwG = sum.ledger.basicMassG
  const parts = once(() => sum.rows.map((row): ReportPart => ({ ...row, ...lookOf(row.part.id) })))
  const standings = once(() => crossings(auwG, aircraft.massLines))
  const odds = once(() => oddsOf(sum, aircraft))
  const twin = once(() => twinReport(parts(), sum, frame))
  const season = once(() =>
    seasonReport(aircraft.season, parts(), twin().parts, twin().sides, carbon),
  )
  const balance = once(() => balanceReport(parts(), aircraft, sum.doubt.countedItems))
  const wing = once((): WingReport | null => {
    if (aircraft.wing === null) return null
    const at = balance()
    return {
      loading: wingLoading(aircraft.wing, auwG),
      balance: at === null ? null : wingBalance(aircraft.wing, at.cgMm[0]),
      cruise: cruise(aircraft.wing, aircraft.flight, auwG),
    }
  })
  const flight = once(() => {
    const hovering = hoveringSetup(aircraft)
    return hovering === null ? null : hoverFigures(hovering, auwG)
  })
  const blame = once(() => costBlame(sum.doubt))
  const joints = once(() => jointFindings(parts(), aircraft))
  const steps = once(() => assemblyWords(parts().map(boxed), aircraft))
  const cautions = once(() => cautionsOf(aircraft, sum.leftOut, twin().parts, balance()))
  return {
    sum,
    get standings() {
      return standings()
    },
    get odds() {
      return odds()
    },
    get twin() {
      return twin()
    },
    get season() {
      return season()
    },
    get balance() {
      return balance()
    },
    get wing() {
      return wing()
    },
    get flight() {
      return flight()
    },
    get costBlame() {
      return blame()
    },
    get cautions() {
      return cautions()
    },
    get assembly() {
      return steps()
    },
    get jointFindings() {
      return joints()
    },
  }
}

function boxed({ part, traits }: ReportPart): BoxedPart {
  return { part, boxMm: traits?.boxMm ?? null }
}

function oddsOf({ doubt }: FrameSum, { limitG, massLines }: Aircraft): readonly OddsEntry[] {
  const own = limitG === null ? [] : [{ id: 'limit', name: 'Your own limit', thresholdG: limitG }]
  return [...own, ...massLines].map(({ id, name, thresholdG }) => ({
    id,
    name,
    odds: massOdds(doubt, thresholdG),
  }))
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null
  return () => (made ??= { value: make() }).value
}
