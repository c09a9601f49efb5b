import { median } from '../median.ts'
import type { Pair } from './readPairs.ts'
import type { Reckoned } from './reckon.ts'

export interface Scored {
  readonly pair: Pair
  readonly reckoned: Reckoned
  /** Reckoned ÷ seen − 1. */
  readonly error: number
  readonly pathError: number | null
  readonly inside: boolean
  /** Whether the pair's part shaped the defaults; else it only checks them. */
  readonly shaped: boolean
}

export interface Summary {
  readonly pairs: number
  readonly median: number
  readonly mean: number
  readonly bias: number
  /** One in ten misses by more. */
  readonly tenth: number
  readonly inside: number
  /** Mean of how far the ranges reach to either side. Share */
  readonly width: number
  readonly kinds: Readonly<Record<'walls' | 'solid' | 'sparse' | 'first', Kind>>
}

/** mm³. */
export interface Kind {
  readonly reckoned: number
  readonly seen: number
}

export function score(pair: Pair, reckoned: Reckoned, shaped: boolean): Scored {
  const error = reckoned.depositMm3 / pair.seen.partMm3 - 1
  // Of what it would have to be for the seen deposit.
  const factor = 1 / (1 + error)
  return {
    pair,
    reckoned,
    error,
    pathError: pair.seen.pathM === null ? null : reckoned.pathM / pair.seen.pathM - 1,
    inside: factor >= 1 - reckoned.low && factor <= 1 + reckoned.high,
    shaped,
  }
}

export function summarise(rows: readonly Scored[]): Summary {
  const sizes = rows.map(({ error }) => Math.abs(error)).toSorted((a, b) => a - b)
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length
  const kind = (ours: (row: Reckoned) => number, key: keyof Pair['seen']['kinds']): Kind => ({
    reckoned: rows.reduce((sum, { reckoned }) => sum + ours(reckoned), 0),
    seen: rows.reduce((sum, { pair }) => sum + pair.seen.kinds[key], 0),
  })
  return {
    pairs: rows.length,
    median: median(sizes),
    mean: mean(sizes),
    bias: mean(rows.map(({ error }) => error)),
    tenth: sizes[Math.min(sizes.length - 1, Math.floor(0.9 * sizes.length))] ?? 0,
    inside: rows.filter(({ inside }) => inside).length,
    width: mean(rows.map(({ reckoned }) => (reckoned.low + reckoned.high) / 2)),
    kinds: {
      walls: kind((row) => row.laterMm3.walls, 'walls'),
      solid: kind((row) => row.laterMm3.solid, 'solid'),
      sparse: kind((row) => row.laterMm3.sparse, 'sparse'),
      first: kind((row) => row.firstMm3, 'first'),
    },
  }
}
