import type { Range } from '../core/model/figures.ts'
import type { HoverLesson } from '../core/aircraft/flight/flown.ts'
import type { FitCheck } from '../core/drill/fitChecks.ts'
import type { CostBlame } from '../core/frame/costBlame.ts'
import type { Learned, LearnedHours } from '../core/frame/learned.ts'
import type { LedgerLine } from '../core/frame/ledger.ts'
import type { Verdict } from '../core/frame/odds.ts'
import type { JointFinding } from '../core/aircraft/report/jointFindings.ts'
import type { ClashFinding } from '../core/aircraft/report/clashFindings.ts'
import type { CarbonDifference, LeftOut, ReadingFate, ToldReading } from '../core/frame/types.ts'
import type { RunReport, RunsReport, ShelfReport } from './frameRuns.ts'
import type { DrillReport } from './frameDrill.ts'
import type { JointReport } from './frameScrews.ts'
import type { StiffnessReport } from './frameStiffness.ts'
import type { HabitsReport } from './habits.ts'
import type { FailedPart, PricedPart, TotalReport } from './report.ts'

/** What every part of a frame says besides its figures, which are of one piece. */
interface FramePartCounts {
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  readonly spares: number
  /** Name of the role its recipe came from, one of the builder's own included; null for none. */
  readonly role: string | null
}

/** Figures of one piece, after what scale and clock taught. */
export interface FramePricedPart extends PricedPart {
  /** Middle grams of one piece before anything was weighed. */
  readonly calculatedG: number
}

/** Without figures; it counts all the same where its pieces were weighed as they are. */
interface FrameFailedPart extends FailedPart {
  /** Of one piece, by the scale: in every mass, while cost and hours are without the part. */
  readonly massG?: Range
}

export type FramePart = (FramePricedPart | FrameFailedPart) & FramePartCounts

/** What `--frame --json` prints. Field names and meanings are stable. */
export interface FrameReport {
  readonly frame: string
  readonly parts: readonly FramePart[]
  /** Flying pieces of the parts that could be priced; `quantity` is their number. */
  readonly total: TotalReport
  /** The same with the spares. */
  readonly totalWithSpares: TotalReport
  readonly ledger: {
    /** `massG` and `costEach` are of one piece; `costEach` null where only the scale knows it. */
    readonly lines: readonly (Pick<
      LedgerLine,
      'name' | 'group' | 'status' | 'quantity' | 'massG'
    > & { readonly costEach: number | null })[]
    readonly basicMassG: number
    readonly growthG: number
    readonly predictedMassG: number
    readonly limitG: number | null
    readonly marginG: number | null
  }
  /**
   * Chance to end below the frame's own limit, where it has one, and below each mass line; growth
   * is not added.
   */
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
   * First tone of each arm, `stiffness[].firstHz` unless its free length is typed (then that of a
   * beam of its sections so long), beside the turns of a propeller and the passes of its
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
  /**
   * Of each arm, or of every part where that was asked: held at its joints or an end, pushed at the
   * other. No licence to fly over people: printed plastic scatters, creeps and ages.
   */
  readonly stiffness: readonly StiffnessReport[]
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
  /**
   * A plane in level flight; null for a multirotor, and while something is missing, which the notes
   * name.
   */
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
   * What is printed at once, spares too, in the order it is started. Their hours share starts and
   * least layer times, and with their money are those of `totalWithSpares`.
   */
  readonly runs: readonly RunReport[]
  /** Hours until the last run is done: printers one after the other, and side by side. */
  readonly finish: RunsReport['finish']
  /** What stays on the spools named with `--spools`, and what is to be bought; null without. */
  readonly shelf: ShelfReport | null
  /** Every hole of one piece of each part: what it is for, and the drill to fetch. */
  readonly drill: readonly DrillReport[]
  /**
   * What was drawn against what is bought: bolts, dampers, patterns of boards and motors, and what
   * is short.
   */
  readonly fits: readonly Omit<FitCheck, 'itemId'>[]
  /**
   * Where pieces that fly meet, and the screws that hold them, which the ledger has among what is
   * bought.
   */
  readonly joints: readonly JointReport[]
  /** The order in which joined pieces go together, a sentence a step. */
  readonly assembly: readonly string[]
  /** What is left over or wrong where pieces are joined; `code` is stable, `message` is not. */
  readonly jointFindings: readonly Pick<JointFinding, 'code' | 'message'>[]
  /**
   * What runs into what where the frame is put together, with the volume; `code` is stable,
   * `message` is not.
   */
  readonly clashes: readonly ClashFinding[]
  /** What has to be known besides: parts left out, cautions. */
  readonly notes: readonly string[]
}
