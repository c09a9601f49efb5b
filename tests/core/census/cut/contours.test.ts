import { describe, expect, test } from 'vitest'
import { joinContours } from '../../../../src/core/census/cut/contours.ts'
import type { LayerCut } from '../../../../src/core/census/cut/planeCutter.ts'
import { seededRandom } from '../../../support/random.ts'

/** Segments that share no mesh edge: every end is lone. */
function looseCut(count: number, seed: number, onGrid: boolean): LayerCut {
  const random = seededRandom(seed)
  const place = () => (onGrid ? Math.floor(12 * random()) : 80 * random())
  const points = Float64Array.from({ length: 4 * count }, place)
  return { count, points, edges: Int32Array.from({ length: 4 * count }, (_, i) => i) }
}

/**
 * Every pair of ends sorted by distance, taken one by one: first those of a start with an end that
 * do not close a straight run, then any. The bridges' summed length.
 */
function bridgeSlowly({ count, points }: LayerCut): number {
  const far = (a: number, b: number): number =>
    Math.sqrt(
      (points[2 * a]! - points[2 * b]!) ** 2 + (points[2 * a + 1]! - points[2 * b + 1]!) ** 2,
    )
  const pairs: { a: number; b: number; mm: number }[] = []
  for (let a = 0; a < 2 * count; a++) {
    for (let b = a + 1; b < 2 * count; b++) pairs.push({ a, b, mm: far(a, b) })
  }
  pairs.sort((p, q) => p.mm - q.mm)
  const mate = new Map<number, number>()
  const runFrom = (end: number): { far: number; mm: number } => {
    let mm = 0
    for (let at = end; ;) {
      const other = at ^ 1
      mm += far(at, other)
      const next = mate.get(other)
      if (next === undefined) return { far: other, mm }
      mm += far(other, next)
      at = next
    }
  }
  let bridged = 0
  for (const careful of [true, false]) {
    for (const { a, b, mm } of pairs) {
      if (mate.has(a) || mate.has(b)) continue
      const run = runFrom(a)
      const poor = ((a ^ b) & 1) === 0 || (run.far === b && run.mm <= 1.05 * mm)
      if (careful && poor) continue
      mate.set(a, b)
      mate.set(b, a)
      bridged += mm
    }
  }
  return bridged
}

describe('gaps are bridged nearest first, as if every pair of ends had been sorted', () => {
  test.each([1, 2, 3, 7, 40, 150])('%i loose segments', (count) => {
    for (let seed = 1; seed <= 12; seed++) {
      const cut = looseCut(count, seed, seed % 3 === 0)
      expect(joinContours(cut).bridgedMm).toBeCloseTo(bridgeSlowly(cut), 6)
    }
  })
})
