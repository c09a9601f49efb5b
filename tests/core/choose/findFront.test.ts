import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findFront } from '../../../src/core/choose/findFront.ts'
import type { Ceilings, Option, PartOptions, Worth } from '../../../src/core/choose/types.ts'
import { asWanted } from '../../../src/core/choose/wants.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { allWorths } from '../../support/allWorths.ts'

const WAY = { recipe: RECIPE_DEFAULTS, materialId: 'pla' }

/** The slow obvious way: every assignment there is, and of them those that no other beats. */
function everyFront(parts: readonly PartOptions[], ceilings: Ceilings): readonly Worth[] {
  const all = allWorths(parts)
  const { massG = Infinity, timeS = Infinity, cost = Infinity } = ceilings
  const within = all.filter((a) => a.massG <= massG && a.timeS <= timeS && a.cost <= cost)
  const asGood = (a: Worth, b: Worth): boolean =>
    a.massG <= b.massG && a.timeS <= b.timeS && a.cost <= b.cost && a.stiffness >= b.stiffness
  const front = within.filter((a) => !within.some((b) => asGood(b, a) && !asGood(a, b)))
  return [...new Map(front.map((a) => [keyOf(a), a])).values()]
}

const keyOf = ({ massG, timeS, cost, stiffness }: Worth) =>
  [massG, timeS, cost, stiffness].join(' ')

function search(parts: readonly PartOptions[], ceilings: Ceilings = {}) {
  const steps = findFront(parts, ceilings)
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

// Whole numbers, so that sums are exact in whatever order; few of them, so that many are equal.
const option = (most: number): fc.Arbitrary<Option> =>
  fc.record({
    massG: fc.nat(most),
    timeS: fc.nat(most),
    cost: fc.nat(most),
    stiffness: fc.oneof(
      { weight: 5, arbitrary: fc.nat(6).map((n) => n / 4) },
      fc.constant(Infinity),
    ),
    way: fc.constant(WAY),
    census: fc.constant(null),
    gives: fc.record({ deflectionMm: fc.integer({ min: 1, max: 9 }), firstHz: fc.nat(9) }),
  })
const frame = (most: number): fc.Arbitrary<readonly PartOptions[]> =>
  fc.array(
    fc.record({
      partId: fc.string(),
      options: fc.array(option(most), { minLength: 1, maxLength: 7 }),
    }),
    { minLength: 1, maxLength: 4 },
  )
const ceiling = fc.option(fc.nat(60), { nil: undefined })
const ceilings = fc
  .record({ massG: ceiling, timeS: ceiling, cost: ceiling })
  .map((given): Ceilings =>
    Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)),
  )

describe('findFront', () => {
  it('finds what trying all assignments finds, on 200 frames of up to 4 parts and 7 options', () => {
    let several = 0
    fc.assert(
      fc.property(fc.oneof(frame(4), frame(30)), ceilings, (parts, given) => {
        const found = search(parts, given)
        const wanted = everyFront(parts, given)
        if (wanted.length > 1) several++
        expect(found.map(keyOf).toSorted()).toEqual(wanted.map(keyOf).toSorted())
      }),
      { numRuns: 200, seed: 15 },
    )
    // A front of one point would be found by nearly anything.
    expect(several).toBeGreaterThan(80)
  })

  it('finds the same with limits of single parts, where trying all keeps only assignments that meet them', () => {
    const limit = fc.record(
      { deflectionMm: fc.integer({ min: 1, max: 8 }), firstHz: fc.integer({ min: 1, max: 8 }) },
      { requiredKeys: [] },
    )
    let fewer = 0
    fc.assert(
      fc.property(frame(12), ceilings, fc.array(limit, { maxLength: 4 }), (given, most, limits) => {
        const parts = given.map((one, i) => ({ ...one, partId: String(i) }))
        const gives = new Map(limits.map((one, i) => [String(i), one]))
        const wants = { floors: new Map(), free: new Set<string>(), gives }
        // The slow way asks of each option what the limit says, on its own.
        const meet = (partId: string, { gives: own }: Option): boolean => {
          const { deflectionMm, firstHz } = gives.get(partId) ?? {}
          if (deflectionMm !== undefined && !((own?.deflectionMm ?? 99) <= deflectionMm))
            return false
          return firstHz === undefined || (own?.firstHz ?? 0) >= firstHz
        }
        const kept = parts.map(({ partId, options }) => ({
          partId,
          options: options.filter((one) => meet(partId, one)),
        }))
        const wanted = everyFront(kept, most)
        if (wanted.length < everyFront(parts, most).length) fewer++
        const pruned = asWanted(parts, wants)
        const found = pruned.some(({ options }) => options.length === 0) ? [] : search(pruned, most)
        expect(found.map(keyOf).toSorted()).toEqual(wanted.map(keyOf).toSorted())
      }),
      { numRuns: 200, seed: 19 },
    )
    expect(fewer).toBeGreaterThan(40)
  })

  it('hands out assignments that are worth what it says, lightest first', () => {
    fc.assert(
      fc.property(frame(30), (parts) => {
        const found = search(parts)
        for (const one of found) {
          const picked = one.options
          expect(picked).toHaveLength(parts.length)
          expect(picked.every((each, i) => parts[i]!.options.includes(each))).toBe(true)
          expect(picked.reduce((sum, { massG }) => sum + massG, 0)).toBe(one.massG)
          expect(picked.reduce((sum, { timeS }) => sum + timeS, 0)).toBe(one.timeS)
          expect(picked.reduce((sum, { cost }) => sum + cost, 0)).toBe(one.cost)
          expect(Math.min(...picked.map(({ stiffness }) => stiffness))).toBe(one.stiffness)
        }
        const masses = found.map(({ massG }) => massG)
        expect(masses).toEqual(masses.toSorted((a, b) => a - b))
      }),
      { numRuns: 100, seed: 16 },
    )
  })

  it('may be left between two steps and gone on with', () => {
    const parts = fc.sample(frame(30), { numRuns: 1, seed: 17 })[0]!
    const steps = findFront(parts)
    const first = steps.next()
    expect(first.done).toBe(false)
    // Another search in between changes nothing.
    expect(search(parts)).toEqual(search(parts))
    let step = steps.next()
    while (step.done !== true) step = steps.next()
    expect(step.value).toEqual(search(parts))
  })

  it('finds nothing where the ceilings are too low, and everything of a frame without parts', () => {
    const parts = [
      {
        partId: 'arm',
        options: [{ massG: 5, timeS: 5, cost: 5, stiffness: 1, way: WAY, census: null }],
      },
    ]
    expect(search(parts, { massG: 4.9 })).toEqual([])
    expect(search(parts, { massG: 5 })).toHaveLength(1)
    expect(search([])).toEqual([{ massG: 0, timeS: 0, cost: 0, stiffness: Infinity, options: [] }])
  })
})
