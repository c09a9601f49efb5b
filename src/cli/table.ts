import {
  formatFilament,
  formatHours,
  formatMass,
  formatMoney,
  formatRange,
} from '../core/words/format.ts'
import { coarseWords, piecesWords } from '../core/frame/sayings.ts'
import { placeWords } from '../core/mesh/placeWords.ts'
import { plateWords } from '../core/mesh/plateWords.ts'
import type { Range } from '../core/model/figures.ts'
import { isFailed } from './report.ts'
import type { PriceReport, PricedPart, TotalReport } from './report.ts'

export const HEAD = ['part', 'mass', 'likely', 'filament', 'cost', 'likely', 'time', 'likely']

/** The report as aligned text, failures and findings below. Ends with a line feed. */
export function tableOf({ parts, total }: PriceReport, locale?: string): string {
  const priced = parts.filter((part): part is PricedPart => !isFailed(part))
  const rows = priced.map((part) => [part.file, ...cellsOf(part, locale)])
  const pieces = total.priced * total.quantity
  const coarse = total.coarse === 0 ? '' : `, ${coarseWords(total.coarse)}`
  const words = `total, ${piecesWords(pieces, 0)}${coarse}`
  const sum = [words, ...cellsOf(total, locale)]
  const lines = priced.length > 0 ? align([HEAD, ...rows, sum]) : []
  for (const part of parts) {
    if (isFailed(part)) {
      const { message } = part.error
      lines.push(
        '',
        `Not priced: ${message.startsWith(part.file) ? '' : `${part.file}: `}${message}`,
      )
    } else {
      const notes = partNotes(part, locale).map((note) => `  ${note}`)
      if (notes.length > 0) lines.push('', `${part.file}:`, ...notes)
    }
  }
  return `${lines.join('\n').trimStart()}\n`
}

/**
 * What to know of a part, heaviest first, each with what it does to the figures; and what a plate
 * holds.
 */
export function partNotes(
  { findings, plate, zones = [] }: PricedPart,
  locale?: string,
): readonly string[] {
  const notes = findings.map((finding) => {
    const { grade, message } = finding
    return grade === 'note' ? message : `${grade}: ${message}${placeWords(finding, locale)}`
  })
  const missed = zones
    .filter(({ roomMm3 }) => roomMm3 <= 0)
    .map(({ file }) => `The zone “${file}” changes nothing: no infill room of the part lies in it.`)
  return [...notes, ...missed, ...(plate === undefined ? [] : [plateWords(plate)])]
}

/** Mass, filament, cost and time with their ranges. */
export function cellsOf(
  { massG, filamentM, cost, timeS }: Pick<TotalReport, 'massG' | 'filamentM' | 'cost' | 'timeS'>,
  locale: string | undefined,
): string[] {
  const money = (value: number): string => formatMoney(value, cost.currency, locale)
  const mass = (value: number): string => formatMass(value, locale)
  const hours = (value: number): string => formatHours(value, locale)
  const pair = (range: Range, format: (value: number) => string): string[] => [
    format(range.mid),
    formatRange(range, format),
  ]
  return [
    ...pair(massG, mass),
    formatFilament(filamentM, locale),
    ...pair(cost, money),
    ...pair(timeS, hours),
  ]
}

/** First column to the left, the others to the right, two spaces between. */
export function align(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  )
  return rows.map((row) =>
    row
      .map((cell, column) => {
        const space = ' '.repeat((widths[column] ?? 0) - cell.length)
        return column === 0 ? cell + space : space + cell
      })
      .join('  ')
      .replaceAll('\u00a0', ' ')
      .trimEnd(),
  )
}
