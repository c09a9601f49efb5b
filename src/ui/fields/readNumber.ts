import { parseNumber } from '../../core/words/parseNumber.ts'
import { refusedWords, type Bounds } from './numberWords.ts'

/** What was typed, or why it will not do: the whole text is taken or none of it. */
export function readNumber(
  text: string,
  bounds: Bounds,
): { readonly value: number } | { readonly refused: string } {
  if (text.trim() === '') return { refused: refusedWords('empty', bounds) }
  const value = parseNumber(text)
  if (value === null) return { refused: refusedWords('no number', bounds) }
  const { min = -Infinity, max = Infinity, whole } = bounds
  if (value < min || value > max || !Number.isFinite(value)) {
    return { refused: refusedWords('outside', bounds) }
  }
  if (whole && !Number.isInteger(value)) return { refused: refusedWords('fraction', bounds) }
  return { value }
}
