import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assignSpools, drinksWater, KEPT_BACK_G } from '../../../src/core/runs/assignSpools.ts'
import { exactRange } from '../../../src/core/model/ranges.ts'

const need = (materialId: string, grams: number) => ({
  materialId,
  material: materialId.toUpperCase(),
  spoolG: exactRange(grams),
})
/** A reel of 200 g with so much to print on it. */
const spool = (id: string, materialId: string, grams: number) => ({
  id,
  materialId,
  grossG: 200 + KEPT_BACK_G + grams,
  emptyG: 200,
})

describe('spools on the shelf', () => {
  test('remnants go first, by hand', () => {
    const shelf = [spool('full', 'petg', 800), spool('rest', 'petg', 60), spool('tpu', 'tpu', 5)]
    const plan = assignSpools([need('petg', 50), need('petg', 150), need('tpu', 12)], shelf)
    expect(plan.runs).toEqual(['rest', 'full', null])
    expect([...plan.leftG]).toEqual([
      ['full', 650],
      ['rest', 10],
      ['tpu', 5],
    ])
    expect(plan.toBuy).toEqual([{ materialId: 'tpu', material: 'TPU', neededG: 12 }])
  })

  test('plans by the high end, and no two runs count on the same plastic', () => {
    const twice = { ...need('petg', 50), spoolG: { low: 45, mid: 50, high: 55 } }
    expect(assignSpools([twice], [spool('a', 'petg', 52)]).runs).toEqual([null])
    expect(assignSpools([twice, twice], [spool('a', 'petg', 60)]).runs).toContain(null)
  })

  test('never more off a spool than is on it, and finishes a run where a lone one could be', () => {
    const grams = fc.integer({ min: 1, max: 300 })
    fc.assert(
      fc.property(
        fc.array(grams, { maxLength: 6 }),
        fc.array(grams, { maxLength: 4 }),
        (runs, reels) => {
          const needs = runs.map((one) => need('pla', one))
          const shelf = reels.map((one, i) => spool(String(i), 'pla', one))
          const plan = assignSpools(needs, shelf)
          for (const [i, one] of reels.entries()) {
            const off = runs.reduce(
              (sum, run, at) => sum + (plan.runs[at] === String(i) ? run : 0),
              0,
            )
            expect(off).toBeLessThanOrEqual(one)
            expect(plan.leftG.get(String(i))).toBe(one - off)
          }
          const missing = runs.reduce((sum, run, at) => sum + (plan.runs[at] === null ? run : 0), 0)
          expect(plan.toBuy.reduce((sum, { neededG }) => sum + neededG, 0)).toBe(missing)
          // What is not finished fits on no spool as they are left.
          for (const [at, run] of runs.entries()) {
            if (plan.runs[at] !== null) continue
            expect(Math.max(0, ...plan.leftG.values())).toBeLessThan(run)
          }
        },
      ),
    )
  })

  test('leaves as little to buy as any choice there is', () => {
    const grams = fc.integer({ min: 1, max: 30 })
    fc.assert(
      fc.property(
        fc.array(grams, { minLength: 1, maxLength: 5 }),
        fc.array(grams, { maxLength: 3 }),
        (runs, reels) => {
          const { toBuy } = assignSpools(
            runs.map((one) => need('pla', one)),
            reels.map((one, i) => spool(String(i), 'pla', one)),
          )
          expect(toBuy.reduce((sum, { neededG }) => sum + neededG, 0)).toBe(leastToBuy(runs, reels))
        },
      ),
    )
  })

  test('by hand: two runs of 50 g rather than one of 90 on a reel of 100', () => {
    const needs = [need('pla', 90), need('pla', 50), need('pla', 50)]
    const { runs, toBuy } = assignSpools(needs, [spool('a', 'pla', 100)])
    expect(runs).toEqual([null, 'a', 'a'])
    expect(toBuy[0]?.neededG).toBe(90)
  })

  test('is done with a shelf of many, too', () => {
    const needs = Array.from({ length: 60 }, (_, i) => need('pla', 10 + (i % 7)))
    const shelf = Array.from({ length: 12 }, (_, i) => spool(String(i), 'pla', 30 + i))
    const { runs, leftG } = assignSpools(needs, shelf)
    expect(runs.filter((one) => one !== null).length).toBeGreaterThan(20)
    for (const left of leftG.values()) expect(left).toBeGreaterThanOrEqual(0)
  })

  test('nylons drink, others are not warned of', () => {
    expect(['pa6', 'pa6-cf', 'pa12', 'pa12-cf'].every(drinksWater)).toBe(true)
    expect(['pla', 'petg', 'pp', 'pc'].some(drinksWater)).toBe(false)
  })
})

/** Of runs that no spool finishes, every choice tried. g */
function leastToBuy([first, ...rest]: readonly number[], reels: readonly number[]): number {
  if (first === undefined) return 0
  const without = first + leastToBuy(rest, reels)
  const withIt = reels.map((reel, i) =>
    reel < first ? Infinity : leastToBuy(rest, reels.with(i, reel - first)),
  )
  return Math.min(without, ...withIt)
}
