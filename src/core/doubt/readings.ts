import type { SharedError } from '../model/doubt.ts'
import type { Observation } from './belief.ts'
import type { Form } from './form.ts'

/** What a scale or a clock said, and of what. */
export interface Reading {
  readonly id: string
  /** Net, of all pieces together. g or s */
  readonly value: number
  /** One standard deviation of the reading itself, in the same unit; above 0. */
  readonly noise: number
  readonly of: ReadingOf
  /** Its user stands by it, however odd it looks. */
  readonly trusted: boolean
}

/** One piece or a set of equal ones of a line, or everything that flies of some lines at once. */
export type ReadingOf =
  | { readonly kind: 'pieces'; readonly lineId: string; readonly pieces: number }
  | {
      /** Pieces of several lines, whichever they are; for lines whose pieces are all alike. */
      readonly kind: 'run'
      readonly pieces: readonly { readonly lineId: string; readonly pieces: number }[]
      /**
       * Whose clock it was, wherever the pieces are printed by now; left out, of where they are.
       */
      readonly printerId?: string
    }
  | {
      /**
       * Plastic laid of one piece over what was calculated: as a ratio, with the errors that show
       * in it.
       */
      readonly kind: 'laid'
      readonly lineId: string
      readonly shared: readonly SharedError[]
      readonly own: number
    }
  | {
      readonly kind: 'whole'
      readonly lineIds: readonly string[]
      /** One standard deviation of what no line lists (glue, wire), as a share of the whole. */
      readonly unlisted: number
    }

/**
 * Share of a mass a kitchen or letter scale may be off by beyond its step (common practice, no
 * source).
 */
const SCALE_SHARE = 0.002
/** A reading is good for one step to either side, 19 times in 20 (common practice, no source). */
const STEPS = 0.5

/** What a scale leaves unsure, g; a tare is a reading too. */
export function scaleNoiseG(massG: number, stepG: number, withTare: boolean): number {
  const stepNoise = STEPS * stepG * (withTare ? Math.SQRT2 : 1)
  return Math.max(1e-6, Math.hypot(stepNoise, SCALE_SHARE * massG))
}

const UNLISTED = 'unlisted:'

/** The error of what flies but no line lists, of one weighing of the whole. */
export function unlistedId(readingId: string): string {
  return `${UNLISTED}${readingId}`
}

/** Whether an error is what one weighing of the whole left unlisted. */
export function isUnlisted(errorId: string): boolean {
  return errorId.startsWith(UNLISTED)
}

export function observationOf({ id, value, noise }: Reading, form: Form): Observation {
  return { id, form, value, noise }
}
