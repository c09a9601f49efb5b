import { formatTyped } from '../../core/words/format.ts'

/** Decimals at most of what was typed. */
export const FINEST = 6
/** Share of itself by which a number may miss what was typed: per cent are kept as shares. */
const DUST = 1e-11

/**
 * A number as its box shows it. One that can have been typed stands as finely as it was, today and
 * at the next load, since that is what counts; of any other, which was worked out, `digits` are
 * shown. `finest` decimals can have been typed: `digits` in a unit that it is not kept in, where a
 * plain number of the other unit would look typed, 6 for a square decimetre as 0.387096 for a
 * square inch. `locale` as in `core/words/format.ts`.
 */
export function shownNumber(
  value: number,
  digits: number,
  finest: number = FINEST,
  locale?: string,
): string {
  const typed = Number(value.toFixed(finest))
  const isTyped = Math.abs(value - typed) <= DUST * Math.abs(value)
  return isTyped ? formatTyped(typed, finest, locale) : formatTyped(value, digits, locale)
}
