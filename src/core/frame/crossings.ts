import type { MassLine } from '../model/aircraft.ts'
import type { AircraftLedger } from './ledger.ts'
import { RULES_NOTE } from '../data/massLines.ts'
import { formatAll } from '../words/format.ts'
import { isTooClose } from './odds.ts'
import { shownOf, shownAs } from '../words/shownUnits.ts'

/** Where a mass stands against one line. */
export interface LineStanding {
  readonly line: MassLine
  /** Strictly below. */
  readonly below: boolean
  /** Threshold − mass: what is left, negative from the line on. g */
  readonly leftG: number
}

/** Stands of a mass (g) against every line, in the order of the lines. */
export function crossings(massG: number, lines: readonly MassLine[]): readonly LineStanding[] {
  return lines.map((line) => ({
    line,
    below: massG < line.thresholdG,
    leftG: line.thresholdG - massG,
  }))
}

/** Lines a change of mass has crossed, with the standing after it. */
export function crossedLines(
  beforeG: number,
  afterG: number,
  lines: readonly MassLine[],
): readonly LineStanding[] {
  return crossings(afterG, lines).filter(({ line, below }) => beforeG < line.thresholdG !== below)
}

/** What of an aircraft's sums is held against lines. */
export type MassStanding = Pick<AircraftLedger, 'basicMassG' | 'limitG' | 'marginG'>

/**
 * What to say at once when a change took the aircraft over a mass line or its own limit, or back
 * below it; null when it crossed none. Within 3 % of a line it is never a bare yes or no.
 */
export function crossingWords(
  before: MassStanding,
  after: MassStanding,
  lines: readonly MassLine[],
  locale?: string,
): string | null {
  // Tenths, and hundredths where tenths would round onto the line.
  const as = shownAs('g')
  const grams = (massG: number): string =>
    `${formatAll(shownOf(massG, as), 2 + as.finer, locale)} ${as.label}`
  const words: string[] = []
  const crossed = crossedLines(before.basicMassG, after.basicMassG, lines)
  if (crossed.length > 0) {
    const names = crossed.map(({ line }) => line.name).join(', ')
    const way = crossed[0]?.below === true ? 'now below' : 'no longer below'
    const near = crossed.some(({ line }) => isTooClose(after.basicMassG, line.thresholdG))
    const massText = `${grams(after.basicMassG)} all-up`
    const note = RULES_NOTE.charAt(0).toUpperCase() + RULES_NOTE.slice(1)
    words.push(`${massText}: ${way} ${names}${near ? UNSURE : ''}. ${note}.`)
  }
  const { limitG, marginG } = after
  if (limitG === null || marginG === null || before.marginG === null) return joined(words)
  if (marginG < 0 !== before.marginG < 0) {
    const unsure = isTooClose(limitG - marginG, limitG) ? UNSURE : ''
    const apart = grams(Math.abs(marginG))
    words.push(
      marginG < 0
        ? `Over your mass limit by ${apart}, growth included${unsure}.`
        : `Back within your mass limit, ${apart} to spare after growth${unsure}.`,
    )
  }
  return joined(words)
}

const UNSURE = ', too close to be sure'

function joined(words: readonly string[]): string | null {
  return words.length > 0 ? words.join(' ') : null
}
