import { formatWithUnit } from '../words/format.ts'
import type { Unfit } from './types.ts'

/** Why a piece goes on no bed, in one sentence with what would help. */
export function unfitWords(name: string, unfit: Unfit, locale?: string): string {
  const { why, partMm, limitMm, wayOut } = unfit
  const mm = (value: number): string => formatWithUnit(value, 'mm', locale)
  const help =
    wayOut === null
      ? 'none of the ways it can lie fits either; divide it, or choose a larger printer'
      : `it fits laid like this: ${wayOut.name.toLowerCase()}`
  return `${name} is in no print run: ${why}, ${mm(partMm)} where the bed leaves ${mm(limitMm)}; ${help}.`
}

/** A caution for a plastic that drinks. */
export function dryingWords(plastic: string): string {
  return (
    `${plastic} drinks water from the air within a night or two: printed wet it strings, bubbles and ` +
    'weighs otherwise. Dry it first as its maker says, some hours as a rule, and keep it in a box.'
  )
}
