import type { Range } from '../../model/figures.ts'
import { addRanges, scaleRange } from '../../model/ranges.ts'
import { firstBreakShares } from './firstBreak.ts'
import { poissonAtMost, poissonBeyond, sparesFor } from './poisson.ts'
import { seededRandom } from './random.ts'
import { playSeasons } from './simulate.ts'

/** A part that can break, on one of the frames. */
export interface SeasonLine {
  readonly partId: string
  readonly name: string
  /** Chance that one crash breaks one piece, 0–1. */
  readonly breaksPerCrash: number
  /** Pieces in the bag when the season starts. */
  readonly spares: number
  readonly pieceCost: Range
  /** On the ground until a piece is there that is not in the bag. */
  readonly waitDays: Range
}

/** How a part fares over the season. */
export interface LineOutcome {
  readonly partId: string
  readonly name: string
  /** Pieces to expect broken. */
  readonly breaks: number
  /** Chance (0–1) that more break than there are spares. */
  readonly runOut: number
  /** Spares with which that chance stays below 5 %. */
  readonly sparesWanted: number
  /**
   * Chance that this part is what breaks first; where a crash breaks several each counts its share,
   * so that all sum to 1.
   */
  readonly firstToBreak: number
}

/**
 * A season on one frame. `mid` is what to expect; the ends hold nine seasons in ten, at the low and
 * high piece prices.
 */
export interface SeasonSide {
  readonly crashes: number
  /** Likeliest to break first, first. */
  readonly lines: readonly LineOutcome[]
  /** Flights until something breaks, on average; null when nothing can. */
  readonly flightsToFirst: number | null
  /** Frame, spares and what is bought or printed beyond them. */
  readonly cost: Range
  /** Days without an aircraft, as if nothing were ever waited for together. */
  readonly groundedDays: Range
}

const BAND = { low: 0.05, high: 0.95 }
const SEED = 20_417
/** More crashes than any season holds: beyond, a play would only take long. */
const MOST_CRASHES = 100_000

/**
 * Expected breaks, cost and days of one frame in closed form: crashes come at random (Poisson), and
 * each breaks a part with its own chance, so that breaks of a part are Poisson with mean crashes ×
 * chance. Spares cover the first breaks; each one beyond costs a piece and its wait. The band comes
 * from seeded made-up seasons.
 */
export function seasonSide(
  season: { readonly flights: number; readonly crashesPerFlight: number },
  lines: readonly SeasonLine[],
  firstCost: Range,
): SeasonSide {
  const crashes = Math.min(MOST_CRASHES, atLeast0(season.flights * season.crashesPerFlight))
  const usable = lines.map((line) => ({
    ...line,
    breaksPerCrash: Math.min(1, atLeast0(line.breaksPerCrash)),
    spares: Math.floor(atLeast0(line.spares)),
  }))
  const damaging = 1 - usable.reduce((whole, line) => whole * (1 - line.breaksPerCrash), 1)
  const first = firstBreakShares(usable.map((line) => line.breaksPerCrash))
  const perFlight = atLeast0(season.crashesPerFlight) * damaging
  const started = usable.reduce(
    (sum, line) => addRanges(sum, scaleRange(line.pieceCost, line.spares)),
    firstCost,
  )
  const beyond = usable.map((line) => poissonBeyond(line.spares, crashes * line.breaksPerCrash))
  const expected = (pick: (line: SeasonLine) => Range): number =>
    usable.reduce((sum, line, i) => sum + pick(line).mid * (beyond[i] ?? 0), 0)
  const band = playedBand(crashes, usable)
  return {
    crashes,
    lines: usable
      .map((line, i) => outcomeOf(line, crashes, first[i] ?? 0))
      .toSorted((a, b) => b.firstToBreak - a.firstToBreak),
    flightsToFirst: perFlight > 0 ? 1 / perFlight : null,
    cost: around(
      started,
      expected((line) => line.pieceCost),
      band((line) => line.pieceCost),
    ),
    groundedDays: around(
      { low: 0, mid: 0, high: 0 },
      expected((line) => line.waitDays),
      band((line) => line.waitDays),
    ),
  }
}

function outcomeOf(line: SeasonLine, crashes: number, firstToBreak: number): LineOutcome {
  const breaks = crashes * line.breaksPerCrash
  return {
    partId: line.partId,
    name: line.name,
    breaks,
    runOut: 1 - poissonAtMost(line.spares, breaks),
    sparesWanted: sparesFor(breaks),
    firstToBreak,
  }
}

type Band = readonly [low: number, high: number]

/** What the breaks beyond the spares add up to at either end of the band. */
function playedBand(
  crashes: number,
  lines: readonly SeasonLine[],
): (pick: (line: SeasonLine) => Range) => Band {
  const { seasons, breaks } = playSeasons(crashes, lines, seededRandom(SEED))
  const totals = (each: (line: SeasonLine) => number): Float64Array =>
    Float64Array.from({ length: seasons }, (_, season) =>
      lines.reduce((sum, line, l) => {
        const broken = breaks[season * lines.length + l] ?? 0
        return sum + Math.max(0, broken - line.spares) * each(line)
      }, 0),
    ).toSorted()
  return (pick) => [
    quantile(
      totals((line) => pick(line).low),
      BAND.low,
    ),
    quantile(
      totals((line) => pick(line).high),
      BAND.high,
    ),
  ]
}

function quantile(sorted: Float64Array, share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0
}

/**
 * Rare breaks can be expected beyond 95 % of the seasons: the band is then opened to hold the mean.
 */
function around(start: Range, mean: number, [low, high]: Band): Range {
  return {
    low: start.low + Math.min(low, mean),
    mid: start.mid + mean,
    high: start.high + Math.max(high, mean),
  }
}

function atLeast0(value: number): number {
  return value > 0 ? value : 0
}
