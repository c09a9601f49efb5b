import type { PartFigures, Range } from '../core/model/figures.ts'
import type { Cruise, CruiseFigures } from '../core/aircraft/flight/cruise.ts'
import type { HoverLesson } from '../core/aircraft/flight/flown.ts'
import type { CostBlame } from '../core/frame/costBlame.ts'
import type { Learned, LearnedHours } from '../core/frame/learned.ts'
import type { LedgerLine } from '../core/frame/ledger.ts'
import type { Verdict } from '../core/frame/odds.ts'
import type { AircraftReport } from '../core/aircraft/report/types.ts'
import { roundChance, standingWords } from '../core/frame/sayings.ts'
import type {
  CarbonDifference,
  FrameRow,
  FrameSum,
  LeftOut,
  PieceSum,
  ReadingFate,
  ToldReading,
} from '../core/frame/types.ts'
import { scaleRange } from '../core/model/ranges.ts'
import type { Frame } from '../core/model/frame.ts'
import { reportHabits } from './habits.ts'
import type { FrameRuns, RunReport } from './frameRuns.ts'
import { jointReports, type JointReport } from './frameScrews.ts'
import type { HabitsReport } from './habits.ts'
import { roleNameOf, roleNotes } from './frameRoles.ts'
import { isFailed } from './report.ts'
import type { FailedPart, PartReport, PricedPart, TotalReport } from './report.ts'

/** What every part of a frame says besides its figures, which are of one piece. */
interface FramePartFacts {
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  readonly spares: number
  /** Name of the role its recipe came from, one of the builder's own included; null for none. */
  readonly role: string | null
}

/** Figures of one piece, after what scale and clock taught. */
interface FramePricedPart extends PricedPart {
  /** Middle grams of one piece before anything was weighed. */
  readonly calculatedG: number
}

/** Without figures; it counts all the same where its pieces were weighed as they are. */
interface FrameFailedPart extends FailedPart {
  /** Of one piece, by the scale: in every mass, while cost and hours are without the part. */
  readonly massG?: Range
}

export type FramePart = (FramePricedPart | FrameFailedPart) & FramePartFacts

/** What `--frame --json` prints. Field names and meanings are stable. */
export interface FrameReport {
  readonly frame: string
  readonly parts: readonly FramePart[]
  /** Flying pieces of the parts that could be priced; `quantity` is their number. */
  readonly total: TotalReport
  /** The same with the spares. */
  readonly totalWithSpares: TotalReport
  readonly ledger: {
    /** `massG` and `costEach` are of one piece. */
    readonly lines: readonly Pick<
      LedgerLine,
      'name' | 'group' | 'status' | 'quantity' | 'massG' | 'costEach'
    >[]
    readonly basicMassG: number
    readonly growthG: number
    readonly predictedMassG: number
    readonly limitG: number | null
    readonly marginG: number | null
  }
  /** Chance to end below the frame's own limit, where it has one, and below each mass line; growth is not added. */
  readonly odds: readonly {
    readonly name: string
    readonly thresholdG: number
    /** The day the line was read, ISO 8601; null for the frame's own limit. */
    readonly readOn: string | null
    /** To four decimals, from 0.0001 to 0.9999. */
    readonly chanceBelow: number
    /** Never a yes or no within 3 % of the line. */
    readonly verdict: Verdict
  }[]
  /** One piece of each part that could be cut from plate; `material` is the plate's id. */
  readonly twin: readonly {
    readonly part: string
    readonly material: string
    readonly plateMm: number
    readonly massG: number
    readonly cost: number
  }[]
  /**
   * First bending of each arm, up and down, beside the turns of a propeller and the passes of its
   * blades in hover, a second.
   */
  readonly arms: readonly {
    readonly part: string
    readonly freeMm: number
    readonly printedHz: Range
    readonly plateHz: Range
    readonly hoverTurnHz: Range
    readonly bladePassHz: Range
    /** Whether the printed arm may ring there in hover. */
    readonly ringsAtTurn: boolean
    readonly ringsAtPass: boolean
  }[]
  readonly balance: {
    readonly cgMm: readonly [number, number, number]
    readonly inertiaKgM2: readonly [number, number, number]
    readonly massG: number
    /** Mass without a place, which is not in here. */
    readonly unplacedG: number
    readonly unplaced: readonly string[]
  } | null
  readonly flight: {
    readonly auwG: number
    readonly thrustToWeight: number
    readonly hoverW: Range
    /** By the square-root rule. */
    readonly hoverThrottle: number
    readonly hoverThrottleLinear: number
    readonly hoverMin: Range
    readonly payloadG: number
    readonly sPerGram: number
    /** Ideal over electrical lifting power, 0–1, a timed hover taken in. */
    readonly efficiency: Range
    /** Propellers in pairs on one axis: a wide range, since no measured fit covers them. */
    readonly coaxial: boolean
    /** Whether mass and propeller lie among those of measured craft; never for coaxial pairs. */
    readonly validated: boolean
    /** What a timed hover said of the efficiency; null where none was flown. */
    readonly flown: HoverLesson | null
  } | null
  /** A plane in level flight; null for a multirotor, and while something is missing, which the notes name. */
  readonly cruise: {
    readonly speedMS: number
    readonly powerW: Range
    readonly minutes: Range
    readonly distanceKm: Range
    readonly liftToDrag: Range
  } | null
  /**
   * What the cost in `totalWithSpares` is unsure by: each error alone, either way, 19 times in 20;
   * the largest first.
   */
  readonly costDoubt: readonly CostBlame[]
  /** Limits of all that flies and of what is printed, g; null for none. */
  readonly limits: { readonly allUpG: number | null; readonly printedG: number | null }
  /** Flying printed parts less the carbon frame they are compared with; null without one. */
  readonly carbon: CarbonDifference | null
  /** How it stands to its limit, in one sentence: now, how likely, and with growth. */
  readonly standing: string
  /** Parts without figures: in no sum here, but for the mass of those that were weighed. */
  readonly leftOut: readonly LeftOut[]
  /** What weighings taught of each spool on a printer; empty where none was made. */
  readonly learned: readonly Learned[]
  readonly habits: HabitsReport
  /** What the clock taught of the printer; null where no print was timed. */
  readonly learnedHours: LearnedHours | null
  /** Every reading of scale and clock and what came of it; `value` is net, g or s by the clock. */
  readonly readings: readonly (Omit<ToldReading, 'id' | 'fate'> & {
    readonly outcome: ReadingFate
  })[]
  /**
   * What is printed at once, spares too, the shortest first. Their hours share starts and least layer
   * times; those of `total` count every piece as printed by itself.
   */
  readonly runs: readonly RunReport[]
  /** Where pieces that fly meet, and the screws that hold them; the bought items are typed and know nothing of it. */
  readonly joints: readonly JointReport[]
  /** What has to be known besides: parts left out, cautions. */
  readonly notes: readonly string[]
}

export function frameReport(
  frame: Frame,
  reports: readonly PartReport[],
  { sum, standings, odds, twin, balance, wing, flight, costBlame, cautions }: AircraftReport,
  runs: FrameRuns,
  complaints: readonly string[],
  locale?: string,
): FrameReport {
  const { ledger } = sum
  const { currency } = frame.prices
  const rows = new Map(sum.rows.map((row) => [row.part.id, row]))
  const parts = frame.parts.flatMap((part, i): FramePart[] => {
    const { id, name, quantity, spares } = part
    const report = reports[i]
    const row = rows.get(id)
    if (report === undefined) return []
    const facts = { name, quantity, spares, role: roleNameOf(part, frame) }
    if (isFailed(report)) {
      return [{ ...report, ...facts, ...(row === undefined ? {} : { massG: row.pieceG }) }]
    }
    if (row === undefined || row.figures === null) return []
    return [{ ...report, ...learnedFigures(row, row.figures, currency), ...facts }]
  })
  return {
    frame: frame.name,
    parts,
    total: totalOf(sum.printed, sum, parts, currency),
    totalWithSpares: totalOf(sum.withSpares, sum, parts, currency),
    ledger: {
      lines: ledger.lines.map(({ name, group, status, quantity, massG, costEach }) => ({
        name,
        group,
        status,
        quantity,
        massG,
        costEach,
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
    runs: runs.runs,
    joints: jointReports(frame),
    notes: [
      ...complaints,
      ...runs.notes,
      ...roleNotes(frame),
      ...cruiseNotes(wing?.cruise),
      ...(flight?.notes ?? []).map(({ message }) => message),
      ...cautions.map(({ message }) => message),
    ],
  }
}

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
