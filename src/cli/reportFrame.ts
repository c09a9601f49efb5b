import type { PartFigures, Range } from '../core/model/figures.ts'
import type { Cruise, CruiseFigures } from '../core/aircraft/flight/cruise.ts'
import type { ClashFinding } from '../core/aircraft/report/clashFindings.ts'
import type { AircraftReport } from '../core/aircraft/report/types.ts'
import { roundChance, standingWords } from '../core/frame/sayings.ts'
import type { FrameRow, FrameSum, PieceSum } from '../core/frame/types.ts'
import type { Spool } from '../core/model/spools.ts'
import { scaleRange } from '../core/model/ranges.ts'
import type { Frame } from '../core/model/frame.ts'
import { reportHabits } from './habits.ts'
import { runReports, type LaidFrame } from './frameRuns.ts'
import { drillReports, type FrameHoles } from './frameDrill.ts'
import type { FramePart, FramePricedPart, FrameReport } from './frameReport.ts'
import { jointReports } from './frameScrews.ts'
import type { StiffnessReport } from './frameStiffness.ts'
import { roleNameOf, roleNotes } from './frameRoles.ts'
import { isFailed } from './report.ts'
import type { PartReport, TotalReport } from './report.ts'

/** Tells a frame that was added up as `--frame --json` prints it. */
export function reportFrame(
  frame: Frame,
  reports: readonly PartReport[],
  about: AircraftReport,
  laid: LaidFrame,
  { rows: holes, checks }: FrameHoles,
  clashes: readonly ClashFinding[],
  stiffness: readonly (StiffnessReport | { readonly note: string })[],
  complaints: readonly string[],
  locale?: string,
  spools: readonly Spool[] | null = null,
): FrameReport {
  const { sum, standings, odds, twin, balance, wing, flight, costBlame, cautions } = about
  const { ledger } = sum
  const { currency } = frame.prices
  const noCost = new Set(sum.leftOut.map(({ id }) => id))
  const rows = new Map(sum.rows.map((row) => [row.part.id, row]))
  const parts = frame.parts.flatMap((part, i): FramePart[] => {
    const { id, name, quantity, spares } = part
    const report = reports[i]
    const row = rows.get(id)
    if (report === undefined) return []
    const named = { name, quantity, spares, role: roleNameOf(part, frame) }
    if (isFailed(report)) {
      return [{ ...report, ...named, ...(row === undefined ? {} : { massG: row.pieceG }) }]
    }
    if (row === undefined || row.figures === null) return []
    return [{ ...report, ...learnedFigures(row, row.figures, currency), ...named }]
  })
  return {
    frame: frame.name,
    parts,
    total: totalOf(sum.printed, sum, parts, currency),
    totalWithSpares: totalOf(sum.withSpares, sum, parts, currency),
    ledger: {
      lines: ledger.lines.map(({ id, name, group, status, quantity, massG, costEach }) => ({
        name,
        group,
        status,
        quantity,
        massG,
        costEach: noCost.has(id) ? null : costEach,
      })),
      basicMassG: ledger.basicMassG,
      growthG: ledger.growthG,
      predictedMassG: ledger.predictedMassG,
      limitG: ledger.limitG,
      marginG: ledger.marginG,
    },
    odds: odds.map(({ id, name, odds: { thresholdG, chanceBelow, verdict } }) => ({
      name,
      thresholdG,
      readOn: standings.find(({ line }) => line.id === id)?.line.readOn ?? null,
      chanceBelow: roundChance(chanceBelow),
      verdict,
    })),
    twin: twin.parts.flatMap((entry) => {
      if (entry.twin === null) return []
      const { plate, chosen, cost } = entry.twin
      return [
        {
          part: entry.name,
          material: plate.id,
          plateMm: chosen.thicknessMm,
          massG: chosen.massG.mid,
          cost,
        },
      ]
    }),
    arms: twin.arms.map((arm) => ({
      part: arm.name,
      freeMm: arm.freeMm,
      printedHz: arm.printedHz,
      plateHz: arm.plateHz,
      hoverTurnHz: arm.turnHz,
      bladePassHz: arm.passHz,
      ringsAtTurn: arm.printedRings.turn,
      ringsAtPass: arm.printedRings.pass,
    })),
    stiffness: stiffness.flatMap((one) => ('note' in one ? [] : [one])),
    balance: balance && {
      cgMm: balance.cgMm,
      inertiaKgM2: balance.inertiaKgM2,
      massG: balance.massG,
      unplacedG: balance.unplacedG,
      unplaced: balance.unplaced,
    },
    flight: flight && {
      auwG: flight.auwG,
      thrustToWeight: flight.thrustToWeight,
      hoverW: flight.hoverW,
      hoverThrottle: flight.hoverThrottle.squareRoot,
      hoverThrottleLinear: flight.hoverThrottle.linear,
      hoverMin: flight.hoverMin,
      payloadG: flight.payloadG,
      sPerGram: flight.sPerGram,
      efficiency: flight.efficiency,
      coaxial: frame.aircraft.flight?.coaxial === true,
      validated: flight.validated,
      flown: flight.lesson,
    },
    cruise: wing === null || wing.cruise.figures === null ? null : cruiseOf(wing.cruise.figures),
    costDoubt: costBlame,
    limits: { allUpG: sum.limits.allUpG, printedG: sum.limits.printedG },
    carbon: sum.carbon,
    standing: standingWords(sum, locale),
    leftOut: sum.leftOut,
    learned: sum.learned,
    habits: reportHabits(frame.printer.habits),
    learnedHours: sum.learnedHours,
    readings: sum.readings.map(({ kind, name, pieces, value, ratio, fate }) => ({
      kind,
      name,
      pieces,
      value,
      ratio,
      outcome: fate,
    })),
    ...runReports(laid, sum, frame, spools),
    drill: drillReports(holes),
    fits: checks.map(({ what, verdict, words }) => ({ what, verdict, words })),
    joints: jointReports(frame),
    assembly: about.assembly,
    jointFindings: about.jointFindings.map(({ code, message }) => ({ code, message })),
    clashes,
    notes: [
      ...complaints,
      ...laid.notes,
      ...roleNotes(frame),
      ...cruiseNotes(wing?.cruise),
      ...(flight?.notes ?? []).map(({ message }) => message),
      ...cautions.map(({ message }) => message),
      ...stiffness.flatMap((one) => ('note' in one ? [one.note] : [])),
      ...(stiffness.length > 0 ? [STIFFNESS_CAUTION] : []),
    ],
  }
}

/** Said wherever a strength is told. */
const STIFFNESS_CAUTION =
  'Printed plastic scatters, creeps and ages: a safety is no licence to fly over people. ' +
  'Load a printed piece before you trust it, and ask someone qualified where it matters.'

function cruiseOf(figures: CruiseFigures): FrameReport['cruise'] {
  const { speedMS, powerW, minutes, distanceKm, liftToDrag } = figures
  return { speedMS, powerW, minutes, distanceKm, liftToDrag }
}

function cruiseNotes(cruise: Cruise | undefined): readonly string[] {
  if (cruise === undefined) return []
  if (cruise.missing.length > 0) {
    return [`For cruise power and minutes, still to be typed: ${cruise.missing.join(', ')}.`]
  }
  return cruise.figures?.nearStall === true
    ? ['The cruise speed is less than 1.2 times the speed the plane may stall at.']
    : []
}

/** Of one piece: mean of those that fly, or as calculated where none flies. */
function learnedFigures(
  { part: { quantity }, pieceG, flying }: FrameRow,
  figures: PartFigures,
  currency: string,
): Pick<FramePricedPart, 'massG' | 'calculatedG' | 'cost' | 'timeS'> {
  const each = (all: Range, one: Range): Range =>
    quantity > 0 ? scaleRange(all, 1 / quantity) : { low: one.low, mid: one.mid, high: one.high }
  return {
    massG: pieceG,
    calculatedG: figures.massG.mid,
    cost: { ...each(flying.cost, figures.cost), currency },
    timeS: each(flying.timeS, figures.timeS),
  }
}

function totalOf(
  pieces: PieceSum,
  { rows }: FrameSum,
  parts: readonly FramePart[],
  currency: string,
): TotalReport {
  const { pieces: quantity, cost, ...figures } = pieces
  const priced = rows.filter(({ figures: own }) => own !== null).length
  const failed = parts.length - priced
  const coarse = parts.filter((part) => !isFailed(part) && part.coarse).length
  return { quantity, priced, ...figures, cost: { ...cost, currency }, failed, coarse }
}
