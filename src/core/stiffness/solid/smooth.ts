import { largestEigenvalue } from './largestEigenvalue.ts'
import type { Field } from './types.ts'

/** A symmetric positive matrix by what it does; what is held stays out of `forces`. */
export type Operator = (moves: Field, forces: Field) => void

/** Chebyshev polynomials of the fourth kind of the diagonal-scaled matrix. */
export interface Smoother {
  /** 1 / diagonal; 0 where a node is held. */
  readonly inverse: Field
  /** Betters `moves` for `load`; `fresh` where they are zero so far. */
  readonly run: (load: Field, moves: Field, fresh: boolean) => void
}

/** What few steps towards the largest eigenvalue may fall short by: 2 % took 32 steps for 13. */
const SAFETY = 1.1
const ROOT = Math.sqrt(5)
/**
 * Weights of the two steps. Together they leave p(λ) = 1 − aλ + bλ² of an error whose eigenvalue is
 * λ of the largest (0 to 1), with a = 4/3·β₁ + 8/3·β₂ and b = 16/5·β₂. What such an error still
 * asks of the coarser level, λp², over what smoothing takes of its energy, 1 − p², bounds what a
 * cycle leaves; the weights make the worst of λp² / (1 − p²) smallest. With
 * a = 5/2 + √5 and b = 5/4·(1 + √5) it is as large at 0 as at 1 and on the hump between the zeros
 * of p: 1 / (5 + 2√5) = 1/9.47, for 1/8 with both weights 1. `smooth.test.ts` searches for any
 * that do better.
 *
 * Steps to 1e-6 of a solid bar of 60 × 10 × 8 cells of 1 mm and of a tube of 60 × 12 × 10 with one
 * cell a wall, held at one end and pushed across at the other:
 *
 * | weights               | bar    | tube   |
 * | --------------------- | ------ | ------ |
 * | these (1.024, 1.264)  | 10     | 69     |
 * | 1, 1                  | 11     | 71     |
 * | first 0.8, 1.2 times  | 12, 10 | 70, 70 |
 * | second 0.8, 0.9 times | 11, 11 | 71, 69 |
 * | second 1.1, 1.2 times | 10, 10 | 69, 69 |
 * | both 0.8, 1.1 times   | 12, 10 | 72, 69 |
 */
const BETAS = [(35 - ROOT) / 32, (25 * (1 + ROOT)) / 64] as const

/**
 * Two steps of the kind J. Lottes gives (Optimal polynomial smoothers for multigrid V-cycles, arXiv
 * 2202.08830): they ask for no smallest eigenvalue.
 *
 * @param inverse 1 / diagonal; 0 where a node is held.
 */
export function createSmoother(apply: Operator, inverse: Field): Smoother {
  const count = inverse.length
  const rest = new Float64Array(count)
  const step = new Float64Array(count)
  const forces = new Float64Array(count)
  const most = SAFETY * largestEigenvalue(apply, inverse)
  return {
    inverse,
    run(load, moves, fresh) {
      if (!fresh) apply(moves, rest)
      for (let i = 0; i < count; i++) {
        const left = fresh ? load[i]! : load[i]! - rest[i]!
        rest[i] = left
        const by = (4 / (3 * most)) * inverse[i]! * left
        step[i] = by
        moves[i] = BETAS[0] * by + (fresh ? 0 : moves[i]!)
      }
      apply(step, forces)
      for (let i = 0; i < count; i++) {
        const by = 0.2 * step[i]! + (12 / (5 * most)) * inverse[i]! * (rest[i]! - forces[i]!)
        moves[i]! += BETAS[1] * by
      }
    },
  }
}
