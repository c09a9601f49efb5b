import type { SharedError } from '../model/doubt.ts'
import type { Observation } from './belief.ts'
import { formOf } from './form.ts'

/**
 * A reading kept for later frames: how far it was off, and which shared errors it may be blamed
 * on. The lines themselves are gone, so all that belonged to them alone is noise by now. Of several
 * readings of one line each keeps that noise as if it were its own.
 */
export interface Lesson {
  readonly id: string
  /** Of grams or of hours. */
  readonly of: 'mass' | 'time'
  /** Spools that were on the scale; none for hours. */
  readonly materialIds: readonly string[]
  readonly printerId: string
  /** Shared errors the lines carried when they were read. */
  readonly shared: readonly SharedError[]
  /** Reading ÷ calculated. */
  readonly ratio: number
  /**
   * One standard deviation of the ratio from the lines' own errors, their scatter and the reading.
   */
  readonly noise: number
}

/** Held against factors instead of grams: 1 is what was calculated. */
export function lessonObservation({ id, shared, ratio, noise }: Lesson): Observation {
  const form = formOf(
    1,
    shared.map((error) => [error.id, error.effect] as const),
  )
  return { id, form, value: ratio, noise }
}
