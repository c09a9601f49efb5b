import { PreweighError, type Problem } from '../core/model/problem.ts'

/** What to tell about anything thrown while a file was worked on. */
export function problemOf(error: unknown, name: string): Problem {
  if (error instanceof PreweighError) return error.problem
  const words = error instanceof Error ? error.message : String(error)
  return crashed(name, words)
}

/** The program's fault, not the file's. */
export function crashed(name: string, reason: string): Problem {
  return {
    code: 'crashed',
    message: `The work on “${name}” broke down (${reason}).`,
    advice:
      'Try again. If it happens each time, the mesh may be too large for this browser’s memory.',
  }
}

/** Ended on request; the page shows nothing for it. */
export const CANCELLED: Problem = {
  code: 'cancelled',
  message: 'This was cancelled before it was done.',
  advice: 'Try again to have it done.',
}
