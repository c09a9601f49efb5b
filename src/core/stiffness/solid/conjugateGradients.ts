import type { Operator } from './smooth.ts'
import type { Field } from './types.ts'

export interface Solved {
  readonly moves: Field
  readonly steps: number
  /** Size of what is not met over the size of the load. */
  readonly rest: number
}

export interface SolveOptions {
  /** Wanted `rest`. */
  readonly tolerance: number
  readonly mostSteps: number
  /** Called after each step with its `rest`; false ends it. */
  readonly watch?: (rest: number) => boolean
}

/**
 * Preconditioned conjugate gradients (M. R. Hestenes, E. Stiefel, 1952). `load` is zero where the
 * part is held.
 */
export function conjugateGradients(
  apply: Operator,
  precondition: Operator,
  load: Field,
  { tolerance, mostSteps, watch }: SolveOptions,
): Solved {
  const count = load.length
  const moves = new Float64Array(count)
  const rest = load.slice()
  const near = new Float64Array(count)
  const way = new Float64Array(count)
  const forces = new Float64Array(count)
  const size = Math.sqrt(product(load, load))
  if (!(size > 0)) return { moves, steps: 0, rest: 0 }
  let before = 1
  let share = 1
  let steps = 0
  while (steps < mostSteps && share > tolerance) {
    precondition(rest, near)
    const now = product(rest, near)
    const keep = steps === 0 ? 0 : now / before
    before = now
    for (let i = 0; i < count; i++) way[i] = near[i]! + keep * way[i]!
    apply(way, forces)
    const far = now / product(way, forces)
    for (let i = 0; i < count; i++) {
      moves[i]! += far * way[i]!
      rest[i]! -= far * forces[i]!
    }
    share = Math.sqrt(product(rest, rest)) / size
    steps++
    if (watch?.(share) === false) break
  }
  return { moves, steps, rest: share }
}

/** Jacobi's preconditioner: the diagonal alone. */
export function byDiagonal(inverse: Field): Operator {
  return (load, moves) => {
    for (let i = 0; i < inverse.length; i++) moves[i] = inverse[i]! * load[i]!
  }
}

export function product(a: Field, b: Field): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}
