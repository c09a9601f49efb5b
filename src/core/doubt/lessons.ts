import type { SharedError } from '../model/doubt.ts'
import type { Observation } from './belief.ts'
import { formOf } from './form.ts'

/**
 * A reading kept for later frames: how far it was off, and which shared errors it may be blamed
 * on. The line itself is gone, so all that belonged to it alone is noise by now.
 */
export interface Lesson {
  readonly id: string
  readonly materialId: string
  readonly printerId: string
  /** Shared errors the line carried when it was read. */
  readonly shared: readonly SharedError[]
  /** Reading ÷ calculated. */
  readonly ratio: number
  /** One standard deviation of the ratio from the line's own error, its scatter and the reading. */
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
