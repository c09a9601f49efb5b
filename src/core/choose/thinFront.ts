import type { Worth } from './types.ts'

/**
 * As many of a front as can be looked at, none moved: its best in each of the four, then always the
 * one farthest from all that are in, each measure counted over its span in the front. Lightest
 * first.
 */
export function thinFront<T extends Worth>(front: readonly T[], most: number): readonly T[] {
  if (front.length <= most) return front
  const rows = scaled(front)
  const nearest = front.map(() => Infinity)
  const picked = new Set<number>()
  const pick = (at: number): void => {
    picked.add(at)
    const own = rows[at] ?? []
    rows.forEach((row, i) => {
      nearest[i] = Math.min(nearest[i] ?? 0, distance(row, own))
    })
  }
  for (let axis = 0; axis < 4 && picked.size < most; axis++) {
    pick(indexOfLeast(rows.map((row) => row[axis] ?? 0)))
  }
  while (picked.size < most) pick(indexOfLeast(nearest.map((one) => -one)))
  return front.filter((_, i) => picked.has(i))
}

/** Each measure from 0, the best, to 1. */
function scaled(front: readonly Worth[]): readonly (readonly number[])[] {
  const columns = [
    front.map(({ massG }) => massG),
    front.map(({ timeS }) => timeS),
    front.map(({ cost }) => cost),
    // Nothing known or asked is as good as it gets, and finite.
    front.map(({ stiffness }) => (stiffness === Infinity ? 0 : -stiffness)),
  ].map((values) => {
    const [low, high] = spanOf(values)
    return values.map((value) => (high > low ? (value - low) / (high - low) : 0))
  })
  return front.map((_, i) => columns.map((column) => column[i] ?? 0))
}

function spanOf(values: readonly number[]): readonly [number, number] {
  let low = Infinity
  let high = -Infinity
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return [low, high]
}

function distance(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + (value - (b[i] ?? 0)) ** 2, 0)
}

function indexOfLeast(values: readonly number[]): number {
  let best = 0
  values.forEach((value, i) => {
    if (value < (values[best] ?? Infinity)) best = i
  })
  return best
}
