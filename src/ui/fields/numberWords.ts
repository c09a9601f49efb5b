import { formatTyped } from '../../core/words/format.ts'

/** What a number box takes. */
export interface Bounds {
  readonly min?: number
  readonly max?: number
  readonly whole: boolean
  readonly unit?: string
}

type Refusal = 'empty' | 'no number' | 'fraction' | 'outside'

/** Why a text was not taken and what would be, in one or two short sentences. */
export function refusedWords(why: Refusal, bounds: Bounds): string {
  const taken = `Takes ${spanWords(bounds)}`
  if (why === 'outside') return `${taken}.`
  if (why === 'fraction') return `Whole numbers only. ${taken}.`
  if (why === 'empty') return `Needs a number. ${taken}.`
  return `This is not a number. ${taken}, without words or signs.`
}

/** "1 to 500 g". */
function spanWords({ min, max, whole, unit }: Bounds): string {
  const behind = unit === undefined || unit.startsWith('=') ? '' : `\u{A0}${unit}`
  const show = (value: number) => formatTyped(value, 6)
  if (min !== undefined && max !== undefined) return `${show(min)} to ${show(max)}${behind}`
  if (min !== undefined) return `${show(min)}${behind} or more`
  if (max !== undefined) return `${show(max)}${behind} or less`
  return whole ? 'whole numbers' : 'any number'
}
