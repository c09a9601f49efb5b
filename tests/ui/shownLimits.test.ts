import { afterEach, describe, expect, it } from 'vitest'
import { keptOf, METRIC, shownAs, showUnits } from '../../src/core/words/shownUnits.ts'
import { LIMIT_ROWS } from '../support/limitRows.ts'
import { shownLimits, shownStep } from '../../src/ui/fields/shownLimits.ts'

afterEach(() => {
  showUnits(METRIC)
})

/** Every limit of a length, mass or area in the one table, by the unit at the end of its name. */
const MEASURED = LIMIT_ROWS.flatMap(([name, limits]) => {
  const unit = /\.[a-z]\w*(Mm|G|Dm2)$/.exec(name)?.[1]
  return unit === undefined
    ? []
    : [[name, { Mm: 'mm', G: 'g', Dm2: 'dm²' }[unit] ?? '', limits] as const]
})

describe('limits in inches and ounces', () => {
  it('cover every length and mass that can be typed', () => {
    expect(MEASURED.length).toBeGreaterThan(20)
  })

  it.each(MEASURED)('of %s in %s are taken as they are told', (_, unit, limits) => {
    showUnits({ length: 'in', mass: 'oz' })
    const as = shownAs(unit)
    const shown = shownLimits(limits, as)
    for (const told of [shown.min, shown.max]) {
      const kept = keptOf(told, as)
      expect(kept).toBeGreaterThanOrEqual(limits.min)
      expect(kept).toBeLessThanOrEqual(limits.max)
    }
    // Nothing of note is lost at either end.
    expect(shown.max * as.per).toBeCloseTo(limits.max, 5 - Math.ceil(Math.log10(limits.max + 1)))
    expect(shown.min - limits.min / as.per).toBeLessThanOrEqual(
      Math.max(1e-6, (1e-5 * Math.abs(limits.min)) / as.per),
    )
  })

  it('step by 1, 2 or 5', () => {
    showUnits({ length: 'in', mass: 'oz' })
    expect(shownStep(1, shownAs('mm'))).toBe(0.05)
    expect(shownStep(0.1, shownAs('mm'))).toBe(0.005)
    expect(shownStep(10, shownAs('g'))).toBe(0.5)
    showUnits(METRIC)
    expect(shownStep(0.3, shownAs('mm'))).toBe(0.3)
  })
})
