import { describe, expect, it } from 'vitest'
import { savingOf, worthOf, type StepSaving } from '../../../src/core/choose/stepSavings.ts'
import type { TriedWay } from '../../../src/core/choose/partOptions.ts'
import { NO_DOUBT, printedPart } from '../../support/ledgerParts.ts'

/** Grams with one shared error and one of its own, as standard deviations. */
function tried(massG: number, shared: number, own: number, stiffness = 1): TriedWay {
  const { figures } = printedPart('arm', massG, 1)
  const errors = [{ id: 'density', name: 'Density', effect: shared }]
  return {
    figures: { ...figures!, doubt: { ...NO_DOUBT, mass: { shared: errors, own } } },
    massG,
    timeS: 60 * massG,
    cost: massG / 50,
    stiffness,
    gives: null,
  }
}

describe('savingOf', () => {
  it('feels a shared error only by the plastic that differs', () => {
    // 10 g less at 3 % of density: 0.3 g, twice that either side holds 95 % (normal tables).
    const { massG } = savingOf(tried(50, 0.03, 0), tried(40, 0.03, 0), true)
    expect(massG.mid).toBe(-10)
    expect(massG.low).toBeCloseTo(-10 - 2 * 0.3, 1)
    expect(massG.high).toBeCloseTo(-10 + 2 * 0.3, 1)
  })

  it('adds the errors of two counts, and those of one count only by what differs', () => {
    // √(0.5² + 0.4²) g against 0.1 g.
    const anew = savingOf(tried(50, 0, 0.01), tried(40, 0, 0.01), true).massG
    const same = savingOf(tried(50, 0, 0.01), tried(40, 0, 0.01), false).massG
    expect((anew.high - anew.low) / (same.high - same.low)).toBeCloseTo(Math.sqrt(41), 1)
  })

  it('tells what of the stiffness goes', () => {
    expect(savingOf(tried(50, 0, 0), tried(40, 0, 0, 0.9), true).stiffnessLost).toBeCloseTo(0.1, 12)
    expect(savingOf(tried(50, 0, 0), tried(40, 0, 0, Infinity), true).stiffnessLost).toBeNull()
  })
})

describe('worthOf', () => {
  const saving = (savedG: number, stiffnessLost: number, timeS = -60): StepSaving => ({
    massG: { low: -savedG, mid: -savedG, high: -savedG },
    timeS,
    cost: -0.1,
    stiffnessLost,
  })
  const best = (all: readonly StepSaving[], by: 'grams' | 'stiffness' | 'hours' | 'cost') =>
    all.toSorted((a, b) => worthOf(b, by) - worthOf(a, by)).map((one) => all.indexOf(one))

  it('ranks by grams, or by grams for what is lost, what loses nothing first', () => {
    const all = [saving(4, 0.2), saving(3, 0.1), saving(0.5, 0), saving(1, -0.1)]
    expect(best(all, 'grams')).toEqual([0, 1, 3, 2])
    // Nothing lost: 1 g before 0.5; then 30 g and 20 g for the whole stiffness.
    expect(best(all, 'stiffness')).toEqual([3, 2, 1, 0])
    // None takes longer.
    expect(best(all, 'hours')).toEqual([0, 1, 3, 2])
    expect(best([...all, saving(9, 0, 3600)], 'hours')).toEqual([0, 1, 3, 2, 4])
  })
})
