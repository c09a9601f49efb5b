import { PreweighError } from '../../src/core/model/problem.ts'
import type { Problem } from '../../src/core/model/problem.ts'

/** The problem that `run` throws; fails when it throws nothing or anything else. */
export function problemOf(run: () => unknown): Problem {
  try {
    run()
  } catch (error) {
    if (error instanceof PreweighError) return error.problem
    throw error
  }
  throw new Error('It should have thrown a PreweighError and threw nothing.')
}
