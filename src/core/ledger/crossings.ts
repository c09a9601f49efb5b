import type { MassLine } from '../aircraft.ts'
import { RULES_NOTE } from './massLines.ts'

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

/** "249.9 g is 0.1 g below EU 250 g (read 2026-11-25). …; check your authority's rules". The note is added where an edited line lost it. */
export function standingText(standing: LineStanding, locale?: string): string {
  const { line, below, leftG } = standing
  // Three significant digits would round 249.9 g onto the line.
  const grams = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 })
  const massText = `${grams.format(line.thresholdG - leftG)}\u00a0g`
  const apart = Math.abs(leftG) < 0.005 ? 'just' : `${grams.format(Math.abs(leftG))}\u00a0g`
  const stands =
    leftG === 0 ? 'exactly on, and so not below,' : `${apart} ${below ? 'below' : 'above'}`
  const meaning = line.meaning.endsWith(RULES_NOTE)
    ? line.meaning
    : `${line.meaning.replace(/[.;\s]+$/, '')}; ${RULES_NOTE}`
  return `${massText} is ${stands} ${line.name} (read ${line.readOn}). ${meaning}`
}
