import type { Range } from '../core/model/figures.ts'
import type { Cruise, CruiseFigures } from '../core/aircraft/flight/cruise.ts'
import type { CostBlame } from '../core/frame/costBlame.ts'
import type { LedgerLine } from '../core/frame/ledger.ts'
import type { Verdict } from '../core/frame/odds.ts'
import type { AircraftReport } from '../core/aircraft/report/types.ts'
import { isFailed, sumParts } from './report.ts'
import type { FailedPart, PricedPart, TotalReport } from './report.ts'

/** What every part of a frame says besides its figures, which are of one piece. */
interface FramePartFacts {
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  readonly spares: number
}

export type FramePart = (PricedPart | FailedPart) & FramePartFacts

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
    /** 0–1. */
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
  /** First bending of each arm, up and down, beside the turns of a propeller and the passes of its blades in hover, a second. */
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
    /** Whether mass and propeller lie among those of measured craft. */
    readonly validated: boolean
  } | null
  /** A plane in level flight; null for a multirotor, and while something is missing, which the notes name. */
  readonly cruise: {
    readonly speedMS: number
    readonly powerW: Range
    readonly minutes: Range
    readonly distanceKm: Range
    readonly liftToDrag: Range
  } | null
  /** What the cost in `totalWithSpares` is unsure by: each error alone, either way, 19 times in 20; the largest first. */
  readonly costDoubt: readonly CostBlame[]
  /** What has to be known besides: parts left out, cautions. */
  readonly notes: readonly string[]
}

export function frameReport(
  frame: string,
  currency: string,
  parts: readonly FramePart[],
  { ledger, standings, odds, twin, balance, wing, flight, costBlame, cautions }: AircraftReport,
  complaints: readonly string[],
): FrameReport {
  return {
    frame,
    parts,
    total: totalOf(parts, currency, ({ quantity }) => quantity),
    totalWithSpares: totalOf(parts, currency, ({ quantity, spares }) => quantity + spares),
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
      chanceBelow,
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
      validated: flight.validated,
    },
    cruise: wing === null || wing.cruise.figures === null ? null : cruiseOf(wing.cruise.figures),
    costDoubt: costBlame,
    notes: [
      ...complaints,
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

function totalOf(
  parts: readonly FramePart[],
  currency: string,
  pieces: (part: FramePartFacts) => number,
): TotalReport {
  const priced = parts.filter((part): part is PricedPart & FramePartFacts => !isFailed(part))
  return {
    quantity: priced.reduce((sum, part) => sum + pieces(part), 0),
    ...sumParts(priced, pieces, currency),
    failed: parts.length - priced.length,
  }
}
