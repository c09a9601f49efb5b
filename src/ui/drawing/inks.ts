import type { LedgerRow } from '../../state/store/derived.ts'
import { showGrams, showNumber } from '../show.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

/** What the tones of the drawing tell. */
export const INKS = [
  { id: 'light', words: 'light' },
  { id: 'grams', words: 'grams' },
  { id: 'doubt', words: 'doubt' },
  { id: 'plastic', words: 'plastic' },
] as const

export type InkId = (typeof INKS)[number]['id']

/** The figure or word beside an item's number: a tone alone tells nothing. */
export function inkWords(ink: InkId, { sum, material }: LedgerRow): string {
  if (ink === 'plastic') return material.name
  if (sum === null) return ''
  const { massG } = sum.flying
  return ink === 'doubt'
    ? `± ${showNumber(50 * doubtOf(massG), 1)} %`
    : `${showGrams(massG).mid} ${massUnit()}`
}

/** How dark each part is, 0–1 by part id; none where light alone tones the faces. */
export function inkDepths(ink: InkId, rows: readonly LedgerRow[]): ReadonlyMap<string, number> {
  if (ink === 'light') return new Map()
  if (ink === 'plastic') {
    const plastics = [...new Set(rows.map(({ material }) => material.id))]
    const last = Math.max(1, plastics.length - 1)
    return new Map(
      rows.map(({ part, material }) => [part.id, plastics.indexOf(material.id) / last]),
    )
  }
  const values = rows.flatMap(({ part, sum }) =>
    sum === null
      ? []
      : [[part.id, ink === 'grams' ? sum.flying.massG.mid : doubtOf(sum.flying.massG)] as const],
  )
  const most = Math.max(...values.map(([, value]) => value)) || 1
  return new Map(values.map(([id, value]) => [id, value / most]))
}

/** Width of a range as a share of its middle. */
function doubtOf({ low, mid, high }: { low: number; mid: number; high: number }): number {
  return mid > 0 ? (high - low) / mid : 0
}
